import type { Vec3 } from '../geometry/vector.ts';
import type { Body } from './bodies.ts';
import type { Eye } from './eye.ts';
import { hidesOftener, isHollowed } from './nearer.ts';

const EPS = 1e-6;

/** Whether a must be drawn before b: some plane square to an axis parts them. */
const isBehind = (a: Body, b: Body, towards: Vec3): boolean =>
  isBehindAlong(a, b, towards, 0) ||
  isBehindAlong(a, b, towards, 1) ||
  isBehindAlong(a, b, towards, 2);

const isBehindAlong = (a: Body, b: Body, towards: Vec3, i: 0 | 1 | 2): boolean =>
  (towards[i] > EPS && a.max[i] <= b.min[i] + EPS) ||
  (towards[i] < -EPS && a.min[i] >= b.max[i] - EPS);

const AXES = [0, 1, 2] as const;

/** From where to where a box reaches across the view, square to how an axis is seen. */
const reachAlong = ({ min, max }: Body, { right, up }: Eye, axis: 0 | 1 | 2) => {
  const of = AXES.map((j) => right[axis] * up[j] - up[axis] * right[j]);
  // An axis that is seen end on tells nothing of where boxes are.
  if (of.every((by) => Math.abs(by) < EPS)) return [-Infinity, Infinity] as const;
  const sum = (least: boolean): number =>
    AXES.reduce<number>((total, j) => {
      const by = of[j] ?? 0;
      return total + by * (by > 0 === least ? min[j] : max[j]);
    }, 0);
  return [sum(true), sum(false)] as const;
};

/** What a box covers of a view, as ranges square to the three axes: boxes that share all meet. */
const coverOf = (body: Body, eye: Eye) => AXES.map((axis) => reachAlong(body, eye, axis));
type Cover = ReturnType<typeof coverOf>;

const meet = (a: Cover | undefined, b: Cover | undefined): boolean =>
  a?.every(([low, high], i) => {
    const [from, to] = b?.[i] ?? [low, high];
    return low < to - EPS && from < high - EPS;
  }) ?? true;

/** Nearest point of the body's box to the eye. */
const nearness = (body: Body, towards: Vec3): number =>
  AXES.reduce<number>(
    (sum, i) => sum + towards[i] * (towards[i] > 0 ? body.max[i] : body.min[i]),
    0,
  );

/**
 * Bodies from far to near; what does not meet in the view waits for nothing. Boxes parted by a plane
 * square to an axis are ordered by it. Where that says nothing, what stands in the bay of another (a
 * keeper under a grip) is looked at: the one that hides the other oftener comes later. Elsewhere (a
 * bolt in its hole), or where planes say both ways, the one that reaches less near goes first.
 */
export const paintOrder = (bodies: readonly Body[], eye: Eye): Body[] => {
  const { towards } = eye;
  const hollowed = new Set(bodies.filter(isHollowed));
  const covers = new Map(bodies.map((body) => [body, coverOf(body, eye)]));
  const looked = new Map<Body, Map<Body, number>>();
  const hides = (a: Body, b: Body): number => {
    const known = looked.get(a) ?? new Map<Body, number>();
    looked.set(a, known);
    const found = known.get(b) ?? hidesOftener(a, b, eye);
    known.set(b, found);
    return found;
  };
  return ordered(
    bodies.toSorted((a, b) => nearness(a, towards) - nearness(b, towards)),
    (a, b) => {
      if (!meet(covers.get(a), covers.get(b))) return false;
      const [behind, before] = [isBehind(a, b, towards), isBehind(b, a, towards)];
      if (behind || before) return behind && !before;
      const isInBay = (hollowed.has(a) || hollowed.has(b)) && a.owner !== b.owner;
      return isInBay && hides(b, a) > 0;
    },
  );
};

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
