import {
  breaks,
  circleAt,
  halfAt,
  hollowed,
  type Circle,
  type EdgeSection,
  type Half,
} from './half.ts';
import { minimise } from '../numeric/minimise.ts';

/** Where a circle enters and leaves a side, from the edge along the midplane, mm. */
export interface Limits {
  readonly lower: number;
  readonly upper: number;
  /** Whether the cut runs out through the edge or the spine instead of ending on the face. */
  readonly atEdge: boolean;
  readonly atSpine: boolean;
}

/** Cuts shallower than this are none, mm. */
const NOTHING = 1e-9;

/** Limits of what a circle takes off a side; undefined when it takes nothing. */
export const limitsOf = (half: Half, height: number, circle: Circle): Limits | undefined => {
  const depth = (h: number): number => halfAt(half, h) - circleAt(circle, h);
  const all = breaks(hollowed(half, circle), 0, height);
  const cut = all.slice(1).flatMap((to, i) => {
    const from = all[i] ?? 0;
    return depth((from + to) / 2) > NOTHING ? [[from, to] as const] : [];
  });
  const [first, last] = [cut[0], cut.at(-1)];
  if (first === undefined || last === undefined) return undefined;
  return {
    lower: first[0],
    upper: last[1],
    atEdge: depth(0) > NOTHING,
    atSpine: depth(height) > NOTHING,
  };
};

/** The thinnest place of a section: its thickness square to the midplane and its height, mm. */
export interface Web {
  readonly thickness: number;
  readonly at: number;
}

/** Width in which the thinnest place is found, mm: its thickness is then exact to 1e-12. */
const CLOSE = 1e-7;

/**
 * The thinnest place of the true section between two heights over the edge: every stretch between
 * breaks of either side is straight or a hollow bending inwards, so the thickness has one least
 * value on each.
 */
export const thinnest = ({ near, far }: EdgeSection, from: number, to: number): Web => {
  const thickness = (h: number): number => halfAt(near, h) + halfAt(far, h);
  const all = [...breaks(near, from, to), ...breaks(far, from, to)].sort((p, q) => p - q);
  return all
    .flatMap((low, i): number[] => {
      const high = all[i + 1] ?? low;
      return high - low < CLOSE ? [low] : [low, minimise(thickness, low, high, CLOSE, 2)];
    })
    .map((at): Web => ({ thickness: thickness(at), at }))
    .reduce((best, web) => (web.thickness < best.thickness ? web : best));
};

/** Even parts of the integral below. */
const PARTS = 128;

/** Area that a circle takes off a side, mm^2, by Simpson's rule between its limits. */
export const areaOf = (half: Half, height: number, circle: Circle): number => {
  const limits = limitsOf(half, height, circle);
  if (limits === undefined) return 0;
  const step = (limits.upper - limits.lower) / PARTS;
  const depth = (i: number): number => {
    const h = limits.lower + i * step;
    return Math.max(0, halfAt(half, h) - circleAt(circle, h));
  };
  let sum = depth(0) + depth(PARTS);
  for (let i = 1; i < PARTS; i += 1) sum += (i % 2 === 1 ? 4 : 2) * depth(i);
  return (sum * step) / 3;
};
