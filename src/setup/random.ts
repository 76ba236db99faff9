/** A source of numbers even over 0 to 1, ends excluded. */
export type Random = () => number;

const MODULUS = 2 ** 31 - 1;
const MULTIPLIER = 48271;

/**
 * A seeded generator, the multiplicative congruential one that ISO/IEC 14882 (C++), [rand.predef],
 * calls `minstd_rand`: x' = 48271 x mod (2^31 - 1), whose 10000th number from seed 1 is 399268537.
 * Products stay below 2^53, so every engine gives the same numbers. Good for simulations of some
 * millions of draws, for nothing secret; streams of related seeds are related. `seed` is any whole number; multiples of the modulus
 * count as 1.
 */
export const seeded = (seed: number): Random => {
  const start = Math.abs(Math.trunc(seed)) % MODULUS;
  let state = start === 0 ? 1 : start;
  return () => {
    state = (state * MULTIPLIER) % MODULUS;
    return state / MODULUS;
  };
};

/** A standard normal number by the polar method: two even ones in the unit circle give one. */
export const standardNormal = (random: Random): number => {
  for (;;) {
    const [x, y] = [2 * random() - 1, 2 * random() - 1];
    const square = x * x + y * y;
    if (square > 0 && square < 1) return x * Math.sqrt((-2 * Math.log(square)) / square);
  }
};
