import type { Vec3 } from '../../geometry/vector.ts';

/**
 * Reads of flat arrays whose index is in range by construction. One function an array type, so
 * that a compiler sees one element kind at each.
 */
export const real = (a: Float64Array, i: number): number => a[i] as number;

export const int = (a: Int32Array, i: number): number => a[i] as number;

/** The same numbers at the start of a new array. */
export const grown = <T extends Float64Array | Int32Array>(old: T, fresh: T): T => {
  fresh.set(old);
  return fresh;
};

/** The point whose coordinates stand from an index on. */
export const pointAt = (a: Float64Array, i: number): Vec3 => [
  real(a, i),
  real(a, i + 1),
  real(a, i + 2),
];
