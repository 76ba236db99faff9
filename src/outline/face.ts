import type { Vec2 } from '../geometry/vector.ts';
import { across, extent } from './extent.ts';

/** A contour with its tip towards +u and its edge towards +v. */
export interface Faced {
  readonly points: readonly Vec2[];
  /**
   * Whether the outline itself tells which side is the edge. A straight back with its tip up and
   * a sheepsfoot with its tip down are the same outline turned over: only the heel, which stands
   * out further from the tang than the spine does, tells them apart.
   */
  readonly told: boolean;
  /** Whether it is seen from the other side than it was drawn. */
  readonly mirrored: boolean;
}

const PLACES = 300;

/** Places on either side of one between which a contour may step from tang to heel: 2 % of it. */
const REACH = 6;

/** Places at the end of a tang that may be rounded or cut aslant: 5 % of it. */
const END = 15;

/** Share of the greatest width by which one side must step further than the other. */
const CLEAR = 0.1;

/** Width near an end over the width further in: small where the outline runs to a point. */
const taper = (points: readonly Vec2[], end: number, inward: number): number => {
  const width = (share: number): number => {
    const [low, high] = across(points, end + inward * share) ?? [0, 0];
    return high - low;
  };
  return width(0.02) / Math.max(width(0.1), 1e-9);
};

const mirrored = (points: readonly Vec2[]): Vec2[] => points.map(([u, v]): Vec2 => [u, -v]);
const turnedRound = (points: readonly Vec2[]): Vec2[] => points.map(([u, v]): Vec2 => [-u, -v]);

/** Rise of the middle of a tang along it: the tang lies as the outline does, a little turned. */
const lean = (tang: readonly (readonly [number, number] | null)[]): number => {
  const middles = tang.flatMap((cut) => (cut ? [(cut[0] + cut[1]) / 2] : []));
  const [first, last] = [middles[0] ?? 0, middles.at(-1) ?? 0];
  return (last - first) / Math.max(1, middles.length - 1);
};

/** How far the contour steps out from the tang to the blade, below and above, where it does so most. */
const steps = (points: readonly Vec2[]) => {
  const [start, end] = extent(points);
  const cuts = Array.from({ length: PLACES }, (_, i) =>
    across(points, start + ((end - start) * (i + 0.5)) / PLACES),
  );
  const widest = Math.max(...cuts.map((cut) => (cut ? cut[1] - cut[0] : 0)));
  let best = { below: 0, above: 0, at: 0 };
  for (let i = END + REACH; i < PLACES * 0.75; i += 1) {
    const [tang, blade] = [cuts[i - REACH], cuts[i + REACH]];
    if (!tang || !blade) continue;
    const [below, above] = [tang[0] - blade[0], blade[1] - tang[1]];
    if (below + above > best.below + best.above) best = { below, above, at: i };
  }
  const tilt = lean(cuts.slice(END, Math.max(END, best.at - REACH)));
  const off = tilt * 2 * REACH;
  return { below: best.below + off, above: best.above - off, widest };
};

/** Tip towards +u and edge towards +v, as found or as told. */
export const faced = (
  points: readonly Vec2[],
  choice: { readonly otherEnd: boolean; readonly otherEdge: boolean },
): Faced => {
  const [low, high] = extent(points);
  const size = high - low;
  const found = taper(points, low, size) < taper(points, high, -size);
  const ahead = found !== choice.otherEnd ? turnedRound(points) : [...points];
  const { below: under, above: over, widest } = steps(ahead);
  const told = Math.abs(over - under) > CLEAR * widest;
  // Without a heel: the tip of most blades lies nearer to the line of the spine.
  const tip = ahead.reduce((best, p) => (p[0] > best[0] ? p : best));
  const [below, above] = across(ahead, tip[0] - 0.4 * size) ?? [0, 0];
  const tipBelow = Math.abs(tip[1] - below) <= Math.abs(tip[1] - above);
  const edgeAbove = told ? over > under : tipBelow;
  const other = edgeAbove === choice.otherEdge;
  return { points: other ? mirrored(ahead) : ahead, told, mirrored: other };
};
