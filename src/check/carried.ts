import { localise, onGrid, place, turn, turnBack, WORLD, type Frame } from '../geometry/frame.ts';
import { add3, dot3, scale3, sub3, type Vec3 } from '../geometry/vector.ts';
import type { Part, Placement } from '../model/part.ts';
import type { Block, Body, Motion, Solid } from './distance/index.ts';
import { CHECK_CHORD } from './chord.ts';
import type { Formed } from './workshop.ts';

/** A placed part that moves with the other it is asked about, or that is at rest like it. */
export interface CarriedPart {
  readonly part: Part;
  readonly placement: Placement;
  readonly formed: Formed;
}

/** The second placement as the first sees it, on the grid of solids. */
export const seenFrom = (
  { placement: { frame: one } }: CarriedPart,
  { placement: { frame: other } }: CarriedPart,
): Frame =>
  onGrid({
    origin: localise(one, other.origin),
    x: turnBack(one, other.x),
    y: turnBack(one, other.y),
    z: turnBack(one, other.z),
  });

/** The solid of a carried part at rest, whatever carries it. */
export const restOf = ({ formed }: CarriedPart): Solid => formed.at(WORLD);

/** A carried part as a body standing in a frame: a motion of one pose puts its solid there. */
export const standingIn = (one: CarriedPart, pose: Frame, label: string): Body => ({
  name: one.placement.name,
  solids: [restOf(one)],
  chordError: CHECK_CHORD,
  motion: [{ kind: 'still', label, pose }],
});

/** Centre and half extents of a solid's box; none of a half space. */
const boxOf = (solid: Solid): readonly [Vec3, Vec3] | undefined => {
  if (solid.kind === 'plane') return undefined;
  const [x = 0, y = 0, z = 0, hx = 0, hy = 0, hz = 0] = solid.tree.boxes;
  return [
    [x, y, z],
    [hx, hy, hz],
  ];
};

/** How far a box reaches along a direction from its centre. */
const reachOf = (half: Vec3, way: Vec3): number =>
  half[0] * Math.abs(way[0]) + half[1] * Math.abs(way[1]) + half[2] * Math.abs(way[2]);

const AXES = [WORLD.x, WORLD.y, WORLD.z] as const;

/**
 * A distance that two solids keep at least, mm, the second as the first sees it: that of their boxes
 * along the axes of both. Negative where it tells nothing.
 */
export const boxRoom = (one: Solid, other: Solid, seen: Frame): number => {
  const [mine, theirs] = [boxOf(one), boxOf(other)];
  if (!mine || !theirs) return -Infinity;
  const [[centre, half], [there, size]] = [mine, theirs];
  const [x, y, z] = turn(seen, there);
  const way = sub3([x + seen.origin[0], y + seen.origin[1], z + seen.origin[2]], centre);
  const along = [...AXES, seen.x, seen.y, seen.z].map(
    (axis) => Math.abs(dot3(way, axis)) - reachOf(half, axis) - reachOf(size, turnBack(seen, axis)),
  );
  return Math.max(...along);
};

/** The upright box around what has its centre and half extents in a frame. */
const uprightIn = (frame: Frame, centre: Vec3, half: Vec3): Block => {
  const [x, y, z] = place(frame, centre);
  const [u, v, w] = ([0, 1, 2] as const).map((k) =>
    reachOf(half, [frame.x[k], frame.y[k], frame.z[k]]),
  ) as [number, number, number];
  return [
    [x - u, y - v, z - w],
    [x + u, y + v, z + w],
  ];
};

/** The upright box around the box of a part as it stands in what carries it; none of a half space. */
export const blockOf = (one: CarriedPart): Block | undefined => {
  const box = boxOf(restOf(one));
  return box && uprightIn(one.placement.frame, ...box);
};

/** The upright box around a box in all the places where a motion puts it; none of one that sweeps. */
export const blockOver = ([low, high]: Block, motion: Motion): Block | undefined => {
  const [centre, half] = [scale3(add3(low, high), 0.5), scale3(sub3(high, low), 0.5)];
  const lowest: [number, number, number] = [Infinity, Infinity, Infinity];
  const highest: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  for (const sweep of motion) {
    if (sweep.kind !== 'still') return undefined;
    const [from, to] = uprightIn(sweep.pose, centre, half);
    for (const k of [0, 1, 2] as const) {
      lowest[k] = Math.min(lowest[k], from[k]);
      highest[k] = Math.max(highest[k], to[k]);
    }
  }
  return [lowest, highest];
};

/** A distance that what is in two upright boxes keeps at least, mm; negative where it tells nothing. */
export const blockRoom = ([low, high]: Block, [from, to]: Block): number =>
  Math.max(
    from[0] - high[0],
    low[0] - to[0],
    from[1] - high[1],
    low[1] - to[1],
    from[2] - high[2],
    low[2] - to[2],
  );
