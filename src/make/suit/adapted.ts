import type { Issue } from '../../core/issue.ts';
import type { NumberParameter } from '../../core/parameter.ts';
import type { Result } from '../../core/result.ts';
import type { Design } from '../../document/schema.ts';
import type { Family, Fixture } from '../../family/index.ts';

/** A parameter that was moved off its initial value so that the blade fits. */
export interface Changed {
  readonly label: string;
  readonly from: number;
  readonly to: number;
}

export interface Adapted {
  readonly solved: Result<Fixture>;
  readonly changed: readonly Changed[];
}

/** Parameters that are moved at most, and values that are tried for each. */
const ROUNDS = 4;
const TRIES = 12;
const PATH = 'fixture.parameters.';

type Values = Design['fixture']['parameters'];

/** Even values over a parameter's range, the nearest to where it stands first. */
const candidates = ({ min, max }: NumberParameter, now: number): number[] =>
  Array.from({ length: TRIES + 1 }, (_, i) => min + ((max - min) * i) / TRIES).sort(
    (p, q) => Math.abs(p - now) - Math.abs(q - now),
  );

const errorsOf = (solved: Result<Fixture>): readonly Issue[] =>
  solved.ok ? [] : solved.issues.filter(({ severity }) => severity === 'error');

/**
 * A family with the given parameters for a design, and where an error names one of its lengths, the
 * nearest even share of that length's range with which the error is gone: a few of them in turn. The
 * last answer, mended or not, with what was moved.
 */
export const adapted = (design: Design, family: Family, given: Values): Adapted => {
  const solve = (parameters: Values): Result<Fixture> =>
    family.solve({ ...design, fixture: { family: family.id, parameters } });
  let [values, solved] = [given, solve(given)];
  const changed: Changed[] = [];
  for (let round = 0; round < ROUNDS && !solved.ok; round += 1) {
    const errors = errorsOf(solved);
    const named = errors.flatMap((error) => {
      const key = error.path.startsWith(PATH) ? error.path.slice(PATH.length) : '';
      const parameter = family.parameters[key];
      return parameter?.kind === 'number' ? [{ key, parameter, error }] : [];
    });
    const [first] = named;
    if (first === undefined) break;
    const { key, parameter, error } = first;
    const now = values[key];
    const from = typeof now === 'number' ? now : parameter.initial;
    let found = false;
    for (const to of candidates(parameter, from)) {
      const next = { ...values, [key]: to };
      const answer = solve(next);
      if (errorsOf(answer).some((e) => e.code === error.code && e.path === error.path)) continue;
      [values, solved, found] = [next, answer, true];
      changed.push({ label: parameter.label, from, to });
      break;
    }
    if (!found) break;
  }
  return { solved, changed };
};
