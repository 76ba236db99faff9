import {
  type BladePose,
  type CheckResult,
  cos,
  type Frame,
  type Motion,
  place,
  radians,
  shift,
  sin,
  type Sweep,
  text,
  type Vec3,
  WORLD,
} from '../../../src/family/index.ts';
import { byKey } from '../later.ts';

/** One movement of the blade at one setting: from pose to pose, or rocked over a nose end. */
export interface Movement {
  /** What it is called where a check fails: pass and side, place along the stroke. */
  readonly label: string;
  readonly setting: string;
  readonly blade: string;
  readonly u: number;
  readonly from: Frame;
  readonly to: Frame;
}

/** A frame turned about a line along y through (x, z = 0) by degrees, +x end upwards. */
const rocked = (f: Frame, x: number, angle: number): Frame => {
  const [s, c] = [sin(radians(angle)), cos(radians(angle))];
  const turn = ([a, b, d]: Vec3): Vec3 => [c * a - s * d, b, s * a + c * d];
  const moved = shift(f, [-x, 0, 0]);
  return shift({ origin: turn(moved.origin), x: turn(f.x), y: turn(f.y), z: turn(f.z) }, [x, 0, 0]);
};

const towards = ({ setting, blade, u }: BladePose, rocks: boolean) => ({
  label: text.family.shared.checks.place(setting, u, rocks),
  setting,
  blade,
  u,
});

/** The stroke as movements between neighbouring poses, then rocked over both ends of the nose. */
export const movementsOf = (
  poses: readonly BladePose[],
  noseHalf: number,
  lift: number,
): Movement[] => {
  const strokes = poses.slice(1).flatMap((to, i): Movement[] => {
    const from = poses[i];
    return from ? [{ ...towards(to, false), from: from.frame, to: to.frame }] : [];
  });
  if (lift === 0) return strokes;
  // At the plunge stop the collar meets the nose; rocking is for the far half of the stroke.
  const ends = [poses[Math.floor(poses.length / 2)], poses.at(-1)];
  const rocks = ends.flatMap((pose) => {
    if (pose === undefined) return [];
    const base = towards(pose, true);
    return [-1, 1].map((side): Movement => ({
      ...base,
      from: pose.frame,
      // Over the right end the left end of the blade rises, and the other way round.
      to: rocked(pose.frame, side * noseHalf, -side * lift),
    }));
  });
  return [...strokes, ...rocks];
};

/** The blade's motion through its movements. */
export const bladeMotion = (movements: readonly Movement[]): Motion =>
  movements.map(({ label, from, to }): Sweep => ({ kind: 'glide', label, from, to }));

/** The motion of something that only shifts along y from setting to setting: one pose for each. */
export const shiftMotion = (
  movements: readonly Movement[],
  shiftAt: (setting: string) => number,
): Motion => {
  const poseAt = byKey((setting: string): Frame => shift(WORLD, [0, shiftAt(setting), 0]));
  return movements.map(({ label, setting }): Sweep => ({
    kind: 'still',
    label,
    pose: poseAt(setting),
  }));
};

/** The pose of a result, from the label of its sweep. */
export const poseOf =
  (movements: readonly Movement[]) =>
  (label: string): CheckResult['pose'] => {
    const movement = movements.find((one) => one.label === label);
    return movement
      ? { setting: movement.setting, blade: movement.blade, u: movement.u }
      : undefined;
  };

/** How much of the spine line of a blade lies over the nose in a pose, mm. */
export const overNose = (frame: Frame, from: number, to: number, noseHalf: number): number => {
  const [a, b] = [place(frame, [from, 0, 0])[0], place(frame, [to, 0, 0])[0]];
  return Math.max(0, Math.min(noseHalf, Math.max(a, b)) - Math.max(-noseHalf, Math.min(a, b)));
};
