import { ok, type Result } from '../core/result.ts';
import { WORLD, type Frame } from '../geometry/frame.ts';
import { createByPlace } from './by-place.ts';
import { seenFrom, standingIn, type CarriedPart } from './carried.ts';
import type { Workspace } from './distance/index.ts';
import type { Fit } from './fit.ts';
import { fitOf, type Standing } from './fits.ts';
import type { Workshop } from './workshop.ts';

/** Places of one part to another that are kept: settings of a few steps of a drag. */
const PLACES = 64;

const standing = (one: CarriedPart, frame: Frame): Standing => ({
  part: one.part,
  placement: { ...one.placement, frame },
  body: standingIn(one, frame, ''),
  solid: WORLD,
});

/**
 * `fitOf` for two parts carried as one, which depends on nothing but their shapes and on where one
 * stands to the other: looked at with the first at the origin, and kept by that. So a carriage that
 * is turned as a whole is not looked at again.
 */
export const keptFit = (
  workshop: Workshop,
  work: Workspace,
  one: CarriedPart,
  other: CarriedPart,
  tolerance: number,
): Result<Fit> => {
  const frame = seenFrom(one, other);
  const key = `${one.formed.name} ${other.formed.name} ${String(tolerance)}`;
  const look = (): Result<Fit> => {
    // Alike parts share their solid: where a search starts must not come from another pair.
    const fresh: Workspace = { ...work, hints: new Map() };
    return fitOf(fresh, standing(one, WORLD), standing(other, frame), tolerance, workshop);
  };
  const kept = workshop.fits(key, () => createByPlace(PLACES))(frame, look);
  // What could not be looked at is told of the parts that are asked about now.
  return kept.ok ? ok({ ...kept.value, a: one.placement.name, b: other.placement.name }) : look();
};
