/** How far each check is from its limit, by its id: less than zero where it fails. */
export type Spares = ReadonlyMap<string, number>;

/** What a value does: nothing fails, or these do. */
export interface Outcome {
  /** `refused`: no fixture of that value can be built. */
  readonly kind: 'good' | 'refused' | 'check';
  /** Keys of what fails: ids of checks, or codes of the reasons for the refusal. */
  readonly fails: readonly string[];
  /** Of a value that was checked: they tell where to look next. */
  readonly spares?: Spares;
}

/** How far a number can move one way. */
export interface RangeEnd {
  /** The farthest value up to which everything that was tried is good. */
  readonly good: number;
  /** What stops it: the end of the allowed range, a check, a refusal, or nothing was found. */
  readonly stop: 'limit' | 'check' | 'refused' | 'far';
  /** The nearest value that was tried and is not good, and what fails there. */
  readonly bad?: number;
  readonly fails: readonly string[];
  /** How many values were tried. */
  readonly tried: number;
}

/** Where an end is looked for. */
export interface RangeTerms {
  readonly from: number;
  /** The allowed limit on this side; infinite where none is known. */
  readonly limit: number;
  /** The first way tried where no limit is known. */
  readonly first: number;
  /** Good and bad are brought together to this distance. */
  readonly tolerance: number;
  /** What the checks have to spare where it begins. */
  readonly spares?: Spares;
}

/** Shares of the way to the limit that are tried, outwards. */
const SHARES = [1 / 16, 1 / 4, 1] as const;
/** Where no limit is known: each way is so many times the one before, at most so often. */
const GROWTH = 4;
const TIMES = 5;

const ladder = ({ from, limit, first }: RangeTerms): number[] =>
  Number.isFinite(limit)
    ? SHARES.map((share) => (share === 1 ? limit : from + share * (limit - from)))
    : Array.from({ length: TIMES }, (_, i) => from + Math.sign(limit) * first * GROWTH ** i);

/** A value that was tried, and what it did. */
interface Tried {
  readonly value: number;
  readonly spares?: Spares | undefined;
}

/** So much of the tolerance from either end a value is tried at least. */
const INSET = 0.45;

/**
 * Where the first of the checks that fail at the bad value uses up what it has to spare, if that
 * shrinks evenly from the good one on.
 */
const usedUp = (good: Tried, bad: Tried, tolerance: number): number | undefined => {
  const way = bad.value - good.value;
  const shares = [...(bad.spares ?? [])].flatMap(([id, below]): number[] => {
    const above = good.spares?.get(id);
    return below < 0 && above !== undefined && above >= 0 ? [above / (above - below)] : [];
  });
  if (shares.length === 0) return undefined;
  const inset = (INSET * tolerance) / Math.abs(way);
  const there = good.value + Math.max(inset, Math.min(1 - inset, ...shares)) * way;
  // Round numbers, which engines agree on whose last bits do not.
  const grid = 10 ** Math.floor(Math.log10(tolerance / 10) + 1e-9);
  return Math.round(there / grid) * grid;
};

/**
 * Looks outwards from a good value for the first that is not: values on a growing ladder, then
 * between the last good and the first bad one down to the tolerance, where the checks' own numbers
 * say that the first of them fails, and by halving where that does not come near. Nothing is proved
 * between the values tried: a stretch that fails and mends again between two of them is missed.
 */
export const searchEnd = (terms: RangeTerms, look: (value: number) => Outcome): RangeEnd => {
  const { from, limit, tolerance } = terms;
  let good: Tried = { value: from, spares: terms.spares };
  let tried = 0;
  const test = (value: number): Outcome => {
    tried += 1;
    return look(value);
  };
  if (Math.abs(limit - from) < 1e-12) return { good: from, stop: 'limit', fails: [], tried };
  for (const rung of ladder(terms)) {
    let outcome = test(rung);
    if (outcome.kind === 'good') {
      good = { value: rung, spares: outcome.spares };
      continue;
    }
    let bad: Tried = { value: rung, spares: outcome.spares };
    let isFar = false;
    for (let left = Math.abs(bad.value - good.value); left > tolerance;) {
      const half = (good.value + bad.value) / 2;
      const middle = (isFar ? undefined : usedUp(good, bad, tolerance)) ?? half;
      const found = test(middle);
      const there = { value: middle, spares: found.spares };
      if (found.kind === 'good') good = there;
      else [bad, outcome] = [there, found];
      const now = Math.abs(bad.value - good.value);
      // A guess that took less than half away is followed by halving.
      isFar = !isFar && now > left / 2;
      left = now;
    }
    const stop = outcome.kind === 'refused' ? 'refused' : 'check';
    return { good: good.value, stop, bad: bad.value, fails: outcome.fails, tried };
  }
  const stop = Number.isFinite(limit) ? 'limit' : 'far';
  return { good: good.value, stop, fails: [], tried };
};
