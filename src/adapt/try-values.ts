import type { Workshop } from '../check/workshop.ts';
import type { CheckResult } from '../check/result.ts';
import type { Mend } from '../core/issue.ts';
import { valueAt, withValue } from '../core/path.ts';
import { chain } from '../core/result.ts';
import { gridDown, gridUp } from '../core/units.ts';
import type { Design } from '../document/schema.ts';
import type { Registry } from '../family/index.ts';
import { failedOf, solved } from './answered.ts';
import { isTried, parameterOf } from './tried.ts';

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
 * fails that did not: found by trying greater ones, or less steep passes. What a maker wishes kept is
 * not moved, and sheets have their own thicknesses.
 */
export const mendByTrying = (
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
