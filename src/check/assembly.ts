import { all, chain, fail, ok, type Result } from '../core/result.ts';
import { problem } from '../core/issue.ts';
import type { Part, Placement } from '../model/part.ts';
import type { Mesh } from '../model/mesh.ts';
import { meshOf } from '../model/solid.ts';
import { text } from '../text/index.ts';
import { prepare, type Body, type Motion, type Solid } from './distance/index.ts';

/** Chord error of the part meshes that are checked, mm; it is taken off every gap. */
export const CHECK_CHORD = 0.005;

/** The mesh of every part, made once. */
export type PartMeshes = ReadonlyMap<string, Mesh>;

export const partMeshes = (parts: readonly Part[]): Result<PartMeshes> =>
  chain(
    all(
      parts.map((part) =>
        chain(meshOf(part.layers, { chord: CHECK_CHORD, volumeShare: Infinity }), (mesh) =>
          ok<[string, Mesh]>([part.id, mesh]),
        ),
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
    const mesh = meshes.get(part);
    return mesh
      ? prepare(placement, { kind: 'mesh', mesh, frame })
      : fail(problem('part-missing', part, text.check.assembly.partMissing(placement, part)));
  });
  return chain(all(solids), (list) =>
    ok({ name, solids: list, chordError: CHECK_CHORD, ...(motion ? { motion } : {}) }),
  );
};
