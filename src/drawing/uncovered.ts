import { onCircle } from '../geometry/arc.ts';
import type { Vec2 } from '../geometry/vector.ts';
import { around, overlap, type Box } from './box.ts';
import { itemBox, polyline } from './items.ts';
import type { Item } from './sheet.ts';
import { sideBands, type SideBands } from './side-bands.ts';

type Stroked = Extract<Item, { readonly kind: 'line' | 'polyline' | 'arc' | 'circle' }>;

/** An opaque area that hides what was drawn before it. */
interface Cover extends SideBands {
  readonly index: number;
  readonly box: Box;
}

/** Lines this near to the rim of an area are its edges and stay, mm on the paper. */
const RIM = 0.02;

/** Straight pieces of a whole circle that is partly hidden. */
const PIECES = 120;

const pointsOf = (item: Stroked): readonly Vec2[] => {
  if (item.kind === 'line') return [item.a, item.b];
  if (item.kind === 'polyline') return item.points;
  const from = item.kind === 'arc' ? item.from : 0;
  const turn = item.kind === 'arc' ? (((item.to - from) % 360) + 360) % 360 : 0;
  const sweep = turn === 0 ? 360 : turn;
  const n = Math.max(2, Math.ceil((sweep / 360) * PIECES));
  return Array.from({ length: n + 1 }, (_, i) =>
    onCircle(item.centre, item.radius, from + (sweep * i) / n),
  );
};

/** Whether a point lies on the rim of an area, along its side from (ax, ay) to (bx, by). */
const isOnRim = (x: number, y: number, ax: number, ay: number, bx: number, by: number): boolean => {
  // Most sides lie clear of the point; only the others are worth a distance.
  if ((ax < x - RIM && bx < x - RIM) || (ax > x + RIM && bx > x + RIM)) return false;
  if ((ay < y - RIM && by < y - RIM) || (ay > y + RIM && by > y + RIM)) return false;
  const [dx, dy] = [bx - ax, by - ay];
  const square = dx * dx + dy * dy;
  const t = square === 0 ? 0 : ((x - ax) * dx + (y - ay) * dy) / square;
  const along = Math.max(0, Math.min(1, t));
  return Math.hypot(x - ax - along * dx, y - ay - along * dy) < RIM;
};

/** Whether an area hides a point: inside by the winding of its outline, and off its rim. */
const hides = ({ sides, bandOf, box }: Cover, x: number, y: number): boolean => {
  if (x < box.x0 || x > box.x1 || y < box.y0 || y > box.y1) return false;
  const near = sides[bandOf(y)] ?? [];
  let winding = 0;
  for (let i = 0; i < near.length; i += 4) {
    const [ax, ay] = [near[i] ?? 0, near[i + 1] ?? 0];
    const [bx, by] = [near[i + 2] ?? 0, near[i + 3] ?? 0];
    if (isOnRim(x, y, ax, ay, bx, by)) return false;
    if (ay > y === by > y) continue;
    const side = (bx - ax) * (y - ay) - (by - ay) * (x - ax);
    if (by > ay && side > 0) winding++;
    if (by < ay && side < 0) winding--;
  }
  return winding !== 0;
};

/**
 * Adds to `cuts` where along a stretch (0 to 1) the outline of an area crosses it; the same place
 * more than once where a side is in several bands.
 */
const addCrossings = (
  { sides, bandOf }: Cover,
  a: Vec2,
  b: Vec2,
  { x0, y0, x1, y1 }: Box,
  cuts: number[],
): void => {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const last = bandOf(y1);
  for (let n = bandOf(y0); n <= last; n++) {
    const near = sides[n] ?? [];
    for (let i = 0; i < near.length; i += 4) {
      const [cx, ex] = [near[i] ?? 0, near[i + 2] ?? 0];
      if ((cx < x0 && ex < x0) || (cx > x1 && ex > x1)) continue;
      const [cy, ey] = [near[i + 1] ?? 0, near[i + 3] ?? 0];
      if ((cy < y0 && ey < y0) || (cy > y1 && ey > y1)) continue;
      const cross = dx * (ey - cy) - dy * (ex - cx);
      if (Math.abs(cross) < 1e-12) continue;
      const t = ((cx - a[0]) * (ey - cy) - (cy - a[1]) * (ex - cx)) / cross;
      const u = ((cx - a[0]) * dy - (cy - a[1]) * dx) / cross;
      if (t > 1e-9 && t < 1 - 1e-9 && u >= -1e-9 && u <= 1 + 1e-9) cuts.push(t);
    }
  }
};

