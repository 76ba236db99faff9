import { capScrew, countersunkScrew } from './screws.ts';
import { diameterOf, type Sized, type Thread, type ThreadTable } from './threads.ts';

/** DIN 974-1 series 1 counterbores for ISO 4762, mm (from memory; all clear the knurled head). */
const COUNTERBORE: ThreadTable<number> = {
  M3: 6.5,
  M4: 8,
  M5: 10,
  M6: 11,
  M8: 15,
  M10: 18,
  M12: 20,
};

/** What a cap screw's head sinks by below the face, mm (from memory: DIN 974-1, small sizes). */
const SUNK = 0.4;

/** The counterbore that takes a cap screw's head, knurled ones too, just below the face. */
export const counterbore = (thread: Thread): Sized & { readonly depth: number } => ({
  diameter: COUNTERBORE[thread],
  depth: capScrew(thread).headHeight + SUNK,
  standard: 'DIN 974-1',
});

/** The 90 degree countersink of a countersunk screw, sharp rim. */
export const countersink = (thread: Thread): Sized & { readonly angle: number } => ({
  diameter: countersunkScrew(thread).headDiameter,
  angle: 90,
  standard: 'ISO 10642',
});

/** Least length of engaged thread in steel, in diameters (common practice, no source). */
const ENGAGED = 0.8;

/** Least length of a thread that is engaged in steel, mm. */
export const threadInSteel = (thread: Thread): number => ENGAGED * diameterOf(thread);
