import type { Issue } from '../core/issue.ts';
import { fail, ok, type Result } from '../core/result.ts';
import { cos } from '../core/trigonometry.ts';
import { text } from '../text/index.ts';
import { nut } from './nuts.ts';
import { capScrew, countersunkScrew, type HeadedScrew } from './screws.ts';
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

/** A hexagonal pocket for a nut: across flats and corners with `play` mm added across flats. */
export const nutTrap = (
  thread: Thread,
  play: number,
): { readonly acrossFlats: number; readonly acrossCorners: number } => {
  const acrossFlats = nut(thread).acrossFlats + play;
  return { acrossFlats, acrossCorners: acrossFlats / cos(Math.PI / 6) };
};

/** Least length of engaged thread in diameters, by what it is cut in (common practice, no source). */
export const ENGAGEMENT = { steel: 0.8, aluminium: 1.2, plastic: 2 } as const;

/** Least length of a thread that is engaged in steel, mm. */
export const threadInSteel = (thread: Thread): number => ENGAGEMENT.steel * diameterOf(thread);

/**
 * The shortest listed screw through `grip` mm (washers included) that finds at least `least` and
 * at most `most` mm of thread behind it.
 */
export const screwForGrip = (
  screw: HeadedScrew,
  grip: number,
  least: number,
  most = Infinity,
): Result<number> => {
  const found = screw.lengths.find(
    (length) => length >= grip + least - 1e-9 && length <= grip + most + 1e-9,
  );
  if (found !== undefined) return ok(found);
  const words = text.model.hardware.noScrew(
    `${screw.standard} ${screw.thread}`,
    grip + least,
    grip + most,
    screw.lengths,
  );
  const issue: Issue = { code: 'no-screw-length', severity: 'error', path: '', ...words };
  return fail(issue);
};
