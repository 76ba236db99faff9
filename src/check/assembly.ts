import { all, chain, fail, ok, type Result } from '../core/result.ts';
import { problem } from '../core/issue.ts';
import type { Part, Placement } from '../model/part.ts';
import { text } from '../text/index.ts';
import type { Body, Motion, Solid } from './distance/index.ts';
import { CHECK_CHORD, type Meshed, type Workshop } from './workshop.ts';

/** The mesh of every part by its id, made once. */
export type PartMeshes = ReadonlyMap<string, Meshed>;

export const partMeshes = (parts: readonly Part[], workshop: Workshop): Result<PartMeshes> =>
  chain(
    all(
      parts.map((part) =>
        chain(workshop.meshed(part), (made) => ok<[string, Meshed]>([part.id, made])),
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
  meshes: PartMeshes,
  motion?: Motion,
): Result<Body> => {
  const solids = placements.map(({ part, name: placement, frame }): Result<Solid> => {
    const meshed = meshes.get(part);
    return meshed
      ? meshed.at(placement, frame)
      : fail(problem('part-missing', part, text.check.assembly.partMissing(placement, part)));
  });
  return chain(all(solids), (list) =>
    ok({ name, solids: list, chordError: CHECK_CHORD, ...(motion ? { motion } : {}) }),
  );
};
