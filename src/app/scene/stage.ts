import {
  AmbientLight,
  Box3,
  BufferGeometry,
  DirectionalLight,
  Group,
  Line,
  LineBasicMaterial,
  OrthographicCamera,
  Plane,
  Points,
  PointsMaterial,
  Scene as World,
  Vector3,
  WebGLRenderer,
} from 'three';
import { OrbitControls } from 'three/addons/controls/OrbitControls.js';
import type { Vec3 } from '../../geometry/vector.ts';
import type { Scene } from '../../worker/protocol.ts';
import { paints } from './paints.ts';
import { bodiesOf, type Body } from './bodies.ts';
import type { Look } from './look.ts';

export type Side = 'corner' | 'front' | 'side' | 'top';

/** A picture of the solids; draws only when something changed. */
export interface Stage {
  readonly show: (look: Look) => void;
  readonly view: (from: Side) => void;
  readonly zoom: (by: number) => void;
  readonly resize: (width: number, height: number) => void;
  readonly dispose: () => void;
}

const FROM: Readonly<Record<Side, Vec3>> = {
  corner: [0.75, 1, 0.6],
  front: [0, 1, 0],
  side: [1, 0, 0],
  top: [0, 0.001, 1],
};

const vector = ([x, y, z]: Vec3): Vector3 => new Vector3(x, y, z);

/** Size of the dots at two nearest points, px: most gaps are too short to be seen as lines. */
const DOT = 10;

/** Two nearest points and the line between them, seen through everything. */
const nearest = (points: readonly [Vec3, Vec3], colour: string): Group => {
  const geometry = new BufferGeometry().setFromPoints(points.map(vector));
  const look = { color: colour, depthTest: false, transparent: true };
  const group = new Group();
  group.add(
    new Line(geometry, new LineBasicMaterial(look)),
    new Points(geometry, new PointsMaterial({ ...look, size: DOT, sizeAttenuation: false })),
  );
  for (const child of group.children) child.renderOrder = 2;
  return group;
};

/** Starts drawing into a canvas; throws where the browser has no WebGL. */
export const createStage = (canvas: HTMLCanvasElement, scene: Scene): Stage => {
  const renderer = new WebGLRenderer({ canvas, antialias: true, alpha: true });
  renderer.setPixelRatio(window.devicePixelRatio);
  const colours = paints(canvas);
  const camera = new OrthographicCamera();
  camera.up.set(0, 0, 1);
  const controls = new OrbitControls(camera, canvas);
  // The wheel scrolls the page; zooming has its buttons and two fingers.
  controls.enableZoom = false;
  const world = new World();
  world.add(new AmbientLight('white', 1.9));
  const sun = new DirectionalLight('white', 1.6);
  sun.position.set(0.6, 1, 1.5);
  world.add(sun);
  const things = new Group();
  world.add(things);
  const knife = new Plane(new Vector3(1, 0, 0), 0);
  const bodies = bodiesOf(scene, colours, [knife]);
  let size = 1;
  let shape = 1;
  let centre = new Vector3();
  let fitted = false;
  let spread = 0;

  const draw = (): void => renderer.render(world, camera);
  controls.addEventListener('change', draw);

  const frame = (): void => {
    const half = size / 2;
    camera.left = -half * Math.max(1, shape);
    camera.right = half * Math.max(1, shape);
    camera.top = half / Math.min(1, shape);
    camera.bottom = -half / Math.min(1, shape);
    camera.near = -10 * size;
    camera.far = 10 * size;
    camera.updateProjectionMatrix();
    draw();
  };

  const view = (from: Side): void => {
    camera.position.copy(vector(FROM[from]).normalize().multiplyScalar(size).add(centre));
    controls.target.copy(centre);
    controls.update();
    draw();
  };

  /** Takes in what has been moved apart, seen from where it was seen before. */
  const refit = (): void => {
    const before = centre;
    const box = new Box3().setFromObject(things);
    centre = box.getCenter(new Vector3());
    const extent = box.getSize(new Vector3());
    size = Math.max(1, extent.length() * 0.66, extent.z * 1.1);
    const moved = centre.clone().sub(before);
    camera.position.add(moved);
    controls.target.add(moved);
    controls.update();
    frame();
  };

  return {
    show: (look) => {
      things.clear();
      const shown: Body[] = bodies(look);
      for (const body of shown) if (!look.hidden.includes(body.name)) things.add(body.object);
      if (look.points) things.add(nearest(look.points, colours.bad));
      const box = new Box3().setFromObject(things);
      knife.constant = look.cut > 0 ? -(box.min.x + look.cut * (box.max.x - box.min.x)) : 1e9;
      renderer.localClippingEnabled = look.cut > 0;
      if (shown.length > 0 && (!fitted || look.apart !== spread)) refit();
      if (!fitted && shown.length > 0) view('corner');
      fitted ||= shown.length > 0;
      spread = look.apart;
      draw();
    },
    view,
    zoom: (by) => {
      camera.zoom = Math.min(20, Math.max(0.3, camera.zoom * by));
      camera.updateProjectionMatrix();
      draw();
    },
    resize: (width, height) => {
      renderer.setSize(width, height, false);
      shape = width / height;
      frame();
    },
    dispose: () => {
      controls.dispose();
      renderer.dispose();
    },
  };
};
