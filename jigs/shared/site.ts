import { cos, type Design, faceDepth, type Grinder, radians, tan } from '../../src/family/index.ts';
import type { PlacedRest } from './layout/mount.ts';

/** One belt on one backing, and where the seat frame stands for it. */
export interface Stand {
  readonly belt: Grinder['belts'][number];
  readonly backing: Grinder['backings'][number];
  /** From grinder to seat frame along y, mm: add it to a place on the rest. */
  readonly offset: number;
}

/**
 * Where the abrasive face meets the seat, as seen from the grinder. With the face d in front of
 * the bare platen (square to it), the platen leaning back by t about the rest's top and the seat
 * `stack` above that top, the face passes the seat's height at y = (d - stack sin t) / cos t;
 * that point is the origin of the seat frame, so
 *
 *     y_seat = y_grinder + stack tan t - d / cos t        z_seat = z_grinder - stack
 */
export const standOf = (
  grinder: Grinder,
  belt: Stand['belt'],
  backing: Stand['backing'],
  stack: number,
): Stand => {
  const t = radians(grinder.lean);
  const depth = faceDepth(grinder, belt, backing);
  return { belt, backing, offset: stack * tan(t) - depth / cos(t) };
};

/** The stand of every pass, in order; passes whose belt or backing is missing give none. */
export const standsOf = ({ grinder, sequence }: Design, stack: number): (Stand | undefined)[] =>
  sequence.map((pass) => {
    const belt = grinder.belts.find(({ id }) => id === pass.belt);
    const backing = grinder.backings.find(({ id }) => id === pass.backing);
    return belt && backing ? standOf(grinder, belt, backing, stack) : undefined;
  });

/** The rest in the seat frame, with the given offset of the frame. */
export const placedRest = ({ rest }: Grinder, offset: number): PlacedRest => {
  if (rest.kind === 'table') {
    const { width, depth, thickness, gap, pattern } = rest;
    const front = gap + offset;
    return {
      kind: 'table',
      half: width / 2,
      front,
      back: front + depth,
      thickness,
      pattern,
      offset,
    };
  }
  const slots = rest.slots.length > 0;
  return {
    kind: 'arm',
    half: rest.width / 2,
    // The arm may be drawn out from under the belt: its inner end is not the fixture's concern.
    front: offset,
    back: rest.reach + offset,
    thickness: rest.height,
    pattern: slots ? { kind: 'slots', axis: 'y', slots: rest.slots } : { kind: 'edges' },
    offset,
  };
};
