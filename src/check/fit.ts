import type { InBore } from './bores.ts';

/**
 * How two parts that are said to touch stand to each other: apart; closed on a face, not deeper
 * than the tolerance; one held in a thread or a reamed hole of the other; or crossing.
 */
export interface Fit {
  readonly a: string;
  readonly b: string;
  readonly state: 'apart' | 'seated' | 'held' | 'crossing';
  /** The nearest hole that could hold one in the other, where they cross and there is one. */
  readonly bore?: InBore;
  /** Of two that cross: the volume that both fill where they were found to, mm3, on demand. */
  readonly shared?: () => number | undefined;
}
