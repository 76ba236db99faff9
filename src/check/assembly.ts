import { all, chain, fail, ok, type Result } from '../core/result.ts';
import { problem } from '../core/issue.ts';
import type { Part, Placement } from '../model/part.ts';
import { text } from '../text/index.ts';
import type { Body, Motion, Solid } from './distance/index.ts';
import { CHECK_CHORD } from './chord.ts';
import type { Formed, Workshop } from './workshop.ts';

/** Every part by its id as prisms, made once. */
export type PartForms = ReadonlyMap<string, Formed>;

export const partForms = (parts: readonly Part[], workshop: Workshop): Result<PartForms> =>
  chain(
    all(
      parts.map((part) =>
        chain(workshop.formed(part), (made) => ok<[string, Formed]>([part.id, made])),
      ),
    ),
    (entries) => ok(new Map(entries)),
  );

/**
 * One body of several placements that move as one. A placement whose part is missing fails: no
 * check passes because something is not there.
 */
export const bodyOf = (
  name: string,
  placements: readonly Placement[],
  forms: PartForms,
  motion?: Motion,
): Result<Body> => {
  const solids = placements.map(({ part, name: placement, frame }): Result<Solid> => {
    const formed = forms.get(part);
    return formed
      ? ok(formed.at(frame))
      : fail(problem('part-missing', part, text.check.assembly.partMissing(placement, part)));
  });
  return chain(all(solids), (list) =>
    ok({ name, solids: list, chordError: CHECK_CHORD, ...(motion ? { motion } : {}) }),
  );
};
