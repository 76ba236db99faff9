import type { CheckResult } from '../../check/result.ts';
import { createWorkshop, type Workshop } from '../../check/workshop.ts';
import type { Unit } from '../../core/parameter.ts';
import { valueAt, withValue } from '../../core/path.ts';
import { problem } from '../../core/issue.ts';
import { all, chain, fail, ok, type Result } from '../../core/result.ts';
import { checkDesign as checkDocument } from '../../document/open.ts';
import type { Design } from '../../document/schema.ts';
import type { Registry } from '../../family/index.ts';
import { text } from '../../text/index.ts';
import { checkDesign } from '../engine.ts';
import { searchEnd, type Outcome, type RangeEnd, type Spares } from './search.ts';

/** How far one number of a design can move before the first check fails. */
export interface NumberRange {
  /** Where it stands in the design file: "fixture.parameters.noseGap". */
  readonly path: string;
  readonly label: string;
  readonly unit: Unit | '';
  readonly value: number;
  /** Ends are found to this distance, in the number's own unit. */
  readonly tolerance: number;
  readonly down: RangeEnd;
  readonly up: RangeEnd;
}

const PARAMETERS = 'fixture.parameters.';

/** A number that can be moved, with what is known of its limits. */
interface Movable {
  readonly path: string;
  readonly label: string;
  readonly unit: Unit | '';
  readonly value: number;
  readonly min: number;
  readonly max: number;
  readonly step: number;
}

const parameterAt = (design: Design, registry: Registry, key: string): Movable | undefined => {
  const parameter = registry.families[design.fixture.family]?.parameters[key];
  if (parameter?.kind !== 'number') return undefined;
  const given = design.fixture.parameters[key];
  const { label, unit, min, max, step, initial } = parameter;
  const value = typeof given === 'number' ? given : initial;
  return { path: `${PARAMETERS}${key}`, label, unit, value, min, max, step };
};

const movableAt = (design: Design, registry: Registry, path: string): Result<Movable> => {
  const key = path.startsWith(PARAMETERS) ? path.slice(PARAMETERS.length) : undefined;
  const parameter = key === undefined ? undefined : parameterAt(design, registry, key);
  if (parameter) return ok(parameter);
  const value = valueAt(design, path);
  if (typeof value !== 'number')
    return fail(problem('not-a-number', path, text.make.range.notNumber(path)));
  const step = Math.max(Math.abs(value) / 100, 0.01);
  return ok({ path, label: path, unit: '', value, min: -Infinity, max: Infinity, step });
};

/** Paths of all numbers of the fixture, in the order of the family's table. */
export const parameterPaths = (design: Design, registry: Registry): string[] =>
  Object.entries(registry.families[design.fixture.family]?.parameters ?? {})
    .filter(([, { kind }]) => kind === 'number')
    .map(([key]) => `${PARAMETERS}${key}`);

const spareOf = ({ passed, found, atLeast, atMost }: CheckResult): number | undefined => {
  if (found === null) return undefined;
  const least = Math.min(
    ...(atLeast === undefined ? [] : [found - atLeast]),
    ...(atMost === undefined ? [] : [atMost - found]),
  );
  // A number that does not tell what the check says leads nowhere.
  return Number.isFinite(least) && least >= 0 === passed ? least : undefined;
};

const sparesOf = (checks: readonly CheckResult[]): Spares =>
  new Map(
    checks.flatMap((check): [string, number][] => {
      const spare = spareOf(check);
      return spare === undefined ? [] : [[check.id, spare]];
    }),
  );

/** What becomes of a design: refused, or checked like any other. */
const outcomeOf = (design: Design, registry: Registry, workshop: Workshop): Outcome => {
  const checked = chain(checkDocument(design, registry), (sound) =>
    checkDesign(sound, registry, workshop),
  );
  if (!checked.ok) {
    const errors = checked.issues.filter(({ severity }) => severity === 'error');
    return { kind: 'refused', fails: [...new Set(errors.map(({ code }) => code))] };
  }
  const { checks } = checked.value;
  const fails = checks.filter(({ passed }) => !passed).map(({ id }) => id);
  return { kind: fails.length === 0 ? 'good' : 'check', fails, spares: sparesOf(checks) };
};

/** Ends are found to a fiftieth of the allowed range, or to the number's own step if finer. */
const toleranceOf = ({ min, max, step }: Movable): number =>
  Number.isFinite(max - min) ? Math.min(step, (max - min) / 50) : step / 2;

/**
 * How far numbers of a design can move, each by itself, down and up, before anything fails: each
 * value tried is solved, built and checked anew with the whole set of checks, from what is kept of
 * the values before. An estimate: between the values tried nothing is proved. Fails where the
 * design is not sound as it stands, or a path leads to no number.
 */
export const numberRanges = (
  design: Design,
  paths: readonly string[],
  registry: Registry,
  workshop: Workshop,
): Result<NumberRange[]> =>
  chain(all(paths.map((path) => movableAt(design, registry, path))), (movables) => {
    const now = outcomeOf(design, registry, workshop);
    if (now.kind !== 'good')
      return fail(problem('not-sound', paths.join(', '), text.make.range.notSound(now.fails)));
    return ok(
      movables.map((movable): NumberRange => {
        const { path, label, unit, value, min, max, step } = movable;
        const tolerance = toleranceOf(movable);
        const terms = {
          from: value,
          first: step,
          tolerance,
          ...(now.spares ? { spares: now.spares } : {}),
        };
        const end = (limit: number): RangeEnd =>
          searchEnd({ ...terms, limit }, (tried) =>
            outcomeOf(withValue(design, path, tried), registry, workshop),
          );
        return { path, label, unit, value, tolerance, down: end(min), up: end(max) };
      }),
    );
  });

/** The same of one number. */
export const numberRange = (
  design: Design,
  path: string,
  registry: Registry,
): Result<NumberRange> =>
  chain(numberRanges(design, [path], registry, createWorkshop()), ([range]) =>
    range ? ok(range) : fail(problem('not-a-number', path, text.make.range.notNumber(path))),
  );
