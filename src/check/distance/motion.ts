import { atan2, cos, sin } from '../../core/trigonometry.ts';
import { degrees, radians } from '../../core/units.ts';
import { place, WORLD, type Frame } from '../../geometry/frame.ts';
import { dot3, length3, sub3, type Vec3 } from '../../geometry/vector.ts';
import { real } from './flat.ts';

/** Stands still. */
export interface Still {
  readonly kind: 'still';
  readonly label: string;
  readonly pose: Frame;
}

/**
 * Moves from one pose to another: the origin along a straight line, the axes about one fixed
 * direction, both at constant rate. The turn must stay under a quarter.
 */
export interface Glide {
  readonly kind: 'glide';
  readonly label: string;
  readonly from: Frame;
  readonly to: Frame;
}

/**
 * Moves as a function of a parameter from 0 to 1, whose rates its author bounds: `travel` mm of
 * the origin and `turn` degrees a unit of the parameter; where known, `bend` mm and `twist`
 * degrees a unit squared (second derivatives), which lets the search stop much sooner.
 */
export interface Course {
  readonly kind: 'course';
  readonly label: string;
  readonly pose: (t: number) => Frame;
  readonly travel: number;
  readonly turn: number;
  readonly bend?: number;
  readonly twist?: number;
}

export type Sweep = Still | Glide | Course;

/**
 * Where a body is over all configurations of a check, in order: every moving body of one check
 * has the same number of sweeps, and sweeps of one index happen together. A single pose is where it
 * stands through all of them.
 */
export type Motion = readonly Sweep[];

/** Of a body that stands where its solids are. */
export const AT_REST: Motion = [{ kind: 'still', label: '', pose: WORLD }];

/** Whether a body stands where it is, whatever the others do. */
export const stands = (motion: Motion | undefined): boolean =>
  !motion || (motion.length === 1 && motion[0]?.kind === 'still');

/** What a body does while the others go through their sweep of a number; none for one at rest. */
export const sweepOf = (motion: Motion | undefined, sweep: number): Sweep | undefined =>
  motion?.[stands(motion) ? 0 : sweep];

/** A sweep's motion with its rates, radians inside. */
export interface Track {
  readonly sweep: Sweep;
  readonly travel: number;
  readonly turn: number;
  readonly bend: number;
  readonly twist: number;
  /** Axis of a glide's turn in the starting pose's own coordinates. */
  readonly axis: Vec3;
}

const NO_AXIS: Vec3 = [0, 0, 1];

/** Axis and angle that turn frame a into frame b, in a's coordinates. */
const turnBetween = (a: Frame, b: Frame): { axis: Vec3; angle: number } => {
  const axes = [a.x, a.y, a.z] as const;
  const q = (i: 0 | 1 | 2, to: Vec3): number => dot3(axes[i], to);
  const anti: Vec3 = [q(2, b.y) - q(1, b.z), q(0, b.z) - q(2, b.x), q(1, b.x) - q(0, b.y)];
  const sine = length3(anti) / 2;
  const cosine = (q(0, b.x) + q(1, b.y) + q(2, b.z) - 1) / 2;
  if (sine < 1e-14 && cosine > 0) return { axis: NO_AXIS, angle: 0 };
  return {
    axis: [anti[0] / (2 * sine), anti[1] / (2 * sine), anti[2] / (2 * sine)],
    angle: atan2(sine, cosine),
  };
};

export const track = (sweep: Sweep): Track => {
  if (sweep.kind === 'still') {
    return { sweep, travel: 0, turn: 0, bend: 0, twist: 0, axis: NO_AXIS };
  }
  if (sweep.kind === 'glide') {
    const { axis, angle } = turnBetween(sweep.from, sweep.to);
    const travel = length3(sub3(sweep.to.origin, sweep.from.origin));
    return { sweep, travel, turn: angle, bend: 0, twist: 0, axis };
  }
  return {
    sweep,
    travel: sweep.travel,
    turn: radians(sweep.turn),
    bend: sweep.bend ?? Infinity,
    twist: sweep.twist === undefined ? Infinity : radians(sweep.twist),
    axis: NO_AXIS,
  };
};

const tracks = new WeakMap<Motion, readonly Track[]>();

/** The tracks of a motion's sweeps, worked out once: every body that moves so is asked with many others. */
export const tracksOf = (motion: Motion): readonly Track[] => {
  const known = tracks.get(motion) ?? motion.map(track);
  tracks.set(motion, known);
  return known;
};

