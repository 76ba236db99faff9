import { cos, sin } from '../../core/trigonometry.ts';
import type { Place } from '../../blade/place.ts';
import type { Side } from '../../blade/schema.ts';
import { radians } from '../../core/units.ts';
import { root } from '../../grind/numeric/root.ts';
import { columnFrom, type Field } from '../field.ts';
import type { VirtualGrind } from '../types.ts';

/** Less than this off the blank counts as untouched, mm. */
const UNTOUCHED = 1e-7;

/**
 * Where the ground face of a side runs out into the blank, v in each column: the last ground stretch
 * drawn on to the blank's face. The spine where nothing of the blank is left, the edge where all is.
 */
export const grindLine = ({ us, rows, v, stock, ...faces }: Field, side: Side): Float64Array => {
  const face = faces[side];
  const off = (k: number): number => (stock[k] ?? 0) - (face[k] ?? 0);
  return us.map((_, i) => {
    const [first, end] = [i * rows, (i + 1) * rows - 1];
    let k = first;
    while (k <= end && off(k) <= UNTOUCHED) k += 1;
    if (k > end) return v[end] ?? 0;
    const at = v[k] ?? 0;
    if (k === first || k === end) return at;
    const rate = (off(k + 1) - off(k)) / ((v[k + 1] ?? 0) - at);
    return rate > 0 ? Math.max(at - off(k) / rate, v[k - 1] ?? 0) : at;
  });
};

/**
 * The grind line of what a grind took: of a hollow, which is ground into a bevel that the blade came
 * with, its upper limit on that bevel; else `grindLine`.
 */
export const finishedLine = (
  { start, finished, passes }: VirtualGrind,
  side: Side,
): Float64Array => {
  const isHollow = passes.some(
    ({ pass }) => pass.side === side && pass.holding.kind === 'edge-rest',
  );
  return grindLine(isHollow ? { ...finished, stock: start[side] } : finished, side);
};

/** Value of a row of columns at u, straight between them and level beyond. */
export const along = (field: Field, values: ArrayLike<number>, u: number): number => {
  const { us } = field;
  const right = Math.min(Math.max(columnFrom(field, u), 1), us.length - 1);
  const [u0, u1] = [us[right - 1] ?? 0, us[right] ?? 1];
  const k = Math.min(1, Math.max(0, (u - u0) / (u1 - u0)));
  return (values[right - 1] ?? 0) * (1 - k) + (values[right] ?? 0) * k;
};

/**
 * Height of a grind line over the edge at a place, square to its spine as the section model takes
 * it, mm.
 */
export const lineHeight = (field: Field, line: ArrayLike<number>, place: Place): number => {
  const slope = radians(place.slope);
  const [nu, nv] = [-sin(slope), cos(slope)];
  const [u0, v0] = place.spine;
  // From the spine on, the line lies further towards the edge until it is met.
  const past = (t: number): number => v0 + t * nv - along(field, line, u0 + t * nu);
  const ends = [past(0), past(place.height)] as const;
  if (ends[0] >= 0) return place.height;
  if (ends[1] < 0) return 0;
  return place.height - root(past, 0, place.height, ends);
};

/** Distance of a side's edge from the midplane, by column, mm. */
export const edgeOf = ({ us, rows, ...faces }: Field, side: Side): Float64Array =>
  us.map((_, i) => faces[side][(i + 1) * rows - 1] ?? 0);
