import type { Arc } from '../geometry/arc.ts';
import { scale2, type Vec2 } from '../geometry/vector.ts';
import { boardOf } from './board.ts';
import { TEXT } from './items.ts';
import { names, radii, type Feature, type Labels } from './labels.ts';
import { around, heightOf, union, widthOf, type Box } from './box.ts';
import { ABOVE, dimensionText, linear } from './dimension.ts';
import { fitsBetween, ordinates, rowDepth, type Ordinate } from './ordinate.ts';
import type { Item } from './sheet.ts';
import { textWidth } from './text-width.ts';

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

/**
 * The view with everything that is dimensioned: rounded corners are dimensioned where their edges
 * would meet, which may lie outside. Rows of values stand beside this box, so that no extension
 * line of one row runs through another.
 */
const dimensionedBox = (face: Face): Box =>
  union(viewBox(face), around(face.features.map(({ at }) => scale2(at, face.k))));

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

/** More ordinates than this on one axis leave the holes to their table alone. */
const crowded = (row: readonly Ordinate[], side: number): boolean =>
  row.length > 6 && row.length * 5.2 > side + 30;

/** The view with running dimensions of the given features, overall sizes and radii. */
const measured = (whole: Face, features: readonly Feature[]): Labels => {
  const box = viewBox(whole);
  const outer = dimensionedBox(whole);
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
    ...ordinates(across.near, 'bottom', outer),
    ...ordinates(across.far, 'top', outer),
    ...ordinates(up.near, 'left', outer),
    ...ordinates(up.far, 'right', outer),
  ];
  const overall = (axis: 'x' | 'y', text: string | undefined, away: number): Item[] => {
    if (text === undefined) return [];
    const corner: Vec2 = [box.x1, box.y1];
    return axis === 'x'
      ? linear({ axis, a: [box.x0, box.y1], b: corner, at: outer.y1 + away, text })
      : linear({ axis, a: [box.x1, box.y0], b: corner, at: outer.x1 + away + ABOVE, text });
  };
  items.push(
    ...overall('x', whole.overall.x, rowWidth(across.far) + OVERALL),
    ...overall('y', whole.overall.y, rowWidth(up.far) + OVERALL),
  );
  const called = radii(whole.arcs, whole.k, boardOf(items));
  return { items: [...items, ...called.items], lost: called.lost };
};

/**
 * The view with all its dimensions: running ones from the datum, overall sizes, radii and names.
 * Rows keep to their own side, leaders and names look for white space, so that no text touches
 * a line or another text. Where the running dimensions of the holes leave no room for their
 * names, the holes are left to their table.
 */
export const dimensioned = (face: Face): Item[] => {
  const attempt = (features: readonly Feature[]): Labels => {
    const { items, lost } = measured(face, features);
    const named = names(face.features, face.k, boardOf(items));
    return { items: [...items, ...named.items], lost: lost + named.lost };
  };
  const full = attempt(face.features);
  if (full.lost === 0) return full.items;
  const bare = attempt(face.features.filter((f) => f.id === undefined));
  return bare.lost < full.lost ? bare.items : full.items;
};
