import type { Arc } from '../geometry/arc.ts';
import { onCircle } from '../geometry/arc.ts';
import { scale2, type Vec2 } from '../geometry/vector.ts';
import { text as words } from '../text/index.ts';
import { boardOf, crossed, isFree, isOpen, onto, type Board } from './board.ts';
import { bounds, label, line, TEXT } from './items.ts';
import { contains, widthOf, heightOf, type Box } from './box.ts';
import { ABOVE, arrow, dimensionText, leader, linear } from './dimension.ts';
import { fitsBetween, ordinates, rowDepth, type Ordinate } from './ordinate.ts';
import type { Item } from './sheet.ts';
import { textWidth } from './text-width.ts';

/** Something that has to be located: where it is, mm from the datum, and how far it reaches. */
export interface Feature {
  readonly at: Vec2;
  /** Half its size along x and y, mm: 0 for a corner. */
  readonly half: Vec2;
  /** Its name beside it in the view; corners have none. */
  readonly id?: string;
}

/** One view to be dimensioned: its lines with the datum at the origin, and what is in it. */
export interface Face {
  /** Lines of the view, paper mm. */
  readonly items: readonly Item[];
  /** Size of the view, real mm, from the datum: right and up, or left where x is negative. */
  readonly size: Vec2;
  readonly k: number;
  readonly features: readonly Feature[];
  readonly arcs: readonly Arc[];
  /** Overall dimensions to be written, e.g. "120" or "Ø50". */
  readonly overall: { readonly x?: string; readonly y?: string };
}

/** White space between the outermost ordinates and an overall dimension line, mm. */
const OVERALL = 8;

const viewBox = ({ size, k }: Face): Box => ({
  x0: Math.min(0, size[0]) * k,
  y0: 0,
  x1: Math.max(0, size[0]) * k,
  y1: size[1] * k,
});

/** Features gathered to one running dimension for every value that is written differently. */
const gather = (face: Face, axis: 0 | 1, skip: string | undefined): Ordinate[] => {
  const other = axis === 0 ? 1 : 0;
  const rows = new Map<string, Ordinate>();
  for (const { at, half } of face.features) {
    // Views from the left have their datum at the right.
    const value = dimensionText(axis === 0 && face.size[0] < 0 ? -at[0] : at[axis]);
    if (value === skip) continue;
    const spare = half[other] > 0 ? 2 : 0;
    const low = (at[other] - half[other]) * face.k - spare;
    const high = (at[other] + half[other]) * face.k + spare;
    const known = rows.get(value);
    rows.set(value, {
      text: value,
      at: known?.at ?? at[axis] * face.k,
      low: Math.min(known?.low ?? Infinity, low),
      high: Math.max(known?.high ?? -Infinity, high),
    });
  }
  const sorted = [...rows.values()].sort((a, b) => a.at - b.at);
  // A zero alone says nothing.
  return sorted.every((o) => o.at === 0) ? [] : sorted;
};

/**
 * Each ordinate on the side it is nearer to, or all on the first where the second has no room
 * between the extension lines of the overall dimension. Zero stays with the datum.
 */
const share = (
  row: readonly Ordinate[],
  [low, high]: readonly [number, number],
  [foot, head]: readonly [number, number],
): { readonly near: readonly Ordinate[]; readonly far: readonly Ordinate[] } => {
  const isFar = (o: Ordinate): boolean => o.at !== 0 && head - o.high < o.low - foot - 1e-6;
  const far = row.filter(isFar);
  return fitsBetween(far, low, high)
    ? { near: row.filter((o) => !isFar(o)), far }
    : { near: row, far: [] };
};

const rowWidth = (row: readonly Ordinate[]): number =>
  rowDepth(row.length === 0) + Math.max(0, ...row.map((o) => textWidth(o.text, TEXT.normal)));

