import { relativeOf, type Body, type Workspace } from './body.ts';
import { roomTo } from './bounds.ts';
import { real } from './flat.ts';
import { heldAt, type Relative } from './relative.ts';
import type { Solid } from './solid.ts';

/** A moment that alone is asked about: the sweep by its number, and where on it, 0 to 1. */
export interface Instant {
  readonly sweep: number;
  readonly t: number;
}

/** Two bodies as they are searched: the second one moves as seen from the first where swapped. */
export interface View {
  readonly swapped: boolean;
  readonly moving: Body;
  readonly still: Body;
  readonly motion: Relative;
}

export const viewOf = (
  work: Workspace,
  a: Body,
  b: Body,
  swapped: boolean,
  at: Instant | undefined,
): View => {
  const [moving, still] = swapped ? [b, a] : [a, b];
  const whole = relativeOf(work, moving, still);
  return { swapped, moving, still, motion: at ? heldAt(whole, at.sweep, at.t) : whole };
};

/** A pair of solids, in the order of their bodies, and the room around them; none by a plane. */
export interface SolidPair {
  readonly one: Solid;
  readonly other: Solid;
  readonly room: number;
}

/**
 * Pairs of solids with less room than `enough` between their boxes, those that come nearest first:
 * what they find bounds the rest. Of the others the least room is told.
 */
export const nearestFirst = (
  a: Body,
  b: Body,
  { swapped, motion: { data, root } }: View,
  enough: number,
  bound: Float64Array,
): { readonly pairs: readonly SolidPair[]; readonly rest: number } => {
  const pairs: SolidPair[] = [];
  let rest = Infinity;
  for (const one of a.solids) {
    for (const other of b.solids) {
      let room = -Infinity;
      if (one.kind === 'tree' && other.kind === 'tree') {
        const { boxes: moving } = swapped ? other.tree : one.tree;
        const { boxes: still } = swapped ? one.tree : other.tree;
        roomTo(bound, 0, moving, 0, still, 0, data, root, enough);
        room = real(bound, 0);
      }
      if (room < enough) pairs.push({ one, other, room });
      else if (room < rest) rest = room;
    }
  }
  if (pairs.length > 1) pairs.sort((p, q) => (p.room === q.room ? 0 : p.room - q.room));
  return { pairs, rest };
};
