import { problem, type Issue } from '../core/issue.ts';
import { quantise } from '../core/units.ts';
import { fail, ok, type Result } from '../core/result.ts';
import { flatten, type Approximation } from '../geometry/flatten.ts';
import { polygon, type Loop } from '../geometry/loop.ts';
import { containsPoint, signedArea } from '../geometry/loop-measure.ts';
import type { Vec2 } from '../geometry/vector.ts';
import { text } from '../text/index.ts';
import type { Mesh } from './mesh.ts';
import { stackVolume } from './measure.ts';
import { meshBuilder, type MeshBuilder } from './mesh-builder.ts';
import type { Layer } from './part.ts';
import { isInBox, outlineOf, outlinesMeet, withoutCollinear, type Outline } from './rings.ts';
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

/** A contour of the stack with its polygon, anticlockwise; equal contours of equal role are one. */
interface Ring {
  readonly loop: Loop;
  readonly isHole: boolean;
  readonly points: readonly Vec2[];
  readonly outline: Outline;
  readonly polygon: Loop;
  readonly number: number;
}

interface Wall {
  readonly ring: Ring;
  readonly from: number;
  readonly to: number;
}

/** Levels closer than this are one, mm. */
const LEVEL = 1e-6;

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
  const thin = layers.find((layer) => !(layer.to - layer.from > LEVEL));
  if (layers.length === 0 || thin !== undefined)
    return fail(
      problem('layer-without-height', '', text.model.layerWithoutHeight(thin?.from, thin?.to)),
    );

  const { holes } = wanted;
  const chord = fineChord(layers, wanted);
  const levels = levelsOf(layers);
  const snap = (z: number): number => levels.find((level) => Math.abs(level - z) <= LEVEL) ?? z;
  const rings: Ring[] = [];
  const ringOf = (loop: Loop, isHole: boolean): Ring => {
    const points = anticlockwiseRing(loop, chord, isHole ? holes : 'inscribed');
    const known = rings.find((one) => one.isHole === isHole && areSame(one.points, points));
    if (known !== undefined) return known;
    const outline = outlineOf(points);
    const number = rings.length;
    const ring = { loop, isHole, points, outline, polygon: polygon(points), number };
    rings.push(ring);
    return ring;
  };
  const sheets = layers.map(({ profile, ...layer }): Sheet => {
    const [from, to] = [snap(layer.from), snap(layer.to)];
    return [
      { ring: ringOf(profile.outer, false), from, to },
      ...profile.holes.map((hole) => ({ ring: ringOf(hole, true), from, to })),
    ];
  });
  const clashes = clashesOf(sheets);
  if (clashes.length > 0) return fail(...clashes);

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
  const issues = levels.flatMap((z) => capLevel(z, sheets, faces, builder));
  return issues.length > 0 ? fail(...issues) : ok(builder.mesh());
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

const anticlockwiseRing = (loop: Loop, chord: number, how: Approximation): Vec2[] => {
  const onGrid = flatten(loop, chord, how).map(([x, y]): Vec2 => [quantise(x), quantise(y)]);
  const points = withoutCollinear(onGrid);
  return signedArea(loop) < 0 ? points.reverse() : points;
};

const areSame = (one: readonly Vec2[], other: readonly Vec2[]): boolean =>
  one.length === other.length &&
  one.every(([x, y], i) => x === other[i]?.[0] && y === other[i]?.[1]);

const levelsOf = (layers: readonly Layer[]): number[] => {
  const all = layers.flatMap(({ from, to }) => [from, to]).sort((a, b) => a - b);
  return all.filter((z, i) => i === 0 || z - (all[i - 1] ?? z) > LEVEL);
};

/** The contours of one layer, the outer one first. */
type Sheet = readonly Wall[];

/** Whether material of the sheet lies just inside the ring (and outside the rings within it). */
const fills = (sheet: Sheet, ring: Ring): boolean => {
  const within = ({ ring: other }: Wall): boolean => other === ring || encloses(other, ring);
  return (
    sheet.some((wall) => !wall.ring.isHole && within(wall)) &&
    !sheet.some((wall) => wall.ring.isHole && within(wall))
  );
};

const encloses = (outer: Ring, inner: Ring): boolean => {
  const p = inner.points[0];
  return p !== undefined && isInBox(outer.outline, p) && containsPoint(outer.polygon, p);
};

/** Layers that share a height and also cross, touch or lie within each other's material. */
const clashesOf = (sheets: readonly Sheet[]): Issue[] =>
  sheets.flatMap((one, i) =>
    sheets.slice(i + 1).flatMap((other): Issue[] => {
      const [a, b] = [one[0], other[0]];
      if (a === undefined || b === undefined) return [];
      const from = Math.max(a.from, b.from);
      if (Math.min(a.to, b.to) <= from) return [];
      const meet = one.some((p) => other.some((q) => outlinesMeet(p.ring.outline, q.ring.outline)));
      if (!meet && !fills(one, b.ring) && !fills(other, a.ring)) return [];
      return [
        problem(
          'layers-overlap',
          '',
          text.model.layersOverlap(from, nameOf(a.ring), nameOf(b.ring)),
        ),
      ];
    }),
  );

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

/** Adds the faces at level z; returns what makes that impossible. */
const capLevel = (
  z: number,
  sheets: readonly Sheet[],
  faces: Faces,
  builder: MeshBuilder,
): Issue[] => {
  const below = sheets.filter((sheet) => sheet[0]?.to === z);
  const above = sheets.filter((sheet) => sheet[0]?.from === z);
  const rings = [...new Set([...below, ...above].flat().map((wall) => wall.ring))];
  for (const [i, one] of rings.entries())
    for (const other of rings.slice(i + 1))
      if (outlinesMeet(one.outline, other.outline))
        return [problem('layers-touch', '', text.model.layersTouch(z, nameOf(one), nameOf(other)))];
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
  return [];
};

const nameOf = ({ loop, isHole }: Ring): string =>
  loop.kind === 'circle'
    ? text.model.circleNamed(2 * loop.radius, loop.centre[0], loop.centre[1], isHole)
    : text.model.contourNamed(loop.vertices[0]?.x ?? 0, loop.vertices[0]?.y ?? 0, isHole);
