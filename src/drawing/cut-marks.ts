import { add2, scale2, type Vec2 } from '../geometry/vector.ts';
import { angleOf } from '../geometry/arc.ts';
import { boardOf, isFree } from './board.ts';
import { union, type Box } from './box.ts';
import { cutLine, type Cut } from './cut-view.ts';
import { arrow } from './dimension.ts';
import { bounds, itemBox, label, line, TEXT } from './items.ts';
import type { Item } from './sheet.ts';

/** Thick ends of a cutting line, the arrows on them, mm. */
const END = 5;
const SHAFT = 9;

/** How far the thick ends stand off the view, tried in turn, mm. */
const AWAY = [2, 5, 9, 14, 20, 27];

interface Mark {
  readonly items: readonly Item[];
  /** Places for the letter at the mark's end, the best one first. */
  readonly letters: readonly Item[];
}

/** Letters stand off their arrow by this much, mm. */
const OFF = [4, 7, 10] as const;

/** The thick end of a cutting line with its arrow and letter (ISO 128-3). */
const markOf = (cut: Cut, inner: number, way: 1 | -1, k: number): Mark => {
  const { level, look } = cutLine(cut);
  const isLevel = cut.across === 'x';
  const put = (along: number): Vec2 => (isLevel ? [along, level * k] : [level * k, along]);
  const out: Vec2 = isLevel ? [way, 0] : [0, way];
  const tip = put(inner + (way * END) / 2);
  const tail = add2(tip, scale2(look, -SHAFT));
  const letter = (at: Vec2): Item =>
    label([at[0], at[1] - TEXT.heading / 2], cut.letter, {
      height: TEXT.heading,
      align: 'centre',
    });
  return {
    items: [
      line(put(inner), put(inner + way * END), 'visible'),
      line(tail, tip, 'dimension'),
      arrow(tip, angleOf(scale2(look, -1))),
    ],
    letters: OFF.flatMap((off) => [
      letter(add2(tail, scale2(out, off))),
      letter(add2(tail, scale2(look, -off))),
      letter(add2(tail, scale2(out, -off))),
      letter(add2(tip, scale2(out, off + END / 2))),
      letter(add2(tip, scale2(look, off))),
    ]),
  };
};

/** The letters, each at its first place that is free; undefined where one has none. */
const lettered = (marks: readonly Mark[], others: readonly Item[]): Item[] | undefined => {
  const board = boardOf(others);
  const placed: Item[] = [];
  for (const { letters } of marks) {
    const own = boardOf(placed);
    const free = letters.find((letter) => {
      const box = itemBox(letter);
      return isFree(own, box) && isFree(board, box);
    });
    if (free === undefined) return undefined;
    placed.push(free);
  }
  return placed;
};

/** Lines and ends of all cutting planes, so far off the view. */
const marksOf = (
  cuts: readonly Cut[],
  box: Box,
  k: number,
  away: number,
): { readonly lines: Item[]; readonly marks: Mark[] } => {
  const drawn = cuts.map((cut) => {
    const level = cutLine(cut).level * k;
    const [low, high] = cut.across === 'x' ? [box.x0, box.x1] : [box.y0, box.y1];
    const [from, to] = [low - away, high + away];
    const axis =
      cut.across === 'x'
        ? line([from, level], [to, level], 'centre')
        : line([level, from], [level, to], 'centre');
    return { axis, marks: [markOf(cut, from, -1, k), markOf(cut, to, 1, k)] };
  });
  const marks = drawn.flatMap((d) => d.marks);
  return { lines: [...drawn.map((d) => d.axis), ...marks.flatMap((m) => m.items)], marks };
};

/**
 * The lines of all cutting planes over a view with the balloons outside them, as near as their
 * letters allow; what is drawn already is kept clear of letters.
 */
export const withCuts = (
  cuts: readonly Cut[],
  box: Box,
  k: number,
  drawn: readonly Item[],
  balloons: (around: Box) => Item[],
): { readonly marks: Item[]; readonly numbers: Item[] } => {
  for (const away of AWAY) {
    const { lines, marks } = marksOf(cuts, box, k, away);
    const numbers = balloons(union(box, bounds(lines)));
    const letters = lettered(marks, [...drawn, ...lines, ...numbers]);
    if (letters) return { marks: [...lines, ...letters], numbers };
  }
  return { marks: [], numbers: balloons(box) };
};
