import { bladeMesh } from '../blade/blade-mesh.ts';
import { wantedCut } from '../blade/cut.ts';
import type { Blade } from '../blade/schema.ts';
import { shapeOf } from '../blade/shape.ts';
import { createWorkshop, PICTURE_CHORD, type Workshop } from '../check/workshop.ts';
import { all, chain, ok, type Result } from '../core/result.ts';
import type { Design } from '../document/schema.ts';
import type { Fixture, Setting } from '../family/family.ts';
import type { Mesh } from '../geometry/mesh.ts';
import type { Part } from '../model/part.ts';
import type { Scene, SceneBlade, SceneMesh, ScenePart } from './protocol.ts';

const plain = (mesh: Mesh): SceneMesh => ({
  vertices: new Float32Array(mesh.vertices),
  triangles: mesh.triangles,
});

const partOf = (part: Part, workshop: Workshop): Result<ScenePart> =>
  chain(workshop.pictured(part), (mesh) =>
    ok({ id: part.id, name: part.name, kind: part.kind, mesh: plain(mesh) }),
  );

/** The blade as it is wanted; what one pass leaves is in the numbers. */
const bladeOf = (blade: Blade): SceneBlade => {
  const shape = shapeOf(blade);
  const cut = (side: 'left' | 'right') => wantedCut(shape, side, blade.edge.wanted);
  const [left, right] = [cut('left'), cut('right')];
  const sides = { ...(left ? { left: [left] } : {}), ...(right ? { right: [right] } : {}) };
  const mesh = bladeMesh(blade, { chord: PICTURE_CHORD, sides });
  return { name: blade.name, blade: plain(mesh.blade), tang: plain(mesh.tang) };
};

const standing = (design: Design, fixture: Fixture, { id }: Setting) => ({
  belt: fixture.section(id).lines.find(({ role }) => role === 'belt')?.points ?? [],
  placements: fixture
    .place(id)
    .map(({ part, name, frame, carrier }) => ({ part, name, frame, carrier })),
  poses: Object.fromEntries(
    design.blades.map(({ name }) => [
      name,
      fixture.poses(id, name).map(({ u, frame }) => ({ u, frame })),
    ]),
  ),
});

/** Parts, blades and where everything stands at every setting, seat frame. */
export const sceneOf = (
  design: Design,
  fixture: Fixture,
  workshop: Workshop = createWorkshop(),
): Result<Scene> =>
  chain(fixture.parts(), (parts) =>
    chain(all(parts.map((part) => partOf(part, workshop))), (meshes) =>
      ok({
        parts: meshes,
        blades: design.blades.map((blade) =>
          workshop.keep('picture of a blade', JSON.stringify(blade), () => bladeOf(blade)),
        ),
        settings: Object.fromEntries(
          fixture.settings.map((setting) => [setting.id, standing(design, fixture, setting)]),
        ),
        joined: fixture.joined ?? 'z',
        belt: { width: design.grinder.belt.width },
      }),
    ),
  );
