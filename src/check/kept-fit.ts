import { chain, ok, type Result } from '../core/result.ts';
import { dot3, type Vec3 } from '../geometry/vector.ts';
import { localise, onGrid, WORLD, type Frame } from '../geometry/frame.ts';
import type { Part, Placement } from '../model/part.ts';
import { createWorkspace } from './distance/index.ts';
import { fitOf, type Fit, type Standing } from './fits.ts';
import { CHECK_CHORD, type Meshed, type Workshop } from './workshop.ts';

/** A placed part that moves with the other it is asked about, or that is at rest like it. */
export interface Carried {
  readonly part: Part;
  readonly placement: Placement;
  readonly meshed: Meshed;
}

/** The second frame as the first sees it, on the grid of solids. */
const relative = (one: Frame, other: Frame): Frame => {
  const turned = (d: Vec3): Vec3 => [dot3(one.x, d), dot3(one.y, d), dot3(one.z, d)];
  return onGrid({
    origin: localise(one, other.origin),
    x: turned(other.x),
    y: turned(other.y),
    z: turned(other.z),
  });
};

const standing = ({ part, placement, meshed }: Carried, frame: Frame): Result<Standing> =>
  chain(meshed.at(placement.name, frame), (solid) =>
    ok({
      part,
      placement: { ...placement, frame },
      body: { name: placement.name, solids: [solid], chordError: CHECK_CHORD },
    }),
  );

/**
 * `fitOf` for two parts carried as one, which depends on nothing but their shapes and on where one
 * stands to the other: looked at with the first at the origin, and kept by that. So a carriage that
 * is turned as a whole is not looked at again.
 */
export const keptFit = (
  workshop: Workshop,
  one: Carried,
  other: Carried,
  tolerance: number,
): Result<Fit> => {
  const frame = relative(one.placement.frame, other.placement.frame);
  const key = JSON.stringify([one.meshed.name, other.meshed.name, frame, tolerance]);
  const look = (): Result<Fit> =>
    chain(standing(one, WORLD), (a) =>
      chain(standing(other, frame), (b) => fitOf(createWorkspace(), a, b, tolerance, workshop)),
    );
  const kept = workshop.fits(key, look);
  // What could not be looked at is told of the parts that are asked about now.
  return kept.ok ? ok({ ...kept.value, a: one.placement.name, b: other.placement.name }) : look();
};
