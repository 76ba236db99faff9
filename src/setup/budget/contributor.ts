import type { Unit } from '../../core/parameter.ts';
import { standardNormal, type Random } from '../random.ts';

/**
 * How a contributor is spread over its range: `uniform`, even over it; `triangular`, likeliest at
 * its nominal value; `normal`, inside it 95 times in 100.
 */
export type Distribution = 'uniform' | 'normal' | 'triangular';

/**
 * Whose error it is: of `both` sides alike, of `each` side anew, or of both `opposite`, because the
 * blade is turned over between them.
 */
export type Acts = 'both' | 'each' | 'opposite';

/** One cause of error, as the departure of a quantity from its nominal value. */
export interface Contributor<Id extends string = string> {
  readonly id: Id;
  readonly label: string;
  readonly unit: Unit;
  readonly nominal: number;
  /** How far the quantity may lie below and above its nominal value; not negative. */
  readonly minus: number;
  readonly plus: number;
  readonly distribution: Distribution;
  readonly acts: Acts;
  /** Where the width comes from: a standard, a parameter, or "common practice, no source". */
  readonly source: string;
}

/** Standard deviations from nominal to the end of a normal contributor's range (GUM 4.3.4). */
const NORMAL_REACH = 1.96;

/** Mean departure from nominal and standard uncertainty of a contributor (GUM 4.3.7 to 4.3.9). */
export const momentsOf = ({
  minus,
  plus,
  distribution,
}: Pick<Contributor, 'minus' | 'plus' | 'distribution'>): { mean: number; deviation: number } => {
  switch (distribution) {
    case 'uniform':
      return { mean: (plus - minus) / 2, deviation: (plus + minus) / Math.sqrt(12) };
    case 'triangular':
      return {
        mean: (plus - minus) / 3,
        deviation: Math.sqrt((plus ** 2 + minus ** 2 + plus * minus) / 18),
      };
    case 'normal': {
      // Two half normals of equal weight, one for each side.
      const mean = ((plus - minus) / NORMAL_REACH) * Math.sqrt(1 / (2 * Math.PI));
      const square = (plus ** 2 + minus ** 2) / (2 * NORMAL_REACH ** 2);
      return { mean, deviation: Math.sqrt(square - mean ** 2) };
    }
  }
};

/** A chance departure from nominal. */
export const draw = ({ minus, plus, distribution }: Contributor, random: Random): number => {
  switch (distribution) {
    case 'uniform':
      return (minus + plus) * random() - minus;
    case 'triangular': {
      const share = random();
      const below = minus / (minus + plus || 1);
      return share < below
        ? Math.sqrt(share * minus * (minus + plus)) - minus
        : plus - Math.sqrt((1 - share) * plus * (minus + plus));
    }
    case 'normal': {
      const z = standardNormal(random) / NORMAL_REACH;
      return z < 0 ? z * minus : z * plus;
    }
  }
};
