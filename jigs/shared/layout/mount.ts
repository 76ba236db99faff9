import { distance2, type Grinder, type Thread, type Vec2 } from '../../../src/family/index.ts';
import { halfUp } from './half.ts';

/** The rest as the fixture sees it: seat frame, base at its mean place. */
export interface PlacedRest {
  readonly kind: 'table' | 'arm';
  readonly half: number;
  readonly front: number;
  readonly back: number;
  readonly thickness: number;
  readonly pattern: Extract<Grinder['rest'], { kind: 'table' }>['pattern'];
  /** From grinder to seat frame along y. */
  readonly offset: number;
}

/** Something already in the base that a mounting screw must stay clear of. */
export interface Taken {
  readonly at: Vec2;
  readonly radius: number;
}

/** How the base is held: where its mounting screws stand and what is beneath. */
export interface Mount {
  readonly kind: 'screws' | 'bars' | 'from-above';
  readonly thread: Thread;
  readonly at: readonly Vec2[];
  /** Half length of the clamp bars, half width of the base beside them, and where it widens. */
  readonly barHalf: number;
  readonly earHalf: number;
  readonly earFrom: number;
}

/** Least distance of two mounting screws, mm: nearer ones do not hold the base square. */
const LEAST_SPREAD = 40;
/** Metal between holes and from a hole to the edge of the base, mm. */
const WEB = 4;

export interface Plan {
  readonly half: number;
  readonly front: number;
  readonly back: number;
}

const free =
  (base: Plan, taken: readonly Taken[], radius: number) =>
  ([x, y]: Vec2): boolean =>
    Math.abs(x) + radius + WEB <= base.half &&
    y - radius - WEB >= base.front &&
    y + radius + WEB <= base.back &&
    taken.every((t) => distance2(t.at, [x, y]) >= t.radius + radius + WEB);

/** Places from one to the other a millimetre apart, whole half millimetres from `origin`. */
const along = (from: number, to: number, origin: number): number[] => {
  const first = origin + halfUp(Math.min(from, to) - origin);
  const length = Math.max(from, to) - first;
  return Array.from({ length: Math.max(0, Math.floor(length) + 1) }, (_, i) => first + i);
};

const slotPlaces = (rest: PlacedRest, front: number): Vec2[][] => {
  const { pattern, offset } = rest;
  if (pattern.kind !== 'slots') return [];
  return pattern.slots.map(({ at, from, to }) =>
    pattern.axis === 'x'
      ? along(from, to, 0).map((x): Vec2 => [x, at + offset])
      : along(from + offset, to + offset, front).map((y): Vec2 => [at, y]),
  );
};

/** The two free places of a line that stand farthest apart. */
const ends = (places: readonly Vec2[]): Vec2[] => {
  const [first, last] = [places[0], places.at(-1)];
  return first && last && distance2(first, last) > 0 ? [first, last] : first ? [first] : [];
};

const spread = (places: readonly Vec2[]): number =>
  Math.max(0, ...places.flatMap((a) => places.map((b) => distance2(a, b))));

/** At most four of the places: the ones farthest out towards the corners of the base. */
const corners = (places: readonly Vec2[]): Vec2[] => {
  const towards = (sx: number, sy: number): Vec2 | undefined =>
    [...places].sort((a, b) => sx * (b[0] - a[0]) + sy * (b[1] - a[1]))[0];
  const picked = [towards(-1, -1), towards(1, -1), towards(-1, 1), towards(1, 1)];
  return picked.filter((p, i): p is Vec2 => p !== undefined && picked.indexOf(p) === i);
};

/** Where the rest's own holes or slots can take a screw through or into the base. */
export const patternPlaces = (
  rest: PlacedRest,
  base: Plan,
  taken: readonly Taken[],
  radius: number,
): Vec2[] => {
  const isFree = free(base, taken, radius);
  if (rest.pattern.kind === 'holes') {
    const holes = rest.pattern.at.map(([x, y]): Vec2 => [x, y + rest.offset]);
    const places = corners(holes.filter(isFree));
    return spread(places) >= LEAST_SPREAD ? places : [];
  }
  const places = corners(slotPlaces(rest, base.front).flatMap((slot) => ends(slot.filter(isFree))));
  return spread(places) >= LEAST_SPREAD ? places : [];
};

/** Two pairs of screws outside the rest's sides, as far apart along y as base and rest allow. */
export const barPlaces = (
  rest: PlacedRest,
  base: Plan,
  taken: readonly Taken[],
  radius: number,
  earFrom: number,
  barWidth: number,
): Vec2[] => {
  const x = rest.half + radius + 2;
  const isFree = free({ ...base, half: Math.max(base.half, x + radius + WEB) }, taken, radius);
  const outside = x + radius + WEB > base.half;
  const low = Math.max(base.front, rest.front, outside ? earFrom : -Infinity) + barWidth / 2 + 1;
  const high = Math.min(base.back, rest.back) - barWidth / 2 - 1;
  if (high - low < LEAST_SPREAD) return [];
  const ys = along(low, high, base.front).filter((y) => isFree([x, y]) && isFree([-x, y]));
  const [first, last] = [ys[0], ys.at(-1)];
  if (first === undefined || last === undefined || last - first < LEAST_SPREAD) return [];
  return [
    [-x, first],
    [x, first],
    [-x, last],
    [x, last],
  ];
};
