import { compose, place, turnBack, WORLD, type Frame } from '../geometry/frame.ts';
import { boxRoom, restOf, seenFrom, standingIn, type CarriedPart } from './carried.ts';
import {
  checkPair,
  type Clearance,
  type PairCheck,
  type PairRule,
  type Workspace,
} from './distance/index.ts';
import { CHECK_CHORD } from './chord.ts';
import type { Workshop } from './workshop.ts';

/** A rule as the first part sees it. */
const ruleSeen = (rule: PairRule, { placement: { frame } }: CarriedPart): PairRule =>
  rule.kind === 'touch' && rule.apart ? { ...rule, apart: turnBack(frame, rule.apart) } : rule;

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

/** The check of two parts, the second as the first sees it, looked at where it is not kept. */
const lookAt = (
  workshop: Workshop,
  work: Workspace,
  [one, other]: readonly [CarriedPart, CarriedPart],
  rule: PairRule,
  within: number,
  { label, pose }: Start,
): PairCheck => {
  const seen = seenFrom(one, other);
  const [a, b] = [one.placement.name, other.placement.name];
  const asked = ruleSeen(rule, one);
  // Alike parts share their solid: where a search starts must not come from another pair.
  const fresh: Workspace = { ...work, hints: new Map() };
  const ask = (): PairCheck =>
    checkPair(standingIn(one, WORLD, label), standingIn(other, seen, label), asked, {
      within,
      work: fresh,
    });
  const shapes = [one.formed.name, other.formed.name];
  const key = JSON.stringify(['carried', shapes, seen, { ...asked, a: '', b: '' }, within, label]);
  const kept = workshop.pairs(key, ask);
  // What failed is told of the parts that are asked about now.
  const pair = kept.pass ? kept : ask();
  const { clearance } = pair;
  const found = clearance
    ? { clearance: foundIn(compose(pose, one.placement.frame), clearance) }
    : {};
  return { ...pair, a, b, rule, ...found };
};

/** The check of two parts that are nowhere near each other, by the boxes around them alone. */
const farApart = (
  [one, other]: readonly [CarriedPart, CarriedPart],
  rule: PairRule,
  within: number,
): PairCheck | undefined => {
  if (rule.kind !== 'clear') return undefined;
  const far = Math.max(within, rule.gap);
  const room = boxRoom(restOf(one), restOf(other), seenFrom(one, other));
  if (room < far + 2 * CHECK_CHORD) return undefined;
  const clearance = { state: 'beyond', certified: true, beyond: far } as const;
  const [a, b] = [one.placement.name, other.placement.name];
  return { a, b, rule, pass: true, clearance, issues: [] };
};

/**
 * The check of two parts carried as one, named in the order of its rule, which depends on nothing
 * but their shapes and on where one stands to the other: kept by that, so that an assembly that is
 * turned as a whole is not looked at again. What is around them alone is enough where it keeps as far apart as is asked.
 */
export const keptPair = (
  workshop: Workshop,
  work: Workspace,
  pair: readonly [CarriedPart, CarriedPart],
  rule: PairRule,
  within: number,
  start: Start = { label: '', pose: WORLD },
): PairCheck => farApart(pair, rule, within) ?? lookAt(workshop, work, pair, rule, within, start);
