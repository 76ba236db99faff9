import { createStore } from '../core/store.ts';
import type { Body, Motion, Solid } from './distance/index.ts';

/** Solids and motions of several designs between which a maker goes back and forth. */
const SOLIDS = 400;
const MOTIONS = 400;

/** Every number that a solid is made of; two solids with the same numbers are alike. */
const numbersOf = (solid: Solid): readonly ArrayLike<number>[] => {
  if (solid.kind === 'plane') return [solid.normal, [solid.offset]];
  const { pieces, surface, anchors, proud } = solid;
  const { start, count, points, rounds } = pieces;
  return [points, rounds, start, count, anchors, [proud, surface ? 1 : 0]];
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

/**
 * The first solid of a name. It is not held here: those of a hundred steps of a drag would fill the
 * memory of a telephone, and one that nobody holds any more can get another name.
 */
interface Named {
  readonly solid: WeakRef<Solid>;
  readonly name: string;
}

/**
 * Names bodies by their content: bodies of one name are alike to the last bit. Undefined where
 * that cannot be told, because a course is known by running it alone.
 */
export type BodyNames = (body: Body) => string | undefined;

export const createBodyNames = (): BodyNames => {
  let used = 0;
  const next = (): string => String(used++);
  const solids = new WeakMap<Solid, string>();
  const firsts = createStore<Named>(SOLIDS);
  const motions = new WeakMap<Motion, string>();
  const ways = createStore<string>(MOTIONS);

  const solidName = (solid: Solid): string => {
    const known = solids.get(solid);
    if (known !== undefined) return known;
    const { solid: held, name: given } = firsts(sumOf(solid), () => ({
      solid: new WeakRef(solid),
      name: next(),
    }));
    const first = held.deref();
    const name = first && alike(first, solid) ? given : next();
    solids.set(solid, name);
    return name;
  };
  const motionName = (motion: Motion): string | undefined => {
    const known = motions.get(motion);
    if (known !== undefined) return known;
    if (motion.some(({ kind }) => kind === 'course')) return undefined;
    const name = ways(JSON.stringify(motion), next);
    motions.set(motion, name);
    return name;
  };
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