/** Radii, each written once with the number of arcs that have it, where a leader finds room. */
const radii = (face: Face, start: Board): Item[] => {
  const groups = new Map<string, Arc[]>();
  for (const arc of face.arcs) {
    const name = dimensionText(arc.radius);
    groups.set(name, [...(groups.get(name) ?? []), arc]);
  }
  let board = start;
  const items: Item[] = [];
  for (const [radius, arcs] of groups) {
    const value = words.drawing.radius(radius, arcs.length);
    let best: { cost: number; items: Item[] } | undefined;
    for (const reach of [5, 8, 11, 15, 20, 26, 33, 42, 55, 70, 90])
      for (const arc of arcs.slice(0, 12))
        for (const share of [0.5, 0.3, 0.7])
          for (const way of [1, -1]) {
            if (best && best.cost <= reach) break;
            const angle = arc.start + arc.sweep * share;
            const centre = scale2(arc.centre, face.k);
            const r = arc.radius * face.k;
            if (way < 0 && reach > r && r > 15) continue;
            const tip = onCircle(centre, r, angle);
            const bend = onCircle(centre, r + way * reach, angle);
            const drawn = leader(tip, bend, value);
            const textItem = drawn.at(-1);
            const landing = drawn[2];
            if (!textItem || landing?.kind !== 'line') continue;
            if (!isFree(board, bounds([textItem])) || !isOpen(board, tip, bend)) continue;
            if (!isOpen(board, landing.a, landing.b)) continue;
            const lines = crossed(board, tip, bend) + crossed(board, landing.a, landing.b);
            const cost = reach + 6 * lines;
            if (!best || cost < best.cost) best = { cost, items: drawn };
          }
    const chosen = best?.items ?? aside(value, board);
    items.push(...chosen);
    board = onto(board, chosen);
  }
  return items;
};

/** The last resort: right of everything drawn, where there is always room. */
const aside = (value: string, board: Board): Item[] => {
  const right = Math.max(
    0,
    ...board.stretches.flat().map((p) => p[0]),
    ...board.texts.map((b) => b.x1),
  );
  return [label([right + 3, 0], value)];
};

/** A leader is longer than its arrowhead, mm. */
const SHORTEST = 4;

const DIRECTIONS = [45, 135, 315, 225, 90, 270, 0, 180, 67, 113, 23, 157, 293, 247, 337, 203];

/**
 * Names beside their features, without a line where there is room, else with a leader; `lost`
 * counts those for which there was neither. All stay inside `within` where it is given,
 * and one that cannot is left to the hole table.
 */
export const names = (
  features: readonly Feature[],
  k: number,
  start: Board,
  within?: Box,
): { readonly items: Item[]; readonly lost: number } => {
  let board = start;
  let lost = 0;
  const items: Item[] = [];
  for (const { at, half, id } of features) {
    if (id === undefined) continue;
    const centre = scale2(at, k);
    const reach = scale2(half, k);
    const w = textWidth(id, TEXT.normal) / 2;
    const h = TEXT.normal / 2;
    let best: { cost: number; items: Item[] } | undefined;
    for (const extra of [0, 1.5, 4, 7, 10, 14, 19, 25, 32, 40, 50, 62, 76, 92])
      for (const direction of DIRECTIONS) {
        if (best && best.cost <= extra) break;
        const u = onCircle([0, 0], 1, direction);
        const clear = (i: 0 | 1, size: number): number =>
          Math.abs(u[i]) < 1e-6 ? Infinity : (reach[i] + size + 1.2) / Math.abs(u[i]);
        const t = Math.min(clear(0, w), clear(1, h)) + extra;
        const middle: Vec2 = [centre[0] + u[0] * t, centre[1] + u[1] * t];
        const name = label([middle[0], middle[1] - h], id, { align: 'centre' });
        const box = bounds([name]);
        if (!isFree(board, box) || (within && !contains(within, box))) continue;
        if (extra < 2) {
          const cost = extra;
          if (!best || cost < best.cost) best = { cost, items: [name] };
          continue;
        }
        const inside = Math.min(
          Math.abs(u[0]) < 1e-6 ? Infinity : (w + 1) / Math.abs(u[0]),
          Math.abs(u[1]) < 1e-6 ? Infinity : (h + 1.8) / Math.abs(u[1]),
        );
        const rim = Math.min(
          Math.abs(u[0]) < 1e-6 ? Infinity : reach[0] / Math.abs(u[0]),
          Math.abs(u[1]) < 1e-6 ? Infinity : reach[1] / Math.abs(u[1]),
        );
        const from = onCircle(centre, Math.min(rim, Math.max(...reach)), direction);
        const to = onCircle(centre, t - inside, direction);
        if (Math.hypot(to[0] - from[0], to[1] - from[1]) < SHORTEST) continue;
        if (!isOpen(board, from, to)) continue;
        const cost = extra + 5 * crossed(board, from, to);
        if (!best || cost < best.cost)
          best = { cost, items: [line(from, to, 'dimension'), arrow(from, direction), name] };
      }
    if (!best) lost++;
    const chosen = best?.items ?? (within ? [] : aside(id, board));
    items.push(...chosen);
    board = onto(board, chosen);
  }
  return { items, lost };
};

