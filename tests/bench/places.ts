/** Pairs of bodies that the checks ask about, and the places at which libraries can look at them. */
import { AT_HAND, type Body } from '../../src/check/distance/index.ts';
import { poseAt, sweepOf, track } from '../../src/check/distance/motion.ts';
import type { Solids } from '../../src/check/set-up.ts';
import { place, WORLD, type Frame } from '../../src/geometry/frame.ts';
import { length3, sub3, type Vec3 } from '../../src/geometry/vector.ts';

/** Way of a body between two places at which libraries look, mm. */
const STEP = 1;

export interface Pair {
  readonly a: Body;
  readonly b: Body;
  /** How near they are looked for, mm. */
  readonly within: number;
  /** Movements. */
  readonly count: number;
  /** Places on all movements, no body farther than STEP from one to the next. */
  readonly dense: number;
}

export type Places = readonly (readonly [Frame, Frame])[];

/** The way of the farthest corner of a body's boxes from the start to the end of a movement, mm. */
const wayOf = ({ solids, motion }: Body, i: number): number => {
  const sweep = sweepOf(motion, i);
  if (sweep === undefined || sweep.kind === 'still') return 0;
  const [from, to] = [poseAt(track(sweep), 0), poseAt(track(sweep), 1)];
  const corners = solids.flatMap((solid): Vec3[] => {
    if (solid.kind === 'plane') return [];
    const [x = 0, y = 0, z = 0, hx = 0, hy = 0, hz = 0] = solid.tree.boxes;
    return [-1, 1].flatMap((i) =>
      [-1, 1].flatMap((j) => [-1, 1].map((k): Vec3 => [x + i * hx, y + j * hy, z + k * hz])),
    );
  });
  return Math.max(0, ...corners.map((p) => length3(sub3(place(to, p), place(from, p)))));
};

/** Every pair the checks of solids ask about, with the places at which its movements begin. */
export const pairsOf = ({ setUps }: Solids): Pair[] =>
  setUps.flatMap(({ asked, bodies }) =>
    asked.flatMap(({ rule }): Pair[] => {
      const [a, b] = [bodies.get(rule.a), bodies.get(rule.b)];
      if (a === undefined || b === undefined) return [];
      // Libraries know no half spaces: those pairs are left out for them.
      if ([a, b].some(({ solids }) => solids.some(({ kind }) => kind === 'plane'))) return [];
      // What moves as one has but one place.
      const count =
        a.motion === b.motion ? 1 : Math.max(a.motion?.length ?? 1, b.motion?.length ?? 1);
      const dense = Array.from({ length: count }, (_, i) =>
        count === 1 ? 1 : Math.max(1, Math.ceil(Math.max(wayOf(a, i), wayOf(b, i)) / STEP)),
      ).reduce((sum, n) => sum + n, 0);
      const within = (rule.kind === 'clear' ? rule.gap : 0) + AT_HAND;
      return [{ a, b, within, count, dense }];
    }),
  );

export type Count = 'count' | 'dense';

export const placesOf = (pairs: readonly Pair[], of: Count): number =>
  pairs.reduce((sum, pair) => sum + pair[of], 0);

/** The place of both bodies at a share of all movements of a pair. */
export const placeAt = ({ a, b, count }: Pair, share: number): readonly [Frame, Frame] => {
  const at = share * count;
  const i = Math.min(count - 1, Math.floor(at));
  const of = ({ motion }: Body): Frame => {
    const sweep = sweepOf(motion, i);
    return sweep === undefined ? WORLD : poseAt(track(sweep), at - i);
  };
  return [of(a), of(b)];
};
