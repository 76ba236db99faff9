import {
  clearanceHole,
  nut,
  problem,
  text,
  type Issue,
  type Thread,
} from '../../src/family/index.ts';
import type { Values } from './parameters.ts';

const words = text.family.backingCarrier;

/** Slots in the back of the ribs for the nuts of the platen's bolts, mm: web under the nut, room
 * for the end of the bolt over it, play beside its flats. */
const SLOT = { web: 5, room: 4, play: 0.2 } as const;

/** Slots of the ribs for nuts, open to the back: neck for the bolt, head for the nut. */
export interface Slots {
  readonly thread: Thread;
  readonly at: readonly number[];
  /** Half widths of neck and head; what the nut lies on, and the end of the slot, y. */
  readonly neck: number;
  readonly head: number;
  readonly seat: number;
  readonly end: number;
  /** Ribs that have them, by number: those before the nut. */
  readonly ribs: ReadonlySet<number>;
}

const threadOf = ({ boltThread }: Values): Thread => (boltThread === 'M6' ? 'M6' : 'M8');

/** The slots of a stack of ribs whose back lies at `back`. */
export const slotsOf = (v: Values, back: number, ribs: number): Slots => {
  const thread = threadOf(v);
  const { acrossFlats, acrossCorners, height } = nut(thread);
  const reach = acrossCorners / 2 + SLOT.play;
  const seat = back + SLOT.web;
  const from = -(ribs * v.plate) / 2;
  const before = Array.from({ length: ribs }, (_, i) => i).filter(
    (i) => from + i * v.plate < reach && from + (i + 1) * v.plate > -reach,
  );
  return {
    thread,
    at: [v.boltLow, v.boltHigh],
    neck: clearanceHole(thread, 'normal').diameter / 2,
    head: acrossFlats / 2 + SLOT.play,
    seat,
    end: seat + height + SLOT.room,
    ribs: new Set(before),
  };
};

/** How far the platen's bolts must reach out of what carried it: through the nut, no farther. */
export const boltReach = ({ seat, end }: Slots, back: number) => ({
  least: end - SLOT.room - back,
  most: end - back - 1,
  web: seat - back,
});

/** Bolts of the platen that are off the ribs, at a rod or at each other. */
export const slotIssues = (
  v: Values,
  { bottom, top }: { readonly bottom: number; readonly top: number },
  rods: readonly number[],
): Issue[] => {
  if (v.place !== 'instead') return [];
  const { head } = slotsOf(v, 0, 1);
  const apart = head + clearanceHole('M6', 'normal').diameter / 2 + v.plate;
  const ends = head + v.plate;
  const spans = (z: number): boolean =>
    z >= bottom + ends && z <= top - ends && rods.every((rod) => Math.abs(rod - z) >= apart);
  const wrong = (['boltLow', 'boltHigh'] as const).filter((key) => !spans(v[key]));
  if (wrong.length > 0)
    return wrong.map((key) =>
      problem(
        'bolt-at-rod',
        `fixture.parameters.${key}`,
        words.issues.boltAtRod(v[key], bottom + ends, top - ends, apart, rods),
      ),
    );
  const least = v.boltLow + 2 * head + v.plate;
  return v.boltHigh >= least
    ? []
    : [
        problem(
          'bolts-close',
          'fixture.parameters.boltHigh',
          words.issues.boltsClose(v.boltHigh, least),
        ),
      ];
};
