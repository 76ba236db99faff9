import {
  BufferAttribute,
  BufferGeometry,
  EdgesGeometry,
  Group,
  LineBasicMaterial,
  LineSegments,
  Matrix4,
  Mesh,
  MeshLambertMaterial,
  Vector3,
  type Object3D,
  type Plane,
} from 'three';
import type { Frame } from '../../geometry/frame.ts';
import type { Vec2 } from '../../geometry/vector.ts';
import type { Scene, SceneMesh } from '../../worker/protocol.ts';
import { BELT_NAME, BLADE_NAME } from './names.ts';
import type { Paints } from './paints.ts';
import { ribbon } from './ribbon.ts';
import type { Look } from './look.ts';

/** Something on the bench, by the name under which it can be hidden. */
export interface Body {
  readonly name: string;
  readonly object: Object3D;
}

/** Edges sharper than this are inked, degrees. */
const SHARP = 25;
/** How thick a belt is drawn, mm. */
const BELT_THICK = 1.5;

const matrix = ({ x, y, z, origin }: Frame): Matrix4 =>
  new Matrix4()
    .makeBasis(new Vector3(...x), new Vector3(...y), new Vector3(...z))
    .setPosition(new Vector3(...origin));

const geometryOf = ({ vertices, triangles }: SceneMesh): BufferGeometry => {
  const shared = new BufferGeometry();
  shared.setAttribute('position', new BufferAttribute(vertices, 3));
  shared.setIndex(new BufferAttribute(triangles, 1));
  // Flat faces with sharp edges: every triangle has corners of its own.
  const flat = shared.toNonIndexed();
  flat.computeVertexNormals();
  return flat;
};

/** A solid with its sharp edges in ink. */
const solid = (
  geometry: BufferGeometry,
  colour: string,
  ink: string,
  clippingPlanes: Plane[],
): Group => {
  const group = new Group();
  // Both faces are drawn, so that a cut shows the inside as filled.
  group.add(
    new Mesh(geometry, new MeshLambertMaterial({ color: colour, side: 2, clippingPlanes })),
    new LineSegments(
      new EdgesGeometry(geometry, SHARP),
      new LineBasicMaterial({ color: ink, clippingPlanes }),
    ),
  );
  return group;
};

const beltBody = (
  path: readonly Vec2[],
  { belt }: Scene,
  paints: Paints,
  planes: Plane[],
): Body => ({
  name: BELT_NAME,
  object: solid(ribbon(path, belt.width, BELT_THICK), paints.belt, paints.ink, planes),
});

/** How many times farther parts go along the way they are joined. */
const FAR = 4;

/** Away from the middle of the assembly, each by its own distance from it. */
const spread = (
  objects: readonly Object3D[],
  middles: readonly Vector3[],
  apart: number,
  joined: Scene['joined'],
): void => {
  const middle = middles
    .reduce((sum, m) => sum.add(m), new Vector3())
    .divideScalar(Math.max(1, middles.length));
  objects.forEach((object, i) => {
    const away = middles[i]?.clone().sub(middle) ?? new Vector3();
    // Plates lie on each other: apart means the way they are joined before any other.
    const [x, z] = joined === 'x' ? [FAR, 0.2] : [1, FAR];
    object.position.set(away.x * apart * x, away.y * apart, away.z * apart * z);
  });
};

const middleOf = (geometry: BufferGeometry, frame: Frame): Vector3 => {
  geometry.computeBoundingBox();
  const middle = geometry.boundingBox?.getCenter(new Vector3()) ?? new Vector3();
  return middle.applyMatrix4(matrix(frame));
};

/** From where the blade carries things in the scene, at its first pose, to where it is now. */
const carriedAlong = (
  { blades }: Scene,
  { poses }: Scene['settings'][string],
  now: Frame | undefined,
): Matrix4 => {
  const first = poses[blades[0]?.name ?? '']?.[0]?.frame;
  return first && now ? matrix(now).multiply(matrix(first).invert()) : new Matrix4();
};

/** Prepares every solid once and answers what stands on the bench for a look. */
export const bodiesOf = (
  scene: Scene,
  paints: Paints,
  planes: Plane[],
): ((look: Look) => Body[]) => {
  const colour = {
    plate: paints.fixture,
    print: paints.machine,
    stock: paints.steel,
    hardware: paints.steel,
  };
  const parts = new Map(
    scene.parts.map((part) => [part.id, { part, geometry: geometryOf(part.mesh) }]),
  );
  const blades = new Map(
    scene.blades.map(({ name, blade, tang }) => [name, [geometryOf(blade), geometryOf(tang)]]),
  );
  const belts = new Map(
    Object.entries(scene.settings).map(([id, { belt }]) => [
      id,
      beltBody(belt, scene, paints, planes),
    ]),
  );
  return ({ setting, blade, pose, apart }) => {
    const here = scene.settings[setting];
    if (!here) return [];
    const poses = here.poses[blade] ?? [];
    const at = poses[Math.min(pose, poses.length - 1)];
    const along = carriedAlong(scene, here, at?.frame);
    const middles: Vector3[] = [];
    const placed = here.placements.flatMap(({ part: id, frame, carrier }): Body[] => {
      const found = parts.get(id);
      if (!found) return [];
      const inner = solid(found.geometry, colour[found.part.kind], paints.ink, planes);
      inner.applyMatrix4(matrix(frame));
      if (carrier === 'blade') inner.applyMatrix4(along);
      const outer = new Group();
      outer.add(inner);
      middles.push(middleOf(found.geometry, frame));
      return [{ name: id, object: outer }];
    });
    spread(
      placed.map(({ object }) => object),
      middles,
      apart,
      scene.joined,
    );
    const knife = at
      ? (blades.get(blade) ?? []).map((geometry): Body => {
          const object = solid(geometry, paints.steel, paints.ink, planes);
          object.applyMatrix4(matrix(at.frame));
          return { name: BLADE_NAME, object };
        })
      : [];
    const belt = belts.get(setting);
    return [...(belt ? [belt] : []), ...placed, ...knife];
  };
};
