import { onCircle } from '../geometry/arc.ts';
import type { Vec2 } from '../geometry/vector.ts';
import { overlap, type Box } from './box.ts';
import { itemBox, polyline } from './items.ts';
import type { Item } from './sheet.ts';

type Stroked = Extract<Item, { readonly kind: 'line' | 'polyline' | 'arc' | 'circle' }>;

/** An opaque area that hides what was drawn before it. */
interface Cover {
  readonly index: number;
  readonly ring: readonly Vec2[];
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

const distanceTo = ([x, y]: Vec2, a: Vec2, b: Vec2): number => {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const square = dx * dx + dy * dy;
  const t = square === 0 ? 0 : ((x - a[0]) * dx + (y - a[1]) * dy) / square;
  const along = Math.max(0, Math.min(1, t));
  return Math.hypot(x - a[0] - along * dx, y - a[1] - along * dy);
};

/** Whether an area hides a point: inside by the winding of its outline, and off its rim. */
const hides = ({ ring }: Cover, p: Vec2): boolean => {
  let winding = 0;
  for (let i = 0; i < ring.length; i++) {
    const [a, b] = [ring[i] ?? p, ring[(i + 1) % ring.length] ?? p];
    if (distanceTo(p, a, b) < RIM) return false;
    if (a[1] > p[1] === b[1] > p[1]) continue;
    const side = (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]);
    if (b[1] > a[1] && side > 0) winding++;
    if (b[1] < a[1] && side < 0) winding--;
  }
  return winding !== 0;
};

/** Where along a stretch (0 to 1) the outline of an area crosses it. */
const crossingsOf = ({ ring }: Cover, a: Vec2, b: Vec2): number[] => {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  return ring.flatMap((c, i) => {
    const d = ring[(i + 1) % ring.length] ?? c;
    const [ex, ey] = [d[0] - c[0], d[1] - c[1]];
    const cross = dx * ey - dy * ex;
    if (Math.abs(cross) < 1e-12) return [];
    const t = ((c[0] - a[0]) * ey - (c[1] - a[1]) * ex) / cross;
    const u = ((c[0] - a[0]) * dy - (c[1] - a[1]) * dx) / cross;
    return t > 1e-9 && t < 1 - 1e-9 && u >= -1e-9 && u <= 1 + 1e-9 ? [t] : [];
  });
};

/** The stretches of a course that nothing hides, joined again where they follow each other. */
const seen = (points: readonly Vec2[], covers: readonly Cover[]): Vec2[][] => {
  const out: Vec2[][] = [];
  let open: Vec2[] | undefined;
  points.slice(1).forEach((b, i) => {
    const a = points[i] ?? b;
    const at = (t: number): Vec2 => [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
    const cuts = [0, ...covers.flatMap((cover) => crossingsOf(cover, a, b)), 1].sort(
      (p, q) => p - q,
    );
    cuts.slice(1).forEach((to, n) => {
      const from = cuts[n] ?? 0;
      if (to - from < 1e-9) return;
      if (covers.some((cover) => hides(cover, at((from + to) / 2)))) {
        open = undefined;
        return;
      }
      const last = open?.at(-1);
      // Pieces of one straight stretch go on as one; its corners stay.
      if (open && last && from > 0) open[open.length - 1] = at(to);
      else if (open) open.push(at(to));
      else out.push((open = [at(from), at(to)]));
    });
  });
  return out;
};

/**
 * The items of a sheet without opaque areas: what these hide of earlier lines is cut away, so
 * that the picture is the same in a format that cannot cover. Partly hidden arcs become chords.
 */
export const uncovered = (items: readonly Item[]): Item[] => {
  const covers = items.flatMap((item, index): Cover[] =>
    item.kind === 'fill' && item.tone !== 'ink'
      ? [{ index, ring: item.points, box: itemBox(item) }]
      : [],
  );
  return items.flatMap((item, index): Item[] => {
    if (item.kind === 'fill') return item.tone === 'ink' ? [item] : [];
    if (item.kind === 'text' || item.kind === 'blocks') return [item];
    const box = itemBox(item);
    const later = covers.filter((cover) => cover.index > index && overlap(cover.box, box));
    if (later.length === 0) return [item];
    return seen(pointsOf(item), later).map((points) => polyline(points, item.stroke));
  });
};
