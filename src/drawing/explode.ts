import { shift } from '../geometry/frame.ts';
import type { Vec3 } from '../geometry/vector.ts';
import type { Part, Placement } from '../model/part.ts';
import { bodiesOf } from './bodies.ts';

/** A placement lifted off what lies under it, and the line along which it goes back. */
export interface Lifted {
  readonly placement: Placement;
  /** From its lower end down to the top of what carries it; equal ends for the lowest. */
  readonly path: readonly [Vec3, Vec3];
}

interface Extent {
  readonly min: Vec3;
  readonly max: Vec3;
}

const extentOf = (parts: readonly Part[], placement: Placement): Extent | undefined => {
  const bodies = bodiesOf(parts, [placement]);
  const [first] = bodies;
  if (!first) return undefined;
  const pick = (i: 0 | 1 | 2): readonly [number, number] => [
    Math.min(...bodies.map((b) => b.min[i])),
    Math.max(...bodies.map((b) => b.max[i])),
  ];
  const [x, y, z] = [pick(0), pick(1), pick(2)];
  return { min: [x[0], y[0], z[0]], max: [x[1], y[1], z[1]] };
};

/**
 * Lifts every placement above all those it stands over, by at least `gap` mm, lowest tops first:
 * a bolt ends up whole above the hole it goes into.
 */
export const explode = (
  parts: readonly Part[],
  placements: readonly Placement[],
  gap: number,
): Lifted[] => {
  const done: { extent: Extent; top: number }[] = [];
  return placements
    .flatMap((placement) => {
      const extent = extentOf(parts, placement);
      return extent ? [{ placement, extent }] : [];
    })
    .sort((a, b) => a.extent.max[2] - b.extent.max[2])
    .map(({ placement, extent }) => {
      const under = done.filter(({ extent: other }) =>
        ([0, 1] as const).every(
          (i) => other.min[i] < extent.max[i] - 0.01 && other.max[i] > extent.min[i] + 0.01,
        ),
      );
      const top = Math.max(-Infinity, ...under.map((u) => u.top));
      const lift = under.length === 0 ? 0 : Math.max(0, top + gap - extent.min[2]);
      done.push({ extent, top: extent.max[2] + lift });
      const [x, y] = [(extent.min[0] + extent.max[0]) / 2, (extent.min[1] + extent.max[1]) / 2];
      const foot = extent.min[2] + lift;
      return {
        placement: { ...placement, frame: shift(placement.frame, [0, 0, lift]) },
        path: [
          [x, y, foot],
          [x, y, under.length === 0 ? foot : Math.min(foot, top)],
        ],
      };
    });
};
