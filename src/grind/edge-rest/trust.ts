import { exact, type Certainty } from '../../core/certainty.ts';
import { sin } from '../../core/trigonometry.ts';
import { radians } from '../../core/units.ts';
import type { Shape } from '../../blade/shape.ts';
import type { Wheel } from '../../grinder/schema.ts';
import { text } from '../../text/index.ts';
import { departure } from '../spine-rest/trust.ts';

const words = text.grind.edgeRest.certainty;

/** What a bound on a hollow's limits is built from. */
export interface HollowDoubt {
  /** Tilt of the blade, degrees. */
  readonly tilt: number;
  /** Climb of the hollow for each mm of lip. */
  readonly climbPerLip: number;
  /** How far seat, lip and belt reach to either side of the place, mm. */
  readonly reach: number;
  /** Whether the lip holds the edge there at all. */
  readonly guided: boolean;
  /** Whether the hollow lies in the flat of the stock instead of a bevel. */
  readonly flat: boolean;
}

/** Sagitta of the edge over the reach at a place, against its tangent there, mm. */
export const edgeDeparture = ({ edge }: Shape, u: number, reach: number): number =>
  departure(edge.value, edge.slope(u), u, reach);

/** Whether a lip `reach` to either side of `u` finds the edge there, lower than `lipHeight`. */
export const heldAt = (shape: Shape, u: number, reach: number, lipHeight: number): boolean =>
  u - reach >= -1e-9 &&
  u + reach <= shape.length + 1e-9 &&
  edgeDeparture(shape, u, reach) < lipHeight;

/**
 * How far the limits of a hollow can be trusted at place u. The section model is exact while the
 * edge is straight over seat, lip and belt and, for a hollow in the flat, the taper even. A curved
 * edge stands off the seat, or off the belt's middle, by no more than its departure from the tangent
 * within that reach; it moves the hollow by that, and by as much of it as the tilt turns towards
 * the lip times dc/dy. A rubber wheel gives way: an estimate.
 */
export const hollowTrust = (
  shape: Shape,
  u: number,
  wheel: Wheel,
  { tilt, climbPerLip, reach, guided, flat }: HollowDoubt,
): Certainty => {
  if (wheel.surface === 'rubber') return { kind: 'estimate', basis: words.rubber };
  if (!guided) return { kind: 'estimate', basis: words.free };
  const climb = Math.abs(climbPerLip);
  const bend = edgeDeparture(shape, u, reach);
  const swell = flat ? departure(shape.thickness.value, shape.thickness.slope(u), u, reach) / 2 : 0;
  const parts = [
    { by: bend * (1 + Math.abs(sin(radians(tilt))) * climb), reason: words.edge },
    { by: swell * climb, reason: words.taper },
  ].filter(({ by }) => by > 1e-9);
  if (parts.length === 0) return exact;
  return {
    kind: 'bounded',
    by: parts.reduce((sum, { by }) => sum + by, 0),
    reason: parts.map(({ reason }) => reason).join('; '),
  };
};
