import type { Grinder, Wheel } from './schema.ts';

/** The wheel of the wanted kind that stands farthest to the front. */
export const frontWheel = ({ wheels }: Grinder, role: string): Wheel | undefined =>
  wheels
    .filter((wheel) => wheel.role === role)
    .reduce<Wheel | undefined>((best, wheel) => {
      const front = ({ centre, diameter }: Wheel): number => centre[0] + diameter / 2;
      return best === undefined || front(wheel) > front(best) ? wheel : best;
    }, undefined);
