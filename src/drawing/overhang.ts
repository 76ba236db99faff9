import { flatten } from '../geometry/flatten.ts';
import { boundingBox, distanceToLoop } from '../geometry/loop-measure.ts';
import type { Loop } from '../geometry/loop.ts';
import type { Vec2 } from '../geometry/vector.ts';
import type { Layer } from '../model/part.ts';
import { covers, loopsOf, touches } from './edges.ts';

/** Material over air at a level of a print, as it lies on the bed. */
export interface Overhang {
  /** Level, mm above the bed. */
  readonly z: number;
  /** How far from what carries it the material reaches at most, mm: half of a span bridged. */
  readonly reach: number;
}

const CHORD = 0.05;
const LEVEL = 1e-6;

/** Less is the step of one printed line over the next, mm. */
const LEAST = 0.2;

/** Places where a layer could lie over air: its contours, and the middles of holes below it. */
const samples = (layer: Layer, below: readonly Layer[]): Vec2[] => {
  const contours = loopsOf(layer.profile).flatMap((loop) => {
    const points = flatten(loop, CHORD);
    return points.flatMap((p, i): Vec2[] => {
      const q = points[(i + 1) % points.length] ?? p;
      return [p, [(p[0] + q[0]) / 2, (p[1] + q[1]) / 2]];
    });
  });
  const middles = below.flatMap(({ profile }) =>
    profile.holes.map((hole): Vec2 => {
      const { min, max } = boundingBox(hole);
      return [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2];
    }),
  );
  return [...contours, ...middles.filter((p) => covers(layer.profile, p))];
};

const nearestOf = (p: Vec2, contours: readonly Loop[]): number => {
  let least = Infinity;
  for (const loop of contours) least = Math.min(least, distanceToLoop(p, loop));
  return least;
};

const isCarried = (p: Vec2, below: readonly Layer[]): boolean => {
  for (const { profile } of below) if (covers(profile, p) || touches(profile, p)) return true;
  return false;
};

/**
 * Levels at which a stack of layers begins over air when it is printed as it lies, z up, and how
 * far; looked for at contours and at the middles of holes. The lowest level lies on the bed.
 */
export const overhangs = (layers: readonly Layer[]): Overhang[] => {
  const bed = Math.min(...layers.map(({ from }) => from));
  const levels = [...new Set(layers.map(({ from }) => from))].sort((a, b) => a - b);
  return levels
    .filter((z) => z > bed + LEVEL)
    .flatMap((z) => {
      const below = layers.filter(({ to }) => Math.abs(to - z) <= LEVEL);
      const contours = below.flatMap(({ profile }) => loopsOf(profile));
      const reaches = layers
        .filter(({ from }) => Math.abs(from - z) <= LEVEL)
        .flatMap((layer) => samples(layer, below))
        .filter((p) => !isCarried(p, below))
        .map((p) => nearestOf(p, contours));
      const reach = Math.max(0, ...reaches);
      return reach > LEAST ? [{ z: z - bed, reach }] : [];
    });
};