/** The pose of a glide turned by an angle about its axis: Rodrigues' formula on the local axes. */
const glidePose = (glide: Glide, { axis, turn }: Track, t: number): Frame => {
  const { from, to } = glide;
  const s = sin(turn * t);
  const c = 1 - cos(turn * t);
  const [x, y, z] = axis;
  const whole = (local: Vec3): Vec3 => sub3(place(from, local), from.origin);
  return {
    origin: [
      from.origin[0] + t * (to.origin[0] - from.origin[0]),
      from.origin[1] + t * (to.origin[1] - from.origin[1]),
      from.origin[2] + t * (to.origin[2] - from.origin[2]),
    ],
    x: whole([1 - c * (y * y + z * z), c * x * y + s * z, c * x * z - s * y]),
    y: whole([c * x * y - s * z, 1 - c * (x * x + z * z), c * y * z + s * x]),
    z: whole([c * x * z + s * y, c * y * z - s * x, 1 - c * (x * x + y * y)]),
  };
};

/** Where a sweep stands at a share t (0 to 1) of its way. */
export const poseAt = (moving: Track, t: number): Frame => {
  const { sweep } = moving;
  if (sweep.kind === 'still') return sweep.pose;
  if (sweep.kind === 'course') return sweep.pose(t);
  if (t === 0 || t === 1 || moving.turn === 0) {
    const { from, to } = sweep;
    if (t === 1) return to;
    const [a, b] = [from.origin, to.origin];
    return {
      ...from,
      origin: [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1]), a[2] + t * (b[2] - a[2])],
    };
  }
  return glidePose(sweep, moving, t);
};

/** Writes the pose of a as seen from b (rotation by rows, origin: 12 numbers) into `out`. */
export const relativePose = (a: Frame, b: Frame, out: Float64Array, at: number): void => {
  const x = a.origin[0] - b.origin[0];
  const y = a.origin[1] - b.origin[1];
  const z = a.origin[2] - b.origin[2];
  for (let i = 0; i < 3; i++) {
    const row = i === 0 ? b.x : i === 1 ? b.y : b.z;
    out[at + 3 * i] = dot3(row, a.x);
    out[at + 3 * i + 1] = dot3(row, a.y);
    out[at + 3 * i + 2] = dot3(row, a.z);
    out[at + 9 + i] = row[0] * x + row[1] * y + row[2] * z;
  }
};

/** Largest turn (degrees) a glide may make: a wider one does not say which way it goes. */
export const WIDEST_TURN = 90;

/** How far from unit and square to each other a frame's axes may be. */
const SQUARE = 1e-9;

const isUnit = (v: Vec3): boolean => Math.abs(dot3(v, v) - 1) <= SQUARE;
const isAcross = (v: Vec3, w: Vec3): boolean => Math.abs(dot3(v, w)) <= SQUARE;

/** Whether a frame's axes are unit and square to each other, to 1e-9. */
export const isRigid = ({ origin, x, y, z }: Frame): boolean =>
  Number.isFinite(origin[0] + origin[1] + origin[2]) &&
  isUnit(x) &&
  isUnit(y) &&
  isUnit(z) &&
  isAcross(x, y) &&
  isAcross(y, z) &&
  isAcross(z, x);

/** Turn of a sweep in degrees. */
export const turnOf = ({ turn }: Track): number => degrees(turn);

/** The 12 numbers of one pose, as a frame's rows. */
export const applyPose = (poses: Float64Array, at: number, p: Vec3): Vec3 => [
  real(poses, at) * p[0] +
    real(poses, at + 1) * p[1] +
    real(poses, at + 2) * p[2] +
    real(poses, at + 9),
  real(poses, at + 3) * p[0] +
    real(poses, at + 4) * p[1] +
    real(poses, at + 5) * p[2] +
    real(poses, at + 10),
  real(poses, at + 6) * p[0] +
    real(poses, at + 7) * p[1] +
    real(poses, at + 8) * p[2] +
    real(poses, at + 11),
];

/** A point that a pose carries to p: the way back. */
export const applyBack = (poses: Float64Array, at: number, p: Vec3): Vec3 => {
  const x = p[0] - real(poses, at + 9);
  const y = p[1] - real(poses, at + 10);
  const z = p[2] - real(poses, at + 11);
  return [
    real(poses, at) * x + real(poses, at + 3) * y + real(poses, at + 6) * z,
    real(poses, at + 1) * x + real(poses, at + 4) * y + real(poses, at + 7) * z,
    real(poses, at + 2) * x + real(poses, at + 5) * y + real(poses, at + 8) * z,
  ];
};
