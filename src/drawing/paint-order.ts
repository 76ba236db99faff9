import type { Vec3 } from '../geometry/vector.ts';
import type { Body } from './bodies.ts';

const EPS = 1e-6;

/** Whether a must be drawn before b: some plane square to an axis parts them. */
const isBehind = (a: Body, b: Body, towards: Vec3): boolean =>
  isBehindAlong(a, b, towards, 0) ||
  isBehindAlong(a, b, towards, 1) ||
  isBehindAlong(a, b, towards, 2);

const isBehindAlong = (a: Body, b: Body, towards: Vec3, i: 0 | 1 | 2): boolean =>
  (towards[i] > EPS && a.max[i] <= b.min[i] + EPS) ||
  (towards[i] < -EPS && a.min[i] >= b.max[i] - EPS);

/** Nearest point of the body's box to the eye. */
const nearness = (body: Body, towards: Vec3): number =>
  ([0, 1, 2] as const).reduce<number>(
    (sum, i) => sum + towards[i] * (towards[i] > 0 ? body.max[i] : body.min[i]),
    0,
  );

/**
 * Bodies from far to near. Boxes parted by a plane square to an axis are ordered by it; where
 * that says nothing (a bolt in its hole) or both ways, the one that reaches less near goes first.
 */
export const paintOrder = (bodies: readonly Body[], towards: Vec3): Body[] =>
  ordered(
    bodies.toSorted((a, b) => nearness(a, towards) - nearness(b, towards)),
    (a, b) => isBehind(a, b, towards) && !isBehind(b, a, towards),
  );

/** Things from far to near; among those that nothing has to precede the first one given. */
export const ordered = <T>(things: readonly T[], isBefore: (a: T, b: T) => boolean): T[] => {
  // What a thing waits for is looked for from the last one on: all before it let it go for good.
  const waiting = things.map((thing, own) => ({ thing, own, looked: 0 }));
  const out: T[] = [];
  const done = things.map(() => false);
  const isFree = (one: { readonly thing: T; readonly own: number; looked: number }): boolean => {
    for (; one.looked < things.length; one.looked += 1) {
      const other = things[one.looked];
      if (other === undefined || one.looked === one.own || done[one.looked] === true) continue;
      if (isBefore(other, one.thing)) return false;
    }
    return true;
  };
  while (waiting.length > 0) {
    const free = waiting.findIndex(isFree);
    for (const { thing, own } of waiting.splice(Math.max(0, free), 1)) {
      out.push(thing);
      done[own] = true;
    }
  }
  return out;
};