/** Shares along a stretch, ascending, between which it is hidden as a whole or not at all. */
const cutsOf = (covers: readonly Cover[], a: Vec2, b: Vec2, reach: Box): readonly number[] => {
  if (covers.length === 0) return WHOLE;
  const cuts: number[] = [...WHOLE];
  for (const cover of covers) addCrossings(cover, a, b, reach, cuts);
  return cuts.length === 2 ? cuts : cuts.sort((p, q) => p - q);
};

const WHOLE: readonly number[] = [0, 1];

const isHidden = (covers: readonly Cover[], x: number, y: number): boolean => {
  for (const cover of covers) if (hides(cover, x, y)) return true;
  return false;
};

/** The point at a share of the way from a to b. */
const along = (a: Vec2, b: Vec2, share: number): Vec2 => [
  a[0] + (b[0] - a[0]) * share,
  a[1] + (b[1] - a[1]) * share,
];

/** The stretches of a course that nothing hides, joined again where they follow each other. */
const seen = (points: readonly Vec2[], covers: readonly Cover[]): Vec2[][] => {
  const out: Vec2[][] = [];
  let open: Vec2[] | undefined;
  const near: Cover[] = [];
  for (let i = 1; i < points.length; i++) {
    const b = points[i] ?? [0, 0];
    const a = points[i - 1] ?? b;
    const reach = {
      x0: Math.min(a[0], b[0]) - RIM,
      y0: Math.min(a[1], b[1]) - RIM,
      x1: Math.max(a[0], b[0]) + RIM,
      y1: Math.max(a[1], b[1]) + RIM,
    };
    let count = 0;
    for (const cover of covers) if (overlap(cover.box, reach)) near[count++] = cover;
    near.length = count;
    const cuts = cutsOf(near, a, b, reach);
    for (let n = 1; n < cuts.length; n++) {
      const [from, to] = [cuts[n - 1] ?? 0, cuts[n] ?? 0];
      if (to - from < 1e-9) continue;
      const middle = (from + to) / 2;
      if (isHidden(near, a[0] + (b[0] - a[0]) * middle, a[1] + (b[1] - a[1]) * middle))
        open = undefined;
      // Pieces of one straight stretch go on as one; its corners stay.
      else if (open && from > 0) open[open.length - 1] = along(a, b, to);
      else if (open) open.push(along(a, b, to));
      else out.push((open = [along(a, b, from), along(a, b, to)]));
    }
  }
  return out;
};

/**
 * The items of a sheet without opaque areas: what these hide of earlier lines is cut away, so
 * that the picture is the same in a format that cannot cover. Partly hidden arcs become chords.
 */
export const uncovered = (items: readonly Item[]): Item[] => {
  const covers = items.flatMap((item, index): Cover[] => {
    if (item.kind !== 'fill' || item.tone === 'ink') return [];
    const box = around(item.points);
    return [{ index, box, ...sideBands([item.points], box, RIM) }];
  });
  return items.flatMap((item, index): Item[] => {
    if (item.kind === 'fill') return item.tone === 'ink' ? [item] : [];
    if (item.kind === 'text' || item.kind === 'blocks') return [item];
    const box = itemBox(item);
    const later = covers.filter((cover) => cover.index > index && overlap(cover.box, box));
    if (later.length === 0) return [item];
    return seen(pointsOf(item), later).map((points) => polyline(points, item.stroke));
  });
};
