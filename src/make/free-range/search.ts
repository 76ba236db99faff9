/** What a value does: nothing fails, or these do. */
export interface Outcome {
  /** `refused`: no fixture of that value can be built. */
  readonly kind: 'good' | 'refused' | 'check';
  /** Keys of what fails: ids of checks, or codes of the reasons for the refusal. */
  readonly fails: readonly string[];
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

/**
 * Looks outwards from a good value for the first that is not: values on a growing ladder, then
 * halving between the last good and the first bad one down to the tolerance. Nothing is proved
 * between the values tried: a stretch that fails and mends again between two of them is missed.
 */
export const searchEnd = (terms: RangeTerms, look: (value: number) => Outcome): RangeEnd => {
  const { from, limit, tolerance } = terms;
  let good = from;
  let tried = 0;
  const test = (value: number): Outcome => {
    tried += 1;
    return look(value);
  };
  if (Math.abs(limit - from) < 1e-12) return { good, stop: 'limit', fails: [], tried };
  for (const rung of ladder(terms)) {
    let outcome = test(rung);
    if (outcome.kind === 'good') {
      good = rung;
      continue;
    }
    let bad = rung;
    while (Math.abs(bad - good) > tolerance) {
      const middle = (good + bad) / 2;
      const found = test(middle);
      if (found.kind === 'good') good = middle;
      else [bad, outcome] = [middle, found];
    }
    const stop = outcome.kind === 'refused' ? 'refused' : 'check';
    return { good, stop, bad, fails: outcome.fails, tried };
  }
  return { good, stop: Number.isFinite(limit) ? 'limit' : 'far', fails: [], tried };
};
