import { tan } from '../../core/trigonometry.ts';
import { radians } from '../../core/units.ts';
import { edgeObservation, flatObservations, type FlatPiece } from './flat.ts';
import type { FitProblem } from './observations.ts';

/** The angle to which a carriage was set when the piece was ground, degrees. */
export interface CarriageSet {
  readonly angle: number;
}

/**
 * Readings of a test piece as a fit of a carriage's angle: it really ground at angle + offset,
 * degrees.
 *
 * Shared unknowns: offset and thickness of the piece (measured). The unknown of each place is its
 * edge; b = (T/2 - e) / tan a. The height of the piece does not matter. Undefined when a reading
 * of the edge leaves no bevel.
 */
export const carriageFit = (piece: FlatPiece, { angle }: CarriageSet): FitProblem | undefined => {
  const { thickness } = piece;
  const starts = piece.places.map((place) => edgeObservation(piece, place).side);
  if (starts.some((side) => side >= thickness.value / 2)) return undefined;
  return {
    shared: [{ start: 0 }, { start: thickness.value, observed: thickness }],
    places: piece.places.map((place, i) => {
      const { observations, seen } = flatObservations(piece, place);
      return {
        label: place.label,
        observations,
        start: starts[i] ?? NaN,
        predict: ([offset = 0, t = 0]: readonly number[], edge: number) => {
          const ground = angle + offset;
          if (!(ground > 0 && ground < 80)) return undefined;
          const height = (t / 2 - edge) / tan(radians(ground));
          return seen({ thickness: t, edge, angle: ground, bevelHeight: height });
        },
      };
    }),
  };
};
