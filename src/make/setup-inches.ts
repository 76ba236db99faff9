import { MM_PER_INCH, plain } from '../core/units.ts';
import type { Design } from '../document/schema.ts';
import type { InchTable } from '../drawing/setup-data.ts';
import type { Reading, Setting } from '../family/index.ts';
import { text } from '../text/index.ts';
import { placesOf } from './setup-pictures.ts';

const words = text.make.setup;

/** Decimals of an inch that say a hundredth, or a tenth, of a millimetre. */
const HUNDREDTH = 4;
const TENTH = 3;

const inch = (value: number, decimals = HUNDREDTH): string =>
  (value / MM_PER_INCH).toFixed(decimals);

/** Whether the maker of a design measures in inches, as far as it tells: cut files are wanted in them. */
export const usesInches = ({ making }: Design): boolean => making.plates.inches === 'beside';

/** A reading with its unit and, where it is a length, in inches too. */
export const inBoth = (shown: string, { value, unit }: Reading): string =>
  unit === 'mm' ? words.inchesToo(shown, inch(value)) : shown;

/** A sentence with every length in inches too, as exactly as it tells it in millimetres. */
export const lengthsInBoth = (sentence: string): string =>
  sentence.replace(/(\d+)(\.\d+)? mm\b/g, (shown, whole: string, part = '') =>
    words.inchesToo(
      shown,
      inch(Number(`${whole}${String(part)}`), String(part).length > 2 ? HUNDREDTH : TENTH),
    ),
  );

/** Lengths that are set, at what to stop, and what comes of it on a blade, all in inches. */
export const inchTable = (
  settings: readonly Setting[],
  set: ReadonlySet<string>,
  named: (reading: Reading) => string,
  stopAt: string,
  blade: string,
): InchTable => {
  const lengths = ({ readings }: Setting): Reading[] =>
    readings.filter(({ key, unit }) => set.has(key) && unit === 'mm');
  const [first] = settings;
  return {
    names: [
      ...(first ? lengths(first) : []).map((reading) => words.inInches(named(reading))),
      words.inInches(stopAt),
      ...placesOf(first, blade).map(({ place, u }) =>
        words.placeInInches(text.make.place[place], plain(u / MM_PER_INCH, 2)),
      ),
    ],
    rows: settings.map((setting) => [
      ...lengths(setting).map(({ value }) => inch(value)),
      inch(setting.hollow?.stop ?? setting.edgeStop),
      ...placesOf(setting, blade).map(({ bevelHeight }) => inch(bevelHeight, TENTH)),
    ]),
  };
};
