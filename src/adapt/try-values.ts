import type { Workshop } from '../check/workshop.ts';
import type { CheckResult } from '../check/result.ts';
import type { Mend } from '../core/issue.ts';
import { valueAt, withValue } from '../core/path.ts';
import { chain } from '../core/result.ts';
import { gridDown, gridUp } from '../core/units.ts';
import type { Design } from '../document/schema.ts';
import type { Registry } from '../family/index.ts';
import { text } from '../text/index.ts';
import { failedOf, solved } from './answered.ts';
import { isTried, lineOf, parameterOf } from './tried.ts';

/** Steps of a parameter that are added, the fewest first. */
const STEPS = [1, 2, 4, 8, 16, 32];

/** Shares of what a pass is steeper by, the greatest first. */
const SHARES = [0.75, 0.5, 0.25, 0];

/** The values to try of a parameter that a check leads to, the nearest first. */
const valuesOf = (design: Design, path: string, registry: Registry): readonly number[] => {
  if (!isTried(path)) return [];
  const at = valueAt(design, path);
  const key = parameterOf(path);
  if (key === undefined) return SHARES.map((share) => gridDown(Number(at) * share));
  const parameter = registry.families[design.fixture.family]?.parameters[key];
  if (parameter?.kind !== 'number' || parameter.sheet) return [];
  const now = Number(at ?? parameter.initial);
  return STEPS.map((n) => Math.min(parameter.max, gridUp(now + n * parameter.step))).filter(
    (value) => value > now,
  );
};

/** What is set for a value to be tried: no later pass is steeper than an earlier one. */
const settings = ({ sequence }: Design, path: string, value: number): Mend[] => {
  if (parameterOf(path) !== undefined) return [{ path, value }];
  const paths = sequence.map((_, i) => `sequence.${i}.steeper`);
  return paths.flatMap((one, i) =>
    i >= paths.indexOf(path) && (sequence[i]?.steeper ?? 0) > value ? [{ path: one, value }] : [],
  );
};

const FOLLOWS = Object.keys(text.blade.parameters.line.follow.options);

/** What may mend a check that leads to a parameter, each with all that is set for it. */
const attempts = (design: Design, path: string, registry: Registry): readonly Mend[][] => {
  const line = lineOf(path);
  // Another thing to follow may ask for another setting: only solving tells what it leaves.
  if (line !== undefined)
    return FOLLOWS.filter((one) => one !== valueAt(design, `${line}.follow`)).map((value) => [
      { path: `${line}.follow`, value },
    ]);
  return [...new Set(valuesOf(design, path, registry))].map((value) =>
    settings(design, path, value),
  );
};

/** What fails of a design; undefined where it has no answer. */
const failing = (
  design: Design,
  registry: Registry,
  workshop: Workshop,
): ReadonlySet<string> | undefined => {
  const found = chain(solved(design, registry, workshop), (fixture) => failedOf(design, fixture));
  return found.ok ? new Set(found.value.map(({ id }) => id)) : undefined;
};

/**
 * The value of the parameter that a failed check leads to with which it passes and nothing else
 * fails that did not, and what follows from it in later passes: found by trying greater ones, less
 * steep passes, or something else for a line to follow. What a maker wishes kept is not moved, and
 * sheets have their own thicknesses.
 */
export const mendByTrying = (
  design: Design,
  failed: readonly CheckResult[],
  registry: Registry,
  workshop: Workshop,
): readonly Mend[] => {
  const before = new Set(failed.map(({ id }) => id));
  for (const { id, parameter: path = '' } of failed) {
    for (const mends of attempts(design, path, registry)) {
      const tried = mends.reduce((next, one) => withValue(next, one.path, one.value), design);
      const left = failing(tried, registry, workshop);
      if (left && !left.has(id) && [...left].every((one) => before.has(one))) return mends;
    }
  }
  return [];
};
