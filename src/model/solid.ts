import { chain, ok, type Result } from '../core/result.ts';
import { flatten, type Approximation } from '../geometry/flatten.ts';
import { polygon, type Loop } from '../geometry/loop.ts';
import { signedArea } from '../geometry/loop-measure.ts';
import type { Vec2 } from '../geometry/vector.ts';
import type { Mesh } from './mesh.ts';
import { stackVolume } from './measure.ts';
import { meshBuilder, type MeshBuilder } from './mesh-builder.ts';
import type { Layer } from './part.ts';
import { encloses, fills, ringsAt, stackOf, type Ring, type Sheet } from './stack.ts';
import { triangulate } from './triangulate.ts';

export interface MeshOptions {
  /** Greatest departure of the mesh from its curves, mm. */
  readonly chord: number;
  /**
   * Holes are `circumscribed` by default: the largest circle inside the polygon is then the
   * nominal one, because an inscribed polygon would make every printed hole smaller.
   */
  readonly holes: Approximation;
  /**
   * Greatest share by which the volume may differ from the closed form: curves are divided more
   * finely until it holds, which a small round part needs more than a large plate.
   */
  readonly volumeShare: number;
}

export const DEFAULT_MESH: MeshOptions = {
  chord: 0.02,
  holes: 'circumscribed',
  volumeShare: 5e-4,
};

/**
 * The closed mesh of a stack of flat profiles: a wall along every contour of every layer, and at
 * every level the faces where material ends below or begins above, each triangulated once. All
 * vertices are shared, faces turn outward, and no 3D boolean is needed. Fails with an Issue when
 * contours of neighbouring layers cross or touch, or when one contour bounds material on one
 * side below and on the other above: such a solid has edges shared by four faces.
 */
export const meshOf = (
  layers: readonly Layer[],
  options: Partial<MeshOptions> = {},
): Result<Mesh> => {
  const wanted = { ...DEFAULT_MESH, ...options };
  return chain(stackOf(layers, fineChord(layers, wanted), wanted.holes), ({ sheets, levels }) => {
    const builder = meshBuilder();
    for (const { ring, from, to } of sheets.flat()) {
      ring.points.forEach((p, i) => {
        const q = ring.points[(i + 1) % ring.points.length] ?? p;
        const [a, b] = ring.isHole ? [q, p] : [p, q];
        builder.triangle([a, from], [b, from], [b, to]);
        builder.triangle([a, from], [b, to], [a, to]);
      });
    }
    const faces = createFaces();
    for (const z of levels) capLevel(z, sheets, faces, builder);
    return ok(builder.mesh());
  });
};

/** The asked chord error, halved until the volume is near enough to the closed form. */
const fineChord = (
  layers: readonly Layer[],
  { chord, holes, volumeShare }: MeshOptions,
): number => {
  if (volumeShare === Infinity) return chord;
  const exact = stackVolume(layers);
  const areaOf = (loop: Loop, error: number, how: Approximation): number =>
    Math.abs(signedArea(polygon(flatten(loop, error, how))));
  const volume = (error: number): number =>
    layers.reduce((sum, { profile, from, to }) => {
      const inner = profile.holes.map((hole) => areaOf(hole, error, holes));
      const area = areaOf(profile.outer, error, 'inscribed') - inner.reduce((a, b) => a + b, 0);
      return sum + area * (to - from);
    }, 0);
  let error = chord;
  // Areas err in proportion to the chord error, so that few halvings are ever needed.
  for (let i = 0; i < 8 && Math.abs(volume(error) - exact) > volumeShare * exact; i += 1)
    error /= 2;
  return error;
};

type Triangles = readonly (readonly [Vec2, Vec2, Vec2])[];

/** The triangles, anticlockwise, of what lies within a ring and outside the rings in it. */
type Faces = (ring: Ring, holes: readonly Ring[]) => Triangles;

/** Faces of which each is triangulated once: the two of a plate are one and the same. */
const createFaces = (): Faces => {
  const known = new Map<string, Triangles>();
  return (ring, holes) => {
    const key = [ring, ...holes].map(({ number }) => number).join(' ');
    const found = known.get(key);
    if (found) return found;
    const contours = [ring.points, ...holes.map(({ points }) => [...points].reverse())];
    const flat = contours.flat();
    const at = (i: number): Vec2 => flat[i] ?? [NaN, NaN];
    const made = triangulate(contours).map(([a, b, c]) => [at(a), at(b), at(c)] as const);
    known.set(key, made);
    return made;
  };
};

/** Adds the faces at level z. */
const capLevel = (
  z: number,
  sheets: readonly Sheet[],
  faces: Faces,
  builder: MeshBuilder,
): void => {
  const { below, above, rings } = ringsAt(z, sheets);
  const parents = (ring: Ring): Ring[] => rings.filter((r) => r !== ring && encloses(r, ring));
  const depth = new Map(rings.map((ring) => [ring, parents(ring).length]));
  for (const ring of rings) {
    const up = below.some((sheet) => fills(sheet, ring));
    const down = above.some((sheet) => fills(sheet, ring));
    if (up === down) continue;
    const children = rings.filter(
      (r) => r !== ring && encloses(ring, r) && depth.get(r) === (depth.get(ring) ?? 0) + 1,
    );
    for (const [p, q, r] of faces(ring, children)) {
      if (up) builder.triangle([p, z], [q, z], [r, z]);
      else builder.triangle([p, z], [r, z], [q, z]);
    }
  }
};
