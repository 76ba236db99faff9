import { createWorkshop, type Workshop } from '../check/workshop.ts';
import { mendOf } from '../check/mend.ts';
import type { CheckResult } from '../check/result.ts';
import { hasError, problem, type Issue, type Mend } from '../core/issue.ts';
import { withValue } from '../core/path.ts';
import { chain, fail, ok, type Result } from '../core/result.ts';
import { checkDesign } from '../document/open.ts';
import type { Design } from '../document/schema.ts';
import type { Registry } from '../family/index.ts';
import { text } from '../text/index.ts';
import { failedOf, solved } from './answered.ts';
import { differences, type Difference } from './differences.ts';
import { mendByTrying } from './try-values.ts';

/** A design with every value set that its rules and checks name as a mend. */
export interface Mended {
  readonly design: Design;
  readonly differences: readonly Difference[];
  /** The checks that fail nonetheless, each with what would mend it. */
  readonly failed: readonly CheckResult[];
}

/** The same as it is written out. */
export interface MendReport {
  readonly format: 'platenwright-mended';
  readonly design: string;
  readonly differences: readonly Difference[];
  readonly failed: readonly CheckResult[];
}

/** Answers that are mended one after another at most. */
const ROUNDS = 60;
/** What a maker allows is theirs to loosen. */
const ALLOWANCE = /\.line\.allowed$/;

const mendsOf = (issues: readonly Issue[]): Mend[] => issues.flatMap(({ mend }) => mend ?? []);

/** The design with a value set, unless that value is out of its field's range. */
const set = (design: Design, { path, value }: Mend, registry: Registry): Design => {
  const next = withValue(design, path, value);
  const found = checkDesign(next, registry);
  return found.issues.some((issue) => issue.path === path && issue.code === 'out-of-range')
    ? design
    : next;
};

/** What failed checks name as mends. */
const checkMends = (design: Design, failed: readonly CheckResult[]): Mend[] =>
  failed
    .flatMap((check) => mendOf(design, check) ?? [])
    .filter(({ path }) => !ALLOWANCE.test(path));

/**
 * Sets, answer by answer, every value that an error names as its mend, then what warnings name,
 * then what failed checks do, then what mends one of these when it is tried; each once, so that two
 * rules which pull one value both ways end it. Nothing is allowed more of than the maker did. Fails,
 * and changes nothing, where errors are left that no value mends, and where there is nothing to mend.
 */
export const mendAll = (
  design: Design,
  registry: Registry,
  workshop: Workshop = createWorkshop(),
): Result<Mended> => {
  const tried = new Set<string>();
  const fresh = (mends: readonly Mend[]): Mend[] =>
    mends.filter(({ path, value }, i) => {
      const first = mends.findIndex((one) => one.path === path) === i;
      return first && !tried.has(`${path} ${value}`);
    });
  let [now, answer] = [design, solved(design, registry, workshop)];
  for (let round = 0; round < ROUNDS; round += 1) {
    const errors = answer.issues.filter(({ severity }) => severity === 'error');
    const { value: fixture } = answer.ok ? answer : { value: undefined };
    let mends = fresh(mendsOf(errors.length > 0 ? errors : answer.issues));
    // What checks name is asked for only where the answer itself names nothing, and what must be
    // tried only where they name nothing either.
    if (mends.length === 0 && fixture) {
      const checked = failedOf(now, fixture);
      const failed = checked.ok ? checked.value : [];
      mends = fresh(checkMends(now, failed));
      if (mends.length === 0) mends = fresh(mendByTrying(now, failed, registry, workshop));
    }
    if (mends.length === 0) break;
    for (const { path, value } of mends) tried.add(`${path} ${value}`);
    now = mends.reduce((next, mend) => set(next, mend, registry), now);
    answer = solved(now, registry, workshop);
  }
  if (!answer.ok || hasError(answer.issues)) return fail(...answer.issues);
  const changes = differences(design, now, registry);
  return chain(failedOf(now, answer.value), (failed) =>
    changes.length === 0 && failed.length === 0
      ? fail(problem('nothing-to-mend', '', text.adapt.mend.nothing))
      : ok({ design: now, differences: changes, failed }),
  );
};
