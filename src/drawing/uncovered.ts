import { onCircle } from '../geometry/arc.ts';
import type { Vec2 } from '../geometry/vector.ts';
import { around, NOTHING, overlap, union, type Box } from './box.ts';
import { itemBox, polyline } from './items.ts';
import type { Item } from './sheet.ts';
import { bandOf, sideBands, type SideBands } from './side-bands.ts';

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
  const dx = bx - ax;
  const dy = by - ay;
  const square = dx * dx + dy * dy;
  const t = square === 0 ? 0 : ((x - ax) * dx + (y - ay) * dy) / square;
  const along = Math.max(0, Math.min(1, t));
  const offX = x - ax - along * dx;
  const offY = y - ay - along * dy;
  return offX * offX + offY * offY < RIM * RIM;
};

/** Whether an area hides a point: inside by the winding of its outline, and off its rim. */
const hides = (cover: Cover, x: number, y: number): boolean => {
  const { sides, starts, box } = cover;
  if (x < box.x0 || x > box.x1 || y < box.y0 || y > box.y1) return false;
  const band = bandOf(cover, y);
  const end = starts[band + 1] as number;
  let winding = 0;
  for (let i = starts[band] as number; i < end; i += 4) {
    const ax = sides[i] as number;
    const ay = sides[i + 1] as number;
    const bx = sides[i + 2] as number;
    const by = sides[i + 3] as number;
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
 * more than once where a side is in several bands. Tells whether a side comes near at all: where
 * none does, the stretch lies inside as a whole or outside.
 */
const addCrossings = (cover: Cover, a: Vec2, b: Vec2, reach: Box, cuts: number[]): boolean => {
  const { sides, starts } = cover;
  const { x0, y0, x1, y1 } = reach;
  const ax = a[0];
  const ay = a[1];
  const dx = b[0] - ax;
  const dy = b[1] - ay;
  let isNear = false;
  // The sides of neighbouring bands follow each other.
  const end = starts[bandOf(cover, y1) + 1] as number;
  for (let i = starts[bandOf(cover, y0)] as number; i < end; i += 4) {
    const cx = sides[i] as number;
    const ex = sides[i + 2] as number;
    if ((cx < x0 && ex < x0) || (cx > x1 && ex > x1)) continue;
    const cy = sides[i + 1] as number;
    const ey = sides[i + 3] as number;
    if ((cy < y0 && ey < y0) || (cy > y1 && ey > y1)) continue;
    isNear = true;
    const cross = dx * (ey - cy) - dy * (ex - cx);
    if (Math.abs(cross) < 1e-12) continue;
    const t = ((cx - ax) * (ey - cy) - (cy - ay) * (ex - cx)) / cross;
    const u = ((cx - ax) * dy - (cy - ay) * dx) / cross;
    if (t > 1e-9 && t < 1 - 1e-9 && u >= -1e-9 && u <= 1 + 1e-9) cuts.push(t);
  }
  return isNear;
};

const isHidden = (covers: readonly Cover[], x: number, y: number): boolean => {
  for (const cover of covers) if (hides(cover, x, y)) return true;
  return false;
};

/** The point at a share of the way from a to b. */
const along = (a: Vec2, b: Vec2, share: number): Vec2 => [
  a[0] + (b[0] - a[0]) * share,
  a[1] + (b[1] - a[1]) * share,
];

const ascending = (a: number, b: number): number => a - b;

/** The stretches of a course that nothing hides, joined again where they follow each other. */
const seen = (points: readonly Vec2[], covers: readonly Cover[]): Vec2[][] => {
  const out: Vec2[][] = [];
  let open: Vec2[] | undefined;
  // What hid one stretch as a whole mostly hides the next: it is asked first.
  const asked = [...covers];
  // Those whose rim is near, and the shares, ascending, between which they hide all or nothing.
  const near: Cover[] = [];
  const cuts: number[] = [];
  for (let i = 1; i < points.length; i++) {
    const b = points[i] ?? [0, 0];
    const a = points[i - 1] ?? b;
    const reach = {
      x0: Math.min(a[0], b[0]) - RIM,
      y0: Math.min(a[1], b[1]) - RIM,
      x1: Math.max(a[0], b[0]) + RIM,
      y1: Math.max(a[1], b[1]) + RIM,
    };
    near.length = 0;
    cuts.length = 0;
    let whole = 0;
    for (; whole < asked.length; whole += 1) {
      const cover = asked[whole] as Cover;
      if (!overlap(cover.box, reach)) continue;
      if (addCrossings(cover, a, b, reach, cuts)) near.push(cover);
      else if (hides(cover, a[0], a[1])) break;
    }
    if (whole < asked.length) {
      open = undefined;
      const [hiding] = asked.splice(whole, 1);
      if (hiding) asked.unshift(hiding);
      continue;
    }
    cuts.sort(ascending);
    for (let n = 0; n <= cuts.length; n++) {
      const from = n === 0 ? 0 : (cuts[n - 1] as number);
      const to = n === cuts.length ? 1 : (cuts[n] as number);
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

/** Upright strips of a sheet by which the areas beside a line are passed over. */
const STRIPS = 64;

/** Opaque areas by the upright strips of a sheet that they reach. */
interface Strips {
  readonly x0: number;
  readonly x1: number;
  readonly strips: readonly (readonly Cover[])[];
}

const stripOf = ({ x0, x1 }: Omit<Strips, 'strips'>, x: number): number =>
  Math.max(0, Math.min(STRIPS - 1, Math.floor(((x - x0) / (x1 - x0)) * STRIPS)));

const inStrips = (covers: readonly Cover[]): Strips => {
  const all = covers.reduce((box, cover) => union(box, cover.box), NOTHING);
  const strips: Cover[][] = Array.from({ length: STRIPS }, () => []);
  for (const cover of covers)
    for (let n = stripOf(all, cover.box.x0); n <= stripOf(all, cover.box.x1); n += 1)
      strips[n]?.push(cover);
  return { x0: all.x0, x1: all.x1, strips };
};

/**
 * The areas that come later than an item and overlap its box: each from the first of its strips
 * that the item reaches too.
 */
const laterThan = (all: Strips, index: number, box: Box): Cover[] => {
  const found: Cover[] = [];
  const first = stripOf(all, box.x0);
  const last = stripOf(all, box.x1);
  for (let n = first; n <= last; n += 1)
    for (const cover of all.strips[n] ?? [])
      if (
        cover.index > index &&
        overlap(cover.box, box) &&
        n === Math.max(first, stripOf(all, cover.box.x0))
      )
        found.push(cover);
  return found;
};

const coversOf = (items: readonly Item[]): Cover[] => {
  const covers: Cover[] = [];
  for (let index = 0; index < items.length; index += 1) {
    const item = items[index];
    if (item?.kind !== 'fill' || item.tone === 'ink') continue;
    const box = around(item.points);
    covers.push({ index, box, ...sideBands([item.points], box, RIM) });
  }
  return covers;
};

/** What is left of an item; `covers` are all opaque areas of its sheet. */
const leftOf = (item: Item, index: number, covers: Strips): Item[] => {
  if (item.kind === 'fill') return item.tone === 'ink' ? [item] : [];
  if (item.kind === 'text' || item.kind === 'blocks') return [item];
  const later = laterThan(covers, index, itemBox(item));
  if (later.length === 0) return [item];
  return seen(pointsOf(item), later).map((points) => polyline(points, item.stroke));
};

/**
 * The items of a sheet without opaque areas: what these hide of earlier lines is cut away, so
 * that the picture is the same in a format that cannot cover. Partly hidden arcs become chords.
 */
export const uncovered = (items: readonly Item[]): Item[] => {
  const covers = coversOf(items);
  if (covers.length === 0) return [...items];
  const strips = inStrips(covers);
  return items.flatMap((item, index) => leftOf(item, index, strips));
};
