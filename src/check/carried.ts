import { chain, ok, type Result } from '../core/result.ts';
import { localise, onGrid, place, turn, WORLD, type Frame } from '../geometry/frame.ts';
import { dot3, length3, sub3, type Vec3 } from '../geometry/vector.ts';
import type { Part, Placement } from '../model/part.ts';
import type { Body, Solid } from './distance/index.ts';
import { CHECK_CHORD, type Meshed } from './workshop.ts';

/** A placed part that moves with the other it is asked about, or that is at rest like it. */
export interface CarriedPart {
  readonly part: Part;
  readonly placement: Placement;
  readonly meshed: Meshed;
}

/** A direction as a frame sees it. */
export const turned = ({ x, y, z }: Frame, way: Vec3): Vec3 => [
  dot3(x, way),
  dot3(y, way),
  dot3(z, way),
];

/** The second placement as the first sees it, on the grid of solids. */
export const seenFrom = (
  { placement: { frame: one } }: CarriedPart,
  { placement: { frame: other } }: CarriedPart,
): Frame =>
  onGrid({
    origin: localise(one, other.origin),
    x: turned(one, other.x),
    y: turned(one, other.y),
    z: turned(one, other.z),
  });

/** The solid of a carried part at rest, whatever carries it. */
export const restOf = ({ placement: { name }, meshed }: CarriedPart): Result<Solid> =>
  meshed.at(name, WORLD);

/** A carried part as a body standing in a frame: a motion of one pose puts its solid there. */
export const standingIn = (one: CarriedPart, pose: Frame, label: string): Result<Body> =>
  chain(restOf(one), (solid) => {
    const { name } = one.placement;
    return ok({
      name,
      solids: [solid],
      chordError: CHECK_CHORD,
      motion: [{ kind: 'still', label, pose }],
    });
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

/**
 * The same by the balls around their boxes where the parts stand: told in a tenth of the time, and
 * enough for most of an assembly.
 */
export const ballRoom = (
  [one, mine]: readonly [CarriedPart, Solid],
  [other, theirs]: readonly [CarriedPart, Solid],
): number => {
  const [box, size] = [boxOf(mine), boxOf(theirs)];
  if (!box || !size) return -Infinity;
  const at = place(one.placement.frame, box[0]);
  const there = place(other.placement.frame, size[0]);
  return length3(sub3(there, at)) - length3(box[1]) - length3(size[1]);
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
    (axis) => Math.abs(dot3(way, axis)) - reachOf(half, axis) - reachOf(size, turned(seen, axis)),
  );
  return Math.max(...along);
};
