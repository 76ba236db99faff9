import { localise, place, type Frame } from '../geometry/frame.ts';
import { dot3, scale2, scale3, sub3, type Vec2, type Vec3 } from '../geometry/vector.ts';
import { fromSection, halfSpace, sliceByPlane } from '../model/cut.ts';
import type { Part, Placement } from '../model/part.ts';
import { withoutCollinear } from '../model/rings.ts';
import { meshOf } from '../model/solid.ts';
import { bodiesOf, upOf, type Body } from './bodies.ts';
import { around, union } from './box.ts';
import { hatch, hatchings } from './hatch.ts';
import { polyline } from './items.ts';
import { ABOVE_SIDE, projected, SIDE, type Eye } from './eye.ts';
import { scene, type Face2, type Scene } from './scene.ts';

/** Which way a cutting plane stands: across the stroke, or along it. */
export type Across = 'x' | 'y';

/** An upright plane through the middle of a placed part. */
export interface CutPlane {
  /** Name of the placement. */
  readonly through: string;
  /** The axis that the plane is square to. */
  readonly across: Across;
}

/** A plane in place: its letter, where it stands along its axis, and how one looks at it. */
export interface Cut {
  readonly letter: string;
  readonly across: Across;
  readonly at: number;
  readonly eye: Eye;
}

/** From the belt (-y): the stroke runs to the right, z up. */
const FRONT: Eye = { right: [1, 0, 0], up: [0, 0, 1], towards: [0, -1, 0] };

const EYES: Readonly<Record<Across, Eye>> = { x: SIDE, y: FRONT };

/** Letters of cutting planes in order. */
const LETTERS = 'ABC';

const indexOf = (across: Across): 0 | 1 => (across === 'x' ? 0 : 1);

/** The planes through placements that there are; of others nothing can be drawn. */
export const cutsOf = (
  planes: readonly CutPlane[],
  parts: readonly Part[],
  placements: readonly Placement[],
): Cut[] =>
  planes
    .flatMap(({ through, across }) => {
      const bodies = bodiesOf(
        parts,
        placements.filter(({ name }) => name === through),
      );
      const i = indexOf(across);
      const [low, high] = [
        Math.min(...bodies.map(({ min }) => min[i])),
        Math.max(...bodies.map(({ max }) => max[i])),
      ];
      return bodies.length > 0 ? [{ across, at: (low + high) / 2, eye: EYES[across] }] : [];
    })
    .map((cut, i) => ({ ...cut, letter: LETTERS[i] ?? '' }));

const EPS = 1e-6;

/** Whether a part is turned or round all along: a shaft, screw, pin, nut or washer. */
const isTurned = (part: Part): boolean =>
  part.kind === 'hardware' ||
  (part.kind === 'stock' && part.layers.every(({ profile }) => profile.outer.kind === 'circle'));

/** Shafts and fasteners are not cut along their axis (ISO 128-3); what runs across is. */
const isUncut = (part: Part, body: Body, eye: Eye): boolean =>
  isTurned(part) && Math.abs(dot3(upOf(body), eye.towards)) < EPS;

/** How far a plane may run beside the axis of what is not cut along it, as a share of its width. */
const BESIDE = 0.25;

/** Whether the plane runs along the middle of bodies: beside it they would be drawn too wide. */
const isMiddle = (bodies: readonly Body[], i: 0 | 1, at: number): boolean => {
  const low = Math.min(...bodies.map(({ min }) => min[i]));
  const high = Math.max(...bodies.map(({ max }) => max[i]));
  return Math.abs((low + high) / 2 - at) <= BESIDE * (high - low);
};

/** Rings on the paper of what the plane cuts out of a placed part, full size. */
const ringsOf = (part: Part, frame: Frame, { across, at, eye }: Cut): Vec2[][] => {
  // A part whose solid cannot be made fails the checks before anything is drawn.
  const mesh = meshOf(part.layers);
  if (!mesh.ok) return [];
  const through: Vec3 = across === 'x' ? [at, 0, 0] : [0, at, 0];
  const origin = localise(frame, [0, 0, 0]);
  const [point, tip] = [localise(frame, through), localise(frame, eye.towards)];
  const section = sliceByPlane(mesh.value, halfSpace(point, sub3(tip, origin)));
  return section.loops.map((loop) =>
    withoutCollinear(loop).map((p) => projected(place(frame, fromSection(section, p)), eye, 1)),
  );
};

/**
 * The section of an assembly by an upright plane (ISO 128-3): outlines and hatching of what is
 * cut, shafts and fasteners that lie in the plane uncut over it. What lies behind is left out.
 * Drawn at any scale.
 */
export const cutView = (
  parts: readonly Part[],
  placements: readonly Placement[],
  cut: Cut,
): ((k: number) => Scene) => {
  const known = new Map(parts.map((part) => [part.id, part]));
  const i = indexOf(cut.across);
  const crossing = placements.flatMap((placement) => {
    const part = known.get(placement.part);
    const bodies = bodiesOf(parts, [placement]);
    const isCrossed = bodies.some(({ min, max }) => min[i] < cut.at - EPS && max[i] > cut.at + EPS);
    return part && isCrossed ? [{ part, placement, bodies }] : [];
  });
  const whole = crossing.filter(({ part, bodies }) =>
    bodies.every((body) => isUncut(part, body, cut.eye)),
  );
  const shown = whole.filter(({ bodies }) => isMiddle(bodies, i, cut.at));
  const areas = crossing
    .filter((one) => !whole.includes(one))
    .map(({ part, placement }) => ({
      owner: placement.name,
      rings: ringsOf(part, placement.frame, cut),
    }))
    .filter(({ rings }) => rings.length > 0);
  const chosen = hatchings(areas.map(({ rings }) => rings));
  return (k) => {
    const fasteners = scene(
      shown.flatMap(({ bodies }) => bodies),
      cut.eye,
      k,
    );
    const faces = areas.map(({ owner, rings }): Face2 => {
      const drawn = rings.map((ring) => ring.map((p) => scale2(p, k)));
      return { owner, rings: drawn, box: around(drawn.flat()) };
    });
    const items = faces.flatMap(({ rings }, n) => [
      ...hatch(rings, chosen[n]),
      ...rings.map((ring) => polyline([...ring, ring[0] ?? [0, 0]], 'visible')),
    ]);
    return {
      items: [...items, ...fasteners.items],
      faces: [...faces, ...fasteners.faces],
      box: faces.reduce((box, face) => union(box, face.box), fasteners.box),
    };
  };
};

/** Where a cut runs in the view from above, and the way one looks, on the paper. */
export const cutLine = ({
  across,
  at,
  eye,
}: Cut): { readonly level: number; readonly look: Vec2 } => {
  const point: Vec3 = across === 'x' ? [at, 0, 0] : [0, at, 0];
  const [x, y] = projected(point, ABOVE_SIDE, 1);
  const look = projected(scale3(eye.towards, -1), ABOVE_SIDE, 1);
  return { level: across === 'x' ? y : x, look };
};
