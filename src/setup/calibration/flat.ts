import { text } from '../../text/index.ts';
import type { Observation } from './observations.ts';

/** A measured number with its standard uncertainty, as it stands in a file. */
export interface Quantity {
  readonly value: number;
  readonly uncertainty: number;
}

/** What was measured at one place of a flat-ground test piece, on the side that was ground. */
export interface FlatPlace {
  readonly label: string;
  readonly edge: Quantity;
  /** From the edge along the midplane to the grind line. */
  readonly bevelHeight?: Quantity | undefined;
  /** Between midplane and ground face, degrees. */
  readonly angle?: Quantity | undefined;
}

/**
 * A flat-ground test piece: a bar of even thickness and height, one side ground at one setting.
 * `edges`: how the edge was measured, `across` with calipers while the other side is still the
 * bar's flat, or from a scribed `centreline` on the ground side alone.
 */
export interface FlatPiece {
  readonly thickness: Observation;
  readonly height: Observation;
  readonly spineRadius: number;
  readonly edges: 'across' | 'centreline';
  readonly places: readonly FlatPlace[];
}

/** What the forward model sees at a place. */
export interface FlatSight {
  readonly thickness: number;
  readonly edge: number;
  readonly angle: number;
  readonly bevelHeight: number;
}

const words = text.setup.quantities;

/** The edge reading, and what it says of the ground side's half-thickness, mm. */
export const edgeObservation = (
  { edges, thickness }: FlatPiece,
  { edge }: FlatPlace,
): { observation: Observation; side: number } => ({
  observation: { label: words.edge, ...edge },
  side: edges === 'across' ? edge.value - thickness.value / 2 : edge.value,
});

/** The readings of a place and what each of them would show for what the model sees. */
export const flatObservations = (
  piece: FlatPiece,
  place: FlatPlace,
): { observations: Observation[]; seen: (sight: FlatSight) => number[] } => {
  const { bevelHeight, angle } = place;
  const across = piece.edges === 'across';
  return {
    observations: [
      edgeObservation(piece, place).observation,
      ...(bevelHeight ? [{ label: words.bevelHeight, ...bevelHeight }] : []),
      ...(angle ? [{ label: words.angle, ...angle }] : []),
    ],
    seen: (sight) => [
      across ? sight.edge + sight.thickness / 2 : sight.edge,
      ...(bevelHeight ? [sight.bevelHeight] : []),
      ...(angle ? [sight.angle] : []),
    ],
  };
};
