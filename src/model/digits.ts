import { rectangle, type Loop } from '../geometry/loop.ts';
import type { Vec2 } from '../geometry/vector.ts';

/** Which of the seven bars a digit shows: top, the upper two, middle, the lower two, bottom. */
const BARS: Readonly<Record<string, string>> = {
  '0': 'abcefg',
  '1': 'cf',
  '2': 'acdeg',
  '3': 'acdfg',
  '4': 'bcdf',
  '5': 'abdfg',
  '6': 'abdefg',
  '7': 'acf',
  '8': 'abcdefg',
  '9': 'abcdfg',
  '.': 'h',
};

/**
 * A number in the bars of a seven-bar display, which do not touch each other: raised on a print
 * each bar is a contour of its own. `at` is the lower left corner; digits are two thirds as wide as
 * high and bars `bar` wide, mm. Characters other than digits and the point are left out.
 */
export const sevenBars = (number: string, at: Vec2, height: number, bar: number): Loop[] => {
  const width = 0.65 * height;
  const half = height / 2;
  /** Bars keep clear of each other by this at a corner. */
  const clear = bar / 2;
  let x = at[0];
  return [...number].flatMap((character) => {
    const [left, low] = [x, at[1]];
    const bars = BARS[character] ?? '';
    x += bars === 'h' ? 2 * bar : bars === '' ? 0 : width + 2 * bar;
    const level = (y: number): Loop =>
      rectangle([left + bar + clear, low + y], [left + width - bar - clear, low + y + bar]);
    const upright = (side: number, y: number): Loop =>
      rectangle([left + side, low + y + bar + clear], [left + side + bar, low + y + half - clear]);
    const drawn: Readonly<Record<string, Loop>> = {
      a: level(height - bar),
      b: upright(0, half - bar),
      c: upright(width - bar, half - bar),
      d: level(half - bar / 2),
      e: upright(0, 0),
      f: upright(width - bar, 0),
      g: level(0),
      h: rectangle([left, low], [left + bar, low + bar]),
    };
    return [...bars].flatMap((key) => drawn[key] ?? []);
  });
};
