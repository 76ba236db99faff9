import { bevelHeight } from '../../grind/section/ground.ts';
import { barSection } from '../../grind/section/section.ts';
import { angleForBevel } from '../../grind/spine-rest/angle-for-bevel.ts';
import { ANGLE, angleFor } from '../../grind/spine-rest/angle.ts';
import { edgeAt } from '../../grind/spine-rest/edge-at.ts';
import { setoffFor } from '../../grind/spine-rest/settle.ts';
import { edgeObservation, flatObservations, type FlatPiece } from './flat.ts';
import type { FitProblem } from './observations.ts';

/** Where the step of a spine rest was set when the piece was ground; mm and degrees. */
export interface SpineRestSet {
  readonly setoff: number;
  readonly lean: number;
}

const stands = (angle: number, lean: number): boolean =>
  angle > 0 && angle < ANGLE.max && angle + lean > 0 && angle + lean < 89;

/**
 * Readings of a test piece as a fit of the step's offset: it really stood at setoff + offset.
 *
 * Shared unknowns: offset, thickness and height of the piece (both measured). The unknown of each
 * place is its angle; the edge that setoff and angle leave follows in closed form (`edgeAt`), and
 * the bevel height from both, so that edge and height may both be uncertain. The
 * search starts from what the first bevel read says. Undefined when a place can have no bevel.
 */
export const spineRestFit = (
  piece: FlatPiece,
  { setoff, lean }: SpineRestSet,
): FitProblem | undefined => {
  const { thickness, height, spineRadius } = piece;
  const sizes = { thickness: thickness.value, height: height.value, spineRadius };
  const bar = barSection(sizes.thickness, sizes.height, spineRadius);
  const starts = piece.places.map((place) => {
    const { side } = edgeObservation(piece, place);
    const seen = place.bevelHeight
      ? angleForBevel(sizes, side, place.bevelHeight.value)
      : place.angle?.value;
    const angle = seen ?? angleFor(bar, side, setoff, lean);
    return angle === undefined || !stands(angle, lean) ? undefined : { side, angle, seen };
  });
  const from = starts.find((start) => start?.seen !== undefined);
  const offset = from ? setoffFor(bar, { edge: from.side, angle: from.angle }, lean) - setoff : 0;
  const places = piece.places.flatMap((place, i) => {
    const start = starts[i];
    if (start === undefined) return [];
    const { observations, seen } = flatObservations(piece, place);
    return [
      {
        label: place.label,
        observations,
        start: start.angle,
        predict: ([offset = 0, t = 0, h = 0]: readonly number[], angle: number) => {
          if (!(stands(angle, lean) && t > 2 * spineRadius && h > spineRadius)) return undefined;
          const section = barSection(t, h, spineRadius);
          const edge = edgeAt(section, angle, setoff + offset, lean);
          return seen({
            thickness: t,
            edge,
            angle,
            bevelHeight: bevelHeight(section, { edge, angle }),
          });
        },
      },
    ];
  });
  if (places.length < piece.places.length) return undefined;
  return {
    shared: [
      { start: offset },
      { start: thickness.value, observed: thickness },
      { start: height.value, observed: height },
    ],
    places,
  };
};
