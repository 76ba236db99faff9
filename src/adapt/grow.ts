import type { Workshop } from '../check/workshop.ts';
import type { CheckResult } from '../check/result.ts';
import type { Mend } from '../core/issue.ts';
import { valueAt, withValue } from '../core/path.ts';
import { chain } from '../core/result.ts';
import { gridDown, gridUp } from '../core/units.ts';
import { checkDesign } from '../document/open.ts';
import type { Design } from '../document/schema.ts';
import type { Registry } from '../family/index.ts';
import { checkFixture, solveDesign } from '../make/engine.ts';
import { WISHES } from '../make/suit/wishes.ts';

/** Steps of a parameter that are added, the fewest first. */
const STEPS = [1, 2, 4, 8, 16, 32];
const PATH = 'fixture.parameters.';

/** What a pass is steeper by, and shares of it that are tried, the greatest first. */
const STEEPER = /^sequence\.\d+\.steeper$/;
const SHARES = [0.75, 0.5, 0.25, 0];

/** The values to try of a parameter that a check leads to, the nearest first. */
const valuesOf = (design: Design, path: string, registry: Registry): readonly number[] => {
  const at = valueAt(design, path);
  if (STEEPER.test(path)) return SHARES.map((share) => gridDown(Number(at) * share));
  const key = path.startsWith(PATH) ? path.slice(PATH.length) : '';
  const parameter = registry.families[design.fixture.family]?.parameters[key];
  if (parameter?.kind !== 'number' || parameter.sheet || WISHES.has(key)) return [];
  const now = Number(at ?? parameter.initial);
  return STEPS.map((n) => Math.min(parameter.max, gridUp(now + n * parameter.step))).filter(
    (value) => value > now,
  );
};

/** What fails of a design; undefined where it has no answer. */
const failing = (
  design: Design,
  registry: Registry,
  workshop: Workshop,
): ReadonlySet<string> | undefined => {
  const checked = chain(
    chain(checkDesign(design, registry), (sound) => solveDesign(sound, registry, workshop)),
    (fixture) => checkFixture(fixture, design.making, 'near'),
  );
  return checked.ok
    ? new Set(checked.value.checks.filter(({ passed }) => !passed).map(({ id }) => id))
    : undefined;
};

/**
 * The value of the parameter that a failed check leads to with which it passes and nothing else
 * fails that did not: found by trying greater ones, or less steep passes. What a maker wishes kept is not moved, and
 * sheets have their own thicknesses.
 */
export const grown = (
  design: Design,
  failed: readonly CheckResult[],
  registry: Registry,
  workshop: Workshop,
): readonly Mend[] => {
  const before = new Set(failed.map(({ id }) => id));
  for (const { id, parameter: path = '' } of failed) {
    for (const value of new Set(valuesOf(design, path, registry))) {
      const left = failing(withValue(design, path, value), registry, workshop);
      if (left && !left.has(id) && [...left].every((one) => before.has(one)))
        return [{ path, value }];
    }
  }
  return [];
};
