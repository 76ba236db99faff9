import { hollowChord } from '../../grind/edge-rest/chord.ts';
import { centreAtLip } from '../../grind/edge-rest/fixed-lip.ts';
import { text } from '../../text/index.ts';
import type { Quantity } from './flat.ts';
import type { FitProblem } from './observations.ts';

/** What was measured at one place of a hollow-ground test piece; mm along the face from the edge. */
export interface HollowPlace {
  readonly label: string;
  readonly depth: Quantity;
  readonly lower?: Quantity | undefined;
  readonly upper?: Quantity | undefined;
}

/** Where the lip of an edge rest was set when the piece was ground; mm. */
export interface EdgeRestSet {
  /** Abrasive radius: wheel and belt. */
  readonly radius: number;
  /** Edge contact from the wheel's foremost point. */
  readonly lip: number;
  /** Height of the wheel's centre above the seat. */
  readonly drop: number;
  /** Distance of the face's line from the edge contact, towards the wheel. */
  readonly faceOffset: number;
}

const words = text.setup.quantities;

/**
 * Readings of a hollow as a fit of the lip's offset: the edge really stood at lip + offset.
 *
 * Shared unknown: the offset. The unknown of each place is the depth of its hollow d; with
 * L = hypot(R + y_E, dz) and D = R - d + q its centre lies at c = sqrt(L^2 - D^2) and its limits at
 * c -/+ w/2, w the chord. Undefined when the lip as set leaves no hollow at a reading's depth.
 */
export const edgeRestFit = (
  places: readonly HollowPlace[],
  { radius, lip, drop, faceOffset }: EdgeRestSet,
): FitProblem | undefined => {
  const limits = (offset: number, depth: number): readonly [number, number] | undefined => {
    const apart = Math.hypot(radius + lip + offset, drop);
    if (!(depth > 0 && depth < radius && apart > radius - depth + faceOffset)) return undefined;
    const centre = centreAtLip(radius, apart, depth, faceOffset);
    const half = hollowChord(radius, depth) / 2;
    return [centre - half, centre + half];
  };
  if (places.some(({ depth }) => limits(0, depth.value) === undefined)) return undefined;
  return {
    shared: [{ start: 0 }],
    places: places.map(({ label, depth, lower, upper }) => ({
      label,
      start: depth.value,
      observations: [
        { label: words.depth, ...depth },
        ...(lower ? [{ label: words.lower, ...lower }] : []),
        ...(upper ? [{ label: words.upper, ...upper }] : []),
      ],
      predict: ([offset = 0]: readonly number[], own: number) => {
        const ends = limits(offset, own);
        return ends && [own, ...(lower ? [ends[0]] : []), ...(upper ? [ends[1]] : [])];
      },
    })),
  };
};
