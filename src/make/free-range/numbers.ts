import type { Unit } from '../../core/parameter.ts';
import { valueAt, withValue } from '../../core/path.ts';
import { problem } from '../../core/issue.ts';
import { chain, fail, ok, type Result } from '../../core/result.ts';
import { checkDesign as checkDocument } from '../../document/open.ts';
import type { Design } from '../../document/schema.ts';
import type { Registry } from '../../family/index.ts';
import { text } from '../../text/index.ts';
import { checkDesign } from '../engine.ts';
import { searchEnd, type Outcome, type RangeEnd } from './search.ts';

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

/** What becomes of a design: refused, or checked like any other. */
const outcomeOf = (design: Design, registry: Registry): Outcome => {
  const checked = chain(checkDocument(design, registry), (sound) => checkDesign(sound, registry));
  if (!checked.ok) {
    const errors = checked.issues.filter(({ severity }) => severity === 'error');
    return { kind: 'refused', fails: [...new Set(errors.map(({ code }) => code))] };
  }
  const fails = checked.value.checks.filter(({ passed }) => !passed).map(({ id }) => id);
  return { kind: fails.length === 0 ? 'good' : 'check', fails };
};

/** Ends are found to a fiftieth of the allowed range, or to the number's own step if finer. */
const toleranceOf = ({ min, max, step }: Movable): number =>
  Number.isFinite(max - min) ? Math.min(step, (max - min) / 50) : step / 2;

/**
 * How far a number of a design can move, down and up, before anything fails: each value tried is
 * solved, built and checked anew with the whole set of checks. An estimate: between the values
 * tried nothing is proved. Fails where the design is not sound as it stands, or the path leads to
 * no number.
 */
export const numberRange = (
  design: Design,
  path: string,
  registry: Registry,
): Result<NumberRange> =>
  chain(movableAt(design, registry, path), (movable) => {
    const look = (value: number): Outcome => outcomeOf(withValue(design, path, value), registry);
    const now = look(movable.value);
    if (now.kind !== 'good')
      return fail(problem('not-sound', path, text.make.range.notSound(now.fails)));
    const { label, unit, value, min, max, step } = movable;
    const tolerance = toleranceOf(movable);
    const end = (limit: number): RangeEnd =>
      searchEnd({ from: value, limit, first: step, tolerance }, look);
    return ok({ path, label, unit, value, tolerance, down: end(min), up: end(max) });
  });
