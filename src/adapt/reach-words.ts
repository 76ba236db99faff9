import { plain } from '../core/units.ts';
import type { ReachAxis } from '../family/index.ts';
import type { Interval } from '../geometry/interval.ts';
import { text } from '../text/index.ts';
import type { Proved, ReachTable } from './reach.ts';

const words = text.adapt;

/** A size of a table of reach, to the hundredth at most. */
export const sizeWord = (value: number): string => String(Number(plain(value, 2)));

export const unitOf = ({ unit }: ReachAxis): string => words.reachUnits[unit];

export const axisTitle = (axis: ReachAxis): string => words.reachAxis(axis.label, unitOf(axis));

const rangeWord = ([from, to]: Interval): string => words.reachRange(sizeWord(from), sizeWord(to));

/** Head of a column or row. */
export const bandWord = ([from, to]: Interval): string =>
  words.reachBand(sizeWord(from), sizeWord(to));

/** What is proved for a band, in figures. */
export const cellOf = ({ run, also }: Proved): string =>
  words.reachCell(rangeWord(run), also && rangeWord(also));

/** What a reader of the table has to know. */
export const notesOf = ({ axes: { run, also }, scope }: ReachTable): string[] => [
  words.reachProof(run.label, unitOf(run), sizeWord(run.step)),
  ...(also ? [words.reachAlso(also.label, unitOf(also))] : []),
  words.reachScope(scope),
];
