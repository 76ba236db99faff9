import {
  SIDES,
  all,
  chain,
  fail,
  ok,
  problem,
  text,
  wantedBevel,
  type Blade,
  type Design,
  type Result,
  type Side,
} from '../../src/family/index.ts';
import { slopeAt, type Layout } from './layout.ts';
import type { Values } from './parameters.ts';

const words = text.family.backingCarrier;

/** One side of one blade: the bevel that is wanted, and how the blade leans for it there. */
export interface Aim {
  readonly blade: Blade;
  readonly side: Side;
  /** Between the midplane and the chord of the bevel, degrees. */
  readonly angle: number;
  /** Height of the wanted bevel, mm. */
  readonly height: number;
  /** Of the blade from upright where the face slopes as it does at the contact, degrees. */
  readonly tilt: number;
}

/** Every flat bevel of the design: a hollow needs a wheel, not a backing. */
export const aimsOf = ({ blades, grinder }: Design, v: Values, l: Layout): Result<Aim[]> =>
  chain(
    all(
      blades.flatMap((blade, i) =>
        SIDES.map((side): Result<Aim[]> => {
          const bevel = blade.bevels[side];
          if (bevel.kind === 'none') return ok([]);
          const wanted = wantedBevel(blade, side);
          if (!wanted) {
            const why = words.issues.hollow(blade.name, words.side[side]);
            return fail(problem('not-flat', `blades.${String(i)}.bevels.${side}`, why));
          }
          const { angle, bevelHeight: height } = wanted;
          const tilt = angle + grinder.lean + slopeAt(l, v.contact);
          return ok([{ blade, side, angle, height, tilt }]);
        }),
      ),
    ),
    (lists) => ok(lists.flat()),
  );
