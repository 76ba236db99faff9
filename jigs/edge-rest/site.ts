import {
  wheelAtSeat,
  type Design,
  type Grinder,
  type PlacedWheel,
} from '../../src/family/index.ts';
import type { Stand } from '../shared/site.ts';

/** One belt on the wheel, and where the seat frame stands for it. */
export interface WheelStand extends Stand {
  readonly wheel: PlacedWheel;
}

type Wheel = Grinder['wheels'][number];

/** The stand of every pass, in order. */
export const wheelStands = ({ grinder, sequence }: Design, wheel: Wheel, stack: number) =>
  sequence.flatMap((pass): WheelStand[] => {
    const belt = grinder.belts.find(({ id }) => id === pass.belt);
    const backing = grinder.backings.find(({ id }) => id === pass.backing);
    if (!belt || !backing) return [];
    const at = wheelAtSeat(grinder, wheel, belt, stack);
    return [{ belt, backing, offset: -at.foremost, wheel: at }];
  });

/**
 * How far forward anything `below` the seat may stand, seat frame: `gap` from the abrasive, square
 * to it. Where the wheel does not reach down so far, its axis.
 */
export const frontAt = ({ radius, drop }: PlacedWheel, below: number, gap: number): number => {
  const square = (radius + gap) ** 2 - (drop + below) ** 2;
  return Math.sqrt(Math.max(0, square)) - radius;
};

/**
 * Lip of height h at which a pin of radius rho, lying on the seat against it, just touches the
 * wheel: the axes are R + rho apart, and a lip lower than the pin's axis meets it with its upper
 * edge, so y = sqrt((R + rho)^2 - (dz - rho)^2) - R - sqrt(rho^2 - (rho - min(h, rho))^2).
 */
export const lipAtPin = ({ radius, drop }: PlacedWheel, rho: number, height: number): number =>
  Math.sqrt((radius + rho) ** 2 - (drop - rho) ** 2) -
  radius -
  Math.sqrt(rho ** 2 - (rho - Math.min(height, rho)) ** 2);

/**
 * Height of a block that stands on the seat against the lip and whose upper front edge just touches
 * the wheel: h = dz - sqrt(R^2 - (R + y)^2). Undefined where the lip does not lie under the wheel.
 */
export const gaugeHeight = ({ radius, drop }: PlacedWheel, lip: number): number | undefined => {
  const height = drop - Math.sqrt(Math.max(0, radius ** 2 - (radius + lip) ** 2));
  return lip < -0.02 && height > 3 ? height : undefined;
};