/** More ordinates than this on one axis leave the holes to their table alone. */
const crowded = (row: readonly Ordinate[], side: number): boolean =>
  row.length > 6 && row.length * 5.2 > side + 30;

/** The view with running dimensions of the given features, overall sizes and radii. */
const measured = (whole: Face, features: readonly Feature[]): Item[] => {
  const box = viewBox(whole);
  const corners = { ...whole, features: features.filter((f) => f.id === undefined) };
  const rowOf = (axis: 0 | 1, side: number, skip: string | undefined): Ordinate[] => {
    const row = gather({ ...whole, features }, axis, skip);
    return crowded(row, side) ? gather(corners, axis, skip) : row;
  };
  const [columns, rows] = [[box.x0, box.x1] as const, [box.y0, box.y1] as const];
  const across = share(rowOf(0, widthOf(box), whole.overall.x), columns, rows);
  const up = share(rowOf(1, heightOf(box), whole.overall.y), rows, columns);
  const items: Item[] = [
    ...whole.items,
    ...ordinates(across.near, 'bottom', box),
    ...ordinates(across.far, 'top', box),
    ...ordinates(up.near, 'left', box),
    ...ordinates(up.far, 'right', box),
  ];
  const overall = (axis: 'x' | 'y', text: string | undefined, away: number): Item[] => {
    if (text === undefined) return [];
    const corner: Vec2 = [box.x1, box.y1];
    return axis === 'x'
      ? linear({ axis, a: [box.x0, box.y1], b: corner, at: box.y1 + away, text })
      : linear({ axis, a: [box.x1, box.y0], b: corner, at: box.x1 + away + ABOVE, text });
  };
  items.push(
    ...overall('x', whole.overall.x, rowWidth(across.far) + OVERALL),
    ...overall('y', whole.overall.y, rowWidth(up.far) + OVERALL),
  );
  return [...items, ...radii(whole, boardOf(items))];
};

/**
 * The view with all its dimensions: running ones from the datum, overall sizes, radii and names.
 * Rows keep to their own side, leaders and names look for white space, so that no text touches
 * a line or another text. Where the running dimensions of the holes leave no room for their
 * names, the holes are left to their table.
 */
export const dimensioned = (face: Face): Item[] => {
  const items = measured(face, face.features);
  const named = names(face.features, face.k, boardOf(items));
  if (named.lost === 0) return [...items, ...named.items];
  const bare = measured(
    face,
    face.features.filter((f) => f.id === undefined),
  );
  return [...bare, ...names(face.features, face.k, boardOf(bare)).items];
};
