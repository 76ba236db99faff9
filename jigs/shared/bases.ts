import { mendedBy, problem, type Issue, type Making } from '../../src/family/index.ts';
import { parameters, type Values } from './parameters.ts';

/** Between thicknesses that are tried, mm: sheets are sold by the tenth at most. */
const STEP = 0.1;

/** Thicknesses of the base that satisfy a rule, as spans, mm. */
export type Spans = readonly (readonly [from: number, to: number])[];

const { min, max } = parameters.base;
const THICKNESSES = Array.from(
  { length: Math.round((max - min) / STEP) + 1 },
  (_, i) => Math.round((min + i * STEP) * 10) / 10,
);

const spansOf = (fitting: readonly number[]): Spans =>
  fitting.reduce<[number, number][]>((spans, t) => {
    const last = spans.at(-1);
    if (last && t - last[1] < 1.5 * STEP) last[1] = t;
    else spans.push([t, t]);
    return spans;
  }, []);

/** Nearest of several thicknesses to the one asked for, of two as near the thicker. */
const nearest = (fitting: readonly number[], base: number): number | undefined =>
  [...fitting].sort((a, b) => Math.abs(a - base) - Math.abs(b - base) || b - a)[0];

/**
 * An issue of the base's thickness, with every thickness in its range that satisfies the rule, and
 * the nearest of the workshop's sheets (else the nearest of all) as its mend.
 */
export const withBase = (
  code: string,
  making: Making,
  { base }: Pick<Values, 'base'>,
  holds: (base: number) => boolean,
  words: (spans: Spans) => { readonly message: string; readonly fix: string },
): Issue => {
  const fitting = THICKNESSES.filter(holds);
  const issue = problem(code, 'fixture.parameters.base', words(spansOf(fitting)));
  const sheets = making.plates.thicknesses.filter((t) => t >= min && t <= max && holds(t));
  const mend = nearest(sheets, base) ?? nearest(fitting, base);
  return mend === undefined ? issue : mendedBy(issue, mend);
};
