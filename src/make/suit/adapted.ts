import type { Issue } from '../../core/issue.ts';
import type { NumberParameter, Parameter } from '../../core/parameter.ts';
import type { Result } from '../../core/result.ts';
import type { Design } from '../../document/schema.ts';
import type { Family, Fixture } from '../../family/index.ts';
import { WISHES } from './wishes.ts';

/** A parameter that was moved off where it stood so that the blade fits. */
export interface Changed {
  readonly label: string;
  readonly from: number | string;
  readonly to: number | string;
}

/** A parameter that was tried against an error that stayed, and how many of its values. */
export interface Tried {
  readonly label: string;
  readonly values: number;
}

export interface Adapted {
  readonly solved: Result<Fixture>;
  /** The parameters it was solved with. */
  readonly parameters: Values;
  readonly changed: readonly Changed[];
  /** What was tried against the errors that are left, in vain. */
  readonly tried: readonly Tried[];
}

/** Errors that are mended one after another at most. */
const ROUNDS = 6;
/** Even steps over the range of a parameter that an error names, and of any other. */
const NAMED = 12;
const OTHER = 4;
const PATH = 'fixture.parameters.';

type Values = Design['fixture']['parameters'];
type Value = Values[string];

/** Even values over a parameter's range, the nearest to where it stands first. */
const evenly = ({ min, max }: NumberParameter, now: number, steps: number): number[] =>
  Array.from({ length: steps + 1 }, (_, i) => min + ((max - min) * i) / steps).sort(
    (p, q) => Math.abs(p - now) - Math.abs(q - now),
  );

const valuesFor = (parameter: Parameter, now: Value, steps: number): Value[] =>
  parameter.kind === 'number'
    ? evenly(parameter, typeof now === 'number' ? now : parameter.initial, steps)
    : parameter.options.map(({ value }) => value).filter((value) => value !== now);

/** What a value is called: the option's label of a choice. */
const shown = (parameter: Parameter, value: Value): Value =>
  parameter.kind === 'choice'
    ? (parameter.options.find((option) => option.value === value)?.label ?? value)
    : value;

const errorsOf = (solved: Result<Fixture>): readonly Issue[] =>
  solved.ok ? [] : solved.issues.filter(({ severity }) => severity === 'error');

const keyOf = ({ code, path }: Issue): string => `${code} ${path}`;

/** A parameter to move against one error: values to try in order, and whether it was named. */
interface Attempt {
  readonly key: string;
  readonly list: readonly Value[];
  readonly named: boolean;
}

const attempts = (family: Family, values: Values, error: Issue): Attempt[] => {
  const path = error.mend?.path ?? error.path;
  const named = path.startsWith(PATH) ? path.slice(PATH.length) : '';
  const parameters = Object.entries(family.parameters).filter(([key]) => !WISHES.has(key));
  const now = (key: string, parameter: Parameter): Value => values[key] ?? parameter.initial;
  const mend = error.mend ? [error.mend.value] : [];
  const first = parameters
    .filter(([key]) => key === named)
    .map(([key, one]): Attempt => ({
      key,
      list: [...mend, ...valuesFor(one, now(key, one), NAMED)],
      named: true,
    }));
  const others = parameters
    .filter(([key]) => key !== named)
    .map(([key, one]): Attempt => ({
      key,
      list: valuesFor(one, now(key, one), OTHER),
      named: false,
    }));
  return [...first, ...others];
};

/**
 * A family with the given parameters for a design, moved where it does not fit: for each error in
 * turn the parameter that it names, its own mend first, then the nearest even share of its range:
 * a value with which the blade fits, else one that ends the error, brings back none that was mended
 * before, and adds none; then every other parameter more coarsely, which must make it fit. What a
 * maker wishes kept is never moved. The last answer, mended or not, with what was moved and what was
 * tried in vain.
 */
export const adapted = (design: Design, family: Family, given: Values): Adapted => {
  const solve = (parameters: Values): Result<Fixture> =>
    family.solve({ ...design, fixture: { family: family.id, parameters } });
  let [values, solved] = [given, solve(given)];
  const changed = new Map<string, Changed>();
  const mended = new Set<string>();
  let tried: Tried[] = [];
  let last: { readonly key: string; readonly solved: Result<Fixture> } | undefined;
  for (let round = 0; round < ROUNDS && !solved.ok; round += 1) {
    const errors = errorsOf(solved);
    const [error] = errors;
    if (error === undefined) break;
    tried = [];
    let next: { readonly key: string; readonly to: Value } | undefined;
    for (const { key, list, named } of attempts(family, values, error)) {
      const left = list.map((value) => ({
        value,
        keys: errorsOf(solve({ ...values, [key]: value })).map(keyOf),
      }));
      const ends = left.filter(
        ({ keys }) =>
          keys.length <= errors.length &&
          !keys.includes(keyOf(error)) &&
          !keys.some((one) => mended.has(one)),
      );
      const fits = ends.find(({ keys }) => keys.length === 0);
      const to = (fits ?? (named ? ends[0] : undefined))?.value;
      if (to !== undefined) {
        next = { key, to };
        break;
      }
      tried.push({ label: family.parameters[key]?.label ?? key, values: list.length });
    }
    if (next === undefined) {
      // Two rules that pull one parameter both ways: told by the one that stood first.
      if (last && error.path === PATH + last.key) {
        solved = last.solved;
        changed.delete(last.key);
      }
      break;
    }
    const { key, to } = next;
    last = { key, solved };
    const parameter = family.parameters[key];
    if (parameter === undefined) break;
    const from = changed.get(key)?.from ?? shown(parameter, values[key] ?? parameter.initial);
    changed.set(key, { label: parameter.label, from, to: shown(parameter, to) });
    mended.add(keyOf(error));
    values = { ...values, [key]: to };
    solved = solve(values);
  }
  return {
    solved,
    parameters: values,
    changed: [...changed.values()],
    tried: solved.ok ? [] : tried,
  };
};
