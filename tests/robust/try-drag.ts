import { isDeepStrictEqual } from 'node:util';
import type { CheckResult, Gaps } from '../../src/check/result.ts';
import { chain, ok, type Result } from '../../src/core/result.ts';
import { checkDesign } from '../../src/document/open.ts';
import { saveDesign } from '../../src/document/save.ts';
import type { Design } from '../../src/document/schema.ts';
import { createWorkshop, type Registry, type Workshop } from '../../src/family/index.ts';
import { checkFixture, solveDesign } from '../../src/make/engine.ts';
import type { Random } from '../../src/setup/random.ts';
import { randomDesign } from './random-design.ts';

/** A gap may be told so much over the true one, and two ways of asking differ by that, mm. */
const SLACK = 0.001;

const checksOf = (design: Design, registry: Registry, workshop: Workshop) => {
  const fixture = solveDesign(design, registry, workshop);
  return (gaps: Gaps): Result<readonly CheckResult[]> =>
    fixture.ok
      ? chain(checkFixture(fixture.value, design.making, gaps), ({ checks }) => ok(checks))
      : fixture;
};

/** What a check tells early that it does not hold to at the end. */
const broken = (early: CheckResult, whole: CheckResult | undefined): string[] => {
  if (!whole) return [`${early.id} is told early alone`];
  const said = (passed: boolean): string => (passed ? 'passes' : 'fails');
  if (early.passed !== whole.passed)
    return [`${early.id} ${said(early.passed)} early and ${said(whole.passed)} at the end`];
  const [soon, late] = [early.found, whole.found];
  return early.kind === 'clearance' && soon !== null && late !== null && soon > late + SLACK
    ? [`${early.id} tells ${String(soon)} mm early and ${String(late)} at the end`]
    : [];
};

/**
 * One design after another through one workshop, as a hand drags: what is kept of those before must
 * change nothing, and what is proved first, with near gaps alone, must hold at the end. Defects, with
 * the design they were found on.
 */
export const tryDrag = (
  designs: readonly Design[],
  registry: Registry,
): { readonly found: readonly string[]; readonly sample: string }[] => {
  const workshop = createWorkshop();
  return designs.flatMap((design, i) => {
    const ask = checksOf(design, registry, workshop);
    const [near, all] = [ask('near'), ask('all')];
    // Of the first nothing was kept yet.
    const anew = i === 0 ? all : checksOf(design, registry, createWorkshop())('all');
    const found: string[] = [];
    if (!isDeepStrictEqual(all, anew)) {
      const [own, other] = [all, anew].map((one) => (one.ok ? one.value : one.issues));
      const at = other?.findIndex((one, i) => !isDeepStrictEqual(one, own?.[i]));
      const which = at === undefined ? undefined : [own?.[at], other?.[at]];
      found.push(`kept and anew differ: ${JSON.stringify(which)}`);
    }
    if (near.ok !== anew.ok) found.push('answered early or at the end alone');
    if (near.ok && anew.ok) {
      const whole = new Map(anew.value.map((one) => [one.id, one]));
      found.push(...near.value.flatMap((early) => broken(early, whole.get(early.id))));
      if (near.value.length !== anew.value.length) found.push('fewer checks early');
    }
    return found.length > 0 ? [{ found, sample: saveDesign(design) }] : [];
  });
};

/** How often a step goes back to a design before, as an undo does. */
const BACK = 0.3;

/**
 * So many designs, each a little off the one before or back at an earlier one; fewer where random ones
 * cannot be solved time and again.
 */
export const randomDrag = (
  random: Random,
  worked: readonly Design[],
  registry: Registry,
  steps: number,
): Design[] => {
  const designs: Design[] = [];
  for (let tries = 0; designs.length < steps && tries < 12 * steps; tries += 1) {
    const last = designs.at(-1);
    const earlier = designs.at(-3);
    if (earlier && random() < BACK) {
      designs.push(earlier);
      continue;
    }
    const { design } = randomDesign(random, last ? [last] : worked, registry);
    const sound = checkDesign(design, registry);
    if (sound.ok && solveDesign(sound.value, registry).ok) designs.push(sound.value);
  }
  return designs;
};
