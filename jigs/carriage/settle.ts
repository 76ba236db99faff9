import {
  compose,
  degrees,
  flatten,
  place,
  radians,
  root,
  shift,
  type Frame,
  type Loop,
  type Part,
  type Vec2,
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

/** Fine enough that a chord is far below what is measured, mm. */
const CHORD = 1e-5;
const STEEPEST = 40;
const SAME = 1e-6;

const cornersOf = (loop: Loop): Vec2[] =>
  loop.kind === 'circle' ? flatten(loop, CHORD) : loop.vertices.map(({ x, y }): Vec2 => [x, y]);

/** Points of a part's outlines at both ends of its layers, placed. */
const pointsOf = (part: Part, frame: Frame): Vec3[] =>
  part.layers.flatMap(({ profile, from, to }) =>
    cornersOf(profile.outer).flatMap(([x, y]) => [
      place(frame, [x, y, from]),
      place(frame, [x, y, to]),
    ]),
  );

const lowest = (points: readonly Vec3[], tilt: number): number => {
  const [c, s] = [Math.cos(radians(tilt)), Math.sin(radians(tilt))];
  return points.reduce((low, [, y, z]) => Math.min(low, z * c + y * s), Infinity);
};

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
  const found = (name: string): Vec3[] | undefined => {
    const item = items.find((one) => one.name === name);
    const part = parts.find(({ id }) => id === item?.part);
    if (!item || !part) return undefined;
    const at = item.group === 'heel' ? compose(heelFrame(setting), item.frame) : item.frame;
    return pointsOf(part, at);
  };
  const [foot, heel] = [found('foot-bar'), found('heel-screw')];
  const upright = found(c.l.plates ? 'upright' : 'upright-angle');
  if (!foot || !heel || !upright) return undefined;
  const step = (tilt: number): number => lowest(heel, tilt) - lowest(foot, tilt);
  if (step(-STEEPEST) > 0 || step(STEEPEST) < 0) return undefined;
  const tilt = root(step, -STEEPEST, STEEPEST);
  const [cos, sin] = [Math.cos(radians(tilt)), Math.sin(radians(tilt))];
  const turned: Frame = { origin: [0, 0, 0], x: [1, 0, 0], y: [0, cos, sin], z: [0, -sin, cos] };
  const nearest = Math.min(...foot.map((p) => place(turned, p)[1]));
  const frame = shift(turned, [0, fenceRear - nearest, -lowest(foot, tilt)]);
  const front = Math.min(...upright.map(([, y]) => y));
  const face = upright.filter(([, y]) => y - front < SAME);
  const heights = face.map(([, , z]) => z);
  const [low, high] = [Math.min(...heights), Math.max(...heights)];
  const at = (z: number): Vec3 => place(frame, face.find((p) => p[2] === z) ?? [0, front, z]);
  const [below, above] = [at(low), at(high)];
  const middle = (low + high) / 2;
  return {
    frame,
    tilt,
    upright: degrees(Math.atan2(below[1] - above[1], above[2] - below[2])),
    front,
    top: Math.min(...heights.filter((z) => z > middle)),
  };
};
