import { place, turn, type Frame } from '../../geometry/frame.ts';
import { scale3, type Vec3 } from '../../geometry/vector.ts';
import type { Body } from './body.ts';
import { behind, blockAround, facetsOf, isNear, type Block } from './facets.ts';
import { sharedVolume, type Facet } from './shared-volume.ts';
import type { Solid, TreeSolid } from './solid.ts';

const common = (a: Block, b: Block): Block => {
  const low = [0, 1, 2].map((k) => Math.max(a[0][k] ?? 0, b[0][k] ?? 0));
  const high = [0, 1, 2].map((k) => Math.min(a[1][k] ?? 0, b[1][k] ?? 0));
  return [low as unknown as Vec3, high as unknown as Vec3];
};

/** An apex inside what two blocks share, off the planes that solids have in common. */
const apexIn = ([low, high]: Block): Vec3 => [
  low[0] + 0.5127 * (high[0] - low[0]),
  low[1] + 0.4873 * (high[1] - low[1]),
  low[2] + 0.5091 * (high[2] - low[2]),
];

const planeFacets = (solid: Solid, pose: Frame, near: Block): Facet[] | undefined => {
  if (solid.kind !== 'plane') return undefined;
  return behind(place(pose, scale3(solid.normal, solid.offset)), turn(pose, solid.normal), near);
};

const ofTwo = (one: TreeSolid, poseOne: Frame, other: Solid, poseOther: Frame): number => {
  const around = blockAround(one, poseOne);
  const plane = planeFacets(other, poseOther, around);
  if (plane !== undefined || other.kind === 'plane')
    return sharedVolume(facetsOf(one, poseOne, around), plane ?? [], apexIn(around));
  const there = blockAround(other, poseOther);
  if (!isNear(around, there)) return 0;
  const both = common(around, there);
  return sharedVolume(facetsOf(one, poseOne, both), facetsOf(other, poseOther, both), apexIn(both));
};

/**
 * Volume that two bodies share in one pose, mm3: exact for flat faces, and round pieces taken as
 * prisms of 128 sides, which is 4e-4 of their volume at most. Solids of one body that overlap each
 * other are counted one by one. None of two half spaces.
 */
export const overlapVolume = (
  a: Body,
  b: Body,
  poses: { readonly a: Frame; readonly b: Frame },
): number | undefined => {
  let sum = 0;
  for (const one of a.solids)
    for (const other of b.solids) {
      if (one.kind === 'tree') sum += ofTwo(one, poses.a, other, poses.b);
      else if (other.kind === 'tree') sum += ofTwo(other, poses.b, one, poses.a);
      else return undefined;
    }
  return sum;
};
