import {
  atan2,
  compose,
  cos,
  degrees,
  dot3,
  type Frame,
  type Part,
  place,
  radians,
  root,
  shift,
  sin,
  type Vec3,
} from '../../src/family/index.ts';
import type { Context } from './context.ts';
import type { Item } from './place/item.ts';
import { heelFrame, type PlanSetting } from './place/stand.ts';

/** The carriage as its finished parts stand on base and fence. */
export interface Settled {
  readonly frame: Frame;
  /** Of the carriage on the base, degrees. */
  readonly tilt: number;
  /** Of the upright's face against square to the base, degrees: tilt and squareness together. */
  readonly upright: number;
  /** The upright's face and its top between the ears, level carriage. */
  readonly front: number;
  readonly top: number;
}

const STEEPEST = 40;
const SAME = 1e-6;

/** The outlines of a part at both ends of its layers, placed: corners, and whole circles. */
interface Outlines {
  readonly corners: readonly Vec3[];
  readonly circles: readonly { readonly at: Frame; readonly radius: number }[];
}

const outlinesOf = (part: Part, frame: Frame): Outlines => {
  const ends = part.layers.flatMap(({ profile: { outer }, from, to }) =>
    [from, to].map((z) => ({ outer, z })),
  );
  return {
    corners: ends.flatMap(({ outer, z }) =>
      outer.kind === 'path' ? outer.vertices.map(({ x, y }) => place(frame, [x, y, z])) : [],
    ),
    circles: ends.flatMap(({ outer, z }) =>
      outer.kind === 'circle'
        ? [{ at: { ...frame, origin: place(frame, [...outer.centre, z]) }, radius: outer.radius }]
        : [],
    ),
  };
};

/** The least place of outlines along a direction; of a circle exactly, as its support function. */
const least = ({ corners, circles }: Outlines, along: Vec3): number => {
  const ends = corners.map((p) => dot3(along, p));
  const rims = circles.map(
    ({ at, radius }) =>
      dot3(along, at.origin) - radius * Math.hypot(dot3(along, at.x), dot3(along, at.y)),
  );
  return Math.min(...ends, ...rims);
};

/** What comes lowest on a base under a carriage that is tilted by so much. */
const lowest = (outlines: Outlines, tilt: number): number =>
  least(outlines, [0, sin(radians(tilt)), cos(radians(tilt))]);

/**
 * Settles the finished carriage at a setting: turns it until the lowest points of foot bar and
 * heel screw are level, sets them on the base, and moves it up to the rear face of the fence part. No
 * formula of the solver enters. None when a part is missing or no tilt levels them.
 */
export const settleParts = (
  c: Context,
  parts: readonly Part[],
  items: readonly Item[],
  setting: PlanSetting,
  fenceRear: number,
): Settled | undefined => {
  const found = (name: string): Outlines | undefined => {
    const item = items.find((one) => one.name === name);
    const part = parts.find(({ id }) => id === item?.part);
    if (!item || !part) return undefined;
    const at = item.group === 'heel' ? compose(heelFrame(setting), item.frame) : item.frame;
    return outlinesOf(part, at);
  };
  const [foot, heel] = [found('foot-bar'), found('heel-screw')];
  const upright = found(c.l.plates ? 'upright' : 'upright-angle');
  if (!foot || !heel || !upright) return undefined;
  const step = (tilt: number): number => lowest(heel, tilt) - lowest(foot, tilt);
  if (step(-STEEPEST) > 0 || step(STEEPEST) < 0) return undefined;
  const tilt = root(step, -STEEPEST, STEEPEST);
  const [level, rise] = [cos(radians(tilt)), sin(radians(tilt))];
  const axes = { x: [1, 0, 0], y: [0, level, rise], z: [0, -rise, level] } as const;
  const turned: Frame = { origin: [0, 0, 0], ...axes };
  const nearest = least(foot, [0, level, -rise]);
  const frame = shift(turned, [0, fenceRear - nearest, -lowest(foot, tilt)]);
  const front = Math.min(...upright.corners.map(([, y]) => y));
  const face = upright.corners.filter(([, y]) => y - front < SAME);
  const heights = face.map(([, , z]) => z);
  const [low, high] = [Math.min(...heights), Math.max(...heights)];
  const at = (z: number): Vec3 => place(frame, face.find((p) => p[2] === z) ?? [0, front, z]);
  const [below, above] = [at(low), at(high)];
  const middle = (low + high) / 2;
  return {
    frame,
    tilt,
    upright: degrees(atan2(below[1] - above[1], above[2] - below[2])),
    front,
    top: Math.min(...heights.filter((z) => z > middle)),
  };
};
