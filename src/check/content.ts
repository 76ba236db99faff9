import { createStore } from '../core/store.ts';
import { isSameFrame, type Frame } from '../geometry/frame.ts';
import type { Body, Motion, Solid, Sweep } from './distance/index.ts';

/** Solids and motions of several designs between which a maker goes back and forth. */
const SOLIDS = 400;
const MOTIONS = 400;

const FILLINGS = ['facets', 'prisms', 'bodies'] as const;

/** Every number that a solid is made of; two solids with the same numbers are alike. */
const numbersOf = (solid: Solid): readonly ArrayLike<number>[] => {
  if (solid.kind === 'plane') return [solid.normal, [solid.offset]];
  const { pieces, of, anchors, proud } = solid;
  const { start, count, points, rounds } = pieces;
  return [points, rounds, start, count, anchors, [proud, FILLINGS.indexOf(of)]];
};

const alike = (one: Solid, other: Solid): boolean => {
  if (one === other) return true;
  if (one.kind !== other.kind) return false;
  const mine = numbersOf(one);
  return numbersOf(other).every((list, i) => {
    const own = mine[i] ?? [];
    if (own.length !== list.length) return false;
    for (let k = 0; k < list.length; k++) if (own[k] !== list[k]) return false;
    return true;
  });
};

/** Tells most solids apart at once; those it does not are compared number by number. */
const sumOf = (solid: Solid): string => {
  const lists = numbersOf(solid);
  let sum = 0;
  for (const list of lists) {
    for (let k = 0; k < list.length; k++) sum += (list[k] ?? 0) * ((k % 31) + 1);
  }
  return `${solid.kind} ${String(lists[0]?.length)} ${String(sum)}`;
};

/** The frames in which a sweep starts and ends; none of a course. */
const framesOf = (sweep: Sweep): readonly Frame[] =>
  sweep.kind === 'glide' ? [sweep.from, sweep.to] : sweep.kind === 'still' ? [sweep.pose] : [];

const sameWay = (one: Motion, other: Motion): boolean =>
  one === other ||
  (one.length === other.length &&
    one.every((sweep, i) => {
      const there = other[i];
      if (there?.kind !== sweep.kind || there.label !== sweep.label) return false;
      const frames = framesOf(there);
      return framesOf(sweep).every((frame, k) => isSameFrame(frame, frames[k] ?? frame));
    }));

/** Tells most motions apart at once; those it does not are compared frame by frame. */
const waySum = (motion: Motion): string => {
  let sum = 0;
  motion.forEach((sweep, i) => {
    for (const { origin, x, y } of framesOf(sweep)) {
      for (let k = 0; k < 3; k++) {
        const at = k as 0 | 1 | 2;
        sum += (origin[at] * (k + 1) + x[at] * (k + 7) + y[at] * (k + 13)) * (i + 1);
      }
    }
  });
  return `${String(motion.length)} ${motion[0]?.label ?? ''} ${String(sum)}`;
};

/** The first of a name, as long as it is there. */
interface Named<T> {
  readonly first: () => T | undefined;
  readonly name: string;
}

/** Names by content: two that are alike get one name. */
const namesBy = <T extends object>(
  limit: number,
  sumOf: (one: T) => string,
  alike: (one: T, other: T) => boolean,
  next: () => string,
  held: (one: T) => () => T | undefined,
): ((one: T) => string) => {
  const known = new WeakMap<T, string>();
  const firsts = createStore<Named<T>>(limit);
  return (one) => {
    const last = known.get(one);
    if (last !== undefined) return last;
    const { first, name: given } = firsts(sumOf(one), () => ({
      first: held(one),
      name: next(),
    }));
    const there = first();
    const name = there && alike(there, one) ? given : next();
    known.set(one, name);
    return name;
  };
};

/**
 * Names bodies by their content: bodies of one name are alike to the last bit. Undefined where
 * that cannot be told, because a course is known by running it alone.
 */
export type BodyNames = (body: Body) => string | undefined;

export const createBodyNames = (): BodyNames => {
  let used = 0;
  const next = (): string => String(used++);
  const solidName = namesBy<Solid>(SOLIDS, sumOf, alike, next, (solid) => {
    // Not held here: those of a hundred steps of a drag would fill the memory of a telephone, and one
    // that nobody holds any more can get another name.
    const first = new WeakRef(solid);
    return () => first.deref();
  });
  const wayName = namesBy<Motion>(MOTIONS, waySum, sameWay, next, (motion) => () => motion);
  const motionName = (motion: Motion): string | undefined =>
    motion.some(({ kind }) => kind === 'course') ? undefined : wayName(motion);
  const bodies = new WeakMap<Body, string>();
  return (body) => {
    const known = bodies.get(body);
    if (known !== undefined) return known;
    const { name, solids: own, chordError, motion } = body;
    const way = motion ? motionName(motion) : 'still';
    if (way === undefined) return undefined;
    const given = JSON.stringify([name, own.map(solidName), chordError, way]);
    bodies.set(body, given);
    return given;
  };
};
