import { shift } from '../geometry/frame.ts';
import type { Vec3 } from '../geometry/vector.ts';
import type { Part, Placement } from '../model/part.ts';
import { bodiesOf, type Body } from './bodies.ts';

/** A placement lifted off what lies under it, and the line along which it goes back. */
export interface Lifted {
  readonly placement: Placement;
  /** From its lower end down to the top of what carries it; equal ends for the lowest. */
  readonly path: readonly [Vec3, Vec3];
}

interface Extent {
  readonly placement: Placement;
  readonly min: Vec3;
  readonly max: Vec3;
  readonly isBought: boolean;
  /** For bought parts the height of their widest layer: a screw's head. */
  readonly head?: number;
}

/** Axes with the one along which parts are put together last. */
type Order = readonly [0 | 1 | 2, 0 | 1 | 2, 0 | 1 | 2];
const ORDERS: Readonly<Record<'x' | 'z', Order>> = { x: [1, 2, 0], z: [0, 1, 2] };

const areaOf = (body: Body, [i, j, k]: Order): number =>
  (body.max[i] - body.min[i]) * (body.max[j] - body.min[j]) * (1 + 1e-9 * body.max[k]);

/** Extents of a placed part, the axis of putting together in the place of z. */
const extentOf = (
  parts: readonly Part[],
  placement: Placement,
  order: Order,
): Extent | undefined => {
  const bodies = bodiesOf(parts, [placement]);
  const widest = bodies.toSorted((a, b) => areaOf(b, order) - areaOf(a, order))[0];
  if (!widest) return undefined;
  const pick = (i: 0 | 1 | 2): readonly [number, number] => [
    Math.min(...bodies.map((b) => b.min[i])),
    Math.max(...bodies.map((b) => b.max[i])),
  ];
  const [x, y, z] = [pick(order[0]), pick(order[1]), pick(order[2])];
  const isBought = parts.some((p) => p.id === placement.part && p.kind === 'hardware');
  return {
    placement,
    min: [x[0], y[0], z[0]],
    max: [x[1], y[1], z[1]],
    isBought,
    ...(isBought ? { head: (widest.min[order[2]] + widest.max[order[2]]) / 2 } : {}),
  };
};

/** A place with its axis of putting together last, as the point it is. */
const along = (axis: 'x' | 'z', [p, q, r]: Vec3): Vec3 => (axis === 'z' ? [p, q, r] : [r, p, q]);

const middle = (e: Extent): number => (e.min[2] + e.max[2]) / 2;

/** Whether two parts lie over one another. */
const share = (a: Extent, b: Extent): boolean =>
  ([0, 1] as const).every((i) => a.min[i] < b.max[i] - 0.01 && a.max[i] > b.min[i] + 0.01);

/** Whether a is put on b from above: by its place, or for a screw in it by the side of its head. */
const isOver = (a: Extent, b: Extent): boolean => {
  if (a.min[2] >= b.max[2] - 0.01) return true;
  if (b.min[2] >= a.max[2] - 0.01) return false;
  const headUp = (e: Extent): number => (e.head === undefined ? 0 : Math.sign(e.head - middle(e)));
  const [up, down] = [headUp(a), headUp(b)];
  if (up !== 0 && down === 0) return up > 0;
  if (down !== 0 && up === 0) return down < 0;
  // Pins and set screws come out of what they are in.
  if (a.isBought !== b.isBought) return a.isBought;
  // A rod goes last through everything that is threaded on it.
  const isAround = (e: Extent, other: Extent): boolean =>
    e.min[2] < other.min[2] && e.max[2] > other.max[2];
  if (isAround(a, b) || isAround(b, a)) return isAround(a, b);
  return middle(a) > middle(b);
};

/**
 * Lifts every placement above all those it goes over, by at least `gap` mm, so that a screw ends
 * up whole above the hole it goes into. Parts are taken in an order in which those below come
 * first; where parts hold each other in a ring the lower middle does. Along x what is above lies
 * to the right.
 */
export const explode = (
  parts: readonly Part[],
  placements: readonly Placement[],
  gap: number,
  axis: 'x' | 'z' = 'z',
): Lifted[] => {
  const order = ORDERS[axis];
  const waiting = placements
    .flatMap((placement) => extentOf(parts, placement, order) ?? [])
    .sort((a, b) => middle(a) - middle(b));
  const done: { extent: Extent; top: number }[] = [];
  const lifted: Lifted[] = [];
  while (waiting.length > 0) {
    const free = waiting.findIndex((a) =>
      waiting.every((b) => a === b || !share(a, b) || !isOver(a, b)),
    );
    const [extent] = waiting.splice(Math.max(0, free), 1);
    if (!extent) break;
    const under = done.filter((d) => share(d.extent, extent));
    const top = Math.max(-Infinity, ...under.map((u) => u.top));
    const lift = under.length === 0 ? 0 : Math.max(0, top + gap - extent.min[2]);
    done.push({ extent, top: extent.max[2] + lift });
    const [x, y] = [(extent.min[0] + extent.max[0]) / 2, (extent.min[1] + extent.max[1]) / 2];
    const foot = extent.min[2] + lift;
    lifted.push({
      placement: {
        ...extent.placement,
        frame: shift(extent.placement.frame, along(axis, [0, 0, lift])),
      },
      path: [
        along(axis, [x, y, foot]),
        along(axis, [x, y, under.length === 0 ? foot : Math.min(foot, top)]),
      ],
    });
  }
  return lifted;
};
