import { chain, ok, type Result } from '../core/result.ts';
import { compose, place, WORLD, type Frame } from '../geometry/frame.ts';
import { boxRoom, seenFrom, standingIn, turned, type Carried } from './carried.ts';
import {
  checkPairs,
  type Clearance,
  type PairCheck,
  type PairRule,
  type Workspace,
} from './distance/index.ts';
import { CHECK_CHORD, type Workshop } from './workshop.ts';

/** A rule as the first part sees it. */
const ruleSeen = (rule: PairRule, { placement: { frame } }: Carried): PairRule =>
  rule.kind === 'touch' && rule.apart ? { ...rule, apart: turned(frame, rule.apart) } : rule;

/** What was found, with its points where the first part stands. */
const foundIn = (frame: Frame, clearance: Clearance): Clearance =>
  clearance.state === 'beyond'
    ? clearance
    : {
        ...clearance,
        pointA: place(frame, clearance.pointA),
        pointB: place(frame, clearance.pointB),
      };

/** Where what carries two parts stands, and what that place is called. */
export interface Start {
  readonly label: string;
  readonly pose: Frame;
}

/**
 * The check of two parts carried as one, named in the order of its rule, which depends on nothing
 * but their shapes and on where one stands to the other: kept by that, so that an assembly that is
 * turned as a whole is not looked at again. Boxes that keep as far apart as is asked are enough.
 */
export const keptPair = (
  workshop: Workshop,
  work: Workspace,
  [one, other]: readonly [Carried, Carried],
  rule: Exclude<PairRule, { kind: 'ignore' }>,
  within: number,
  { label, pose }: Start = { label: '', pose: WORLD },
): Result<PairCheck> => {
  const [a, b] = [one.placement.name, other.placement.name];
  const seen = seenFrom(one, other);
  return chain(standingIn(one, WORLD, label), (still) =>
    chain(standingIn(other, seen, label), (stood): Result<PairCheck> => {
      const far = rule.kind === 'clear' ? Math.max(within, rule.gap) : Infinity;
      const [mine] = still.solids;
      const [theirs] = stood.solids;
      if (mine && theirs && boxRoom(mine, theirs, seen) >= far + 2 * CHECK_CHORD) {
        const clearance = { state: 'beyond', certified: true, beyond: far } as const;
        return ok({ a, b, rule, pass: true, clearance, issues: [] });
      }
      const asked = ruleSeen(rule, one);
      const shapes = [one.meshed.name, other.meshed.name];
      const key = JSON.stringify([
        'carried',
        shapes,
        seen,
        { ...asked, a: '', b: '' },
        within,
        label,
      ]);
      // Alike parts share their solid: where a search starts must not come from another pair.
      const fresh: Workspace = { ...work, hints: new WeakMap() };
      const ask = () => checkPairs([still, stood], [asked], { otherwise: 0, within, work: fresh });
      const kept = workshop.pairs(key, ask);
      const sound = kept.ok && kept.value.every(({ pass }) => pass);
      // What failed is told of the parts that are asked about now.
      return chain(sound ? kept : ask(), ([pair]): Result<PairCheck> => {
        if (pair === undefined) return ok({ a, b, rule, pass: false, issues: [] });
        const { clearance } = pair;
        const found = clearance
          ? { clearance: foundIn(compose(pose, one.placement.frame), clearance) }
          : {};
        return ok({ ...pair, a, b, rule, ...found });
      });
    }),
  );
};
