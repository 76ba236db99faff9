import {
  cos,
  cutByPlane,
  dot3,
  type Frame,
  halfSpace,
  type HalfSpace,
  localise,
  type Mesh,
  type Place,
  radians,
  root,
  type Side,
  sin,
  type Vec2,
  type Vec3,
} from '../../../src/family/index.ts';
import { sectionAt } from '../../shared/measured/section-at.ts';
import { createRoom } from '../../shared/pose/placed-points.ts';
import { nearTo, settleMesh, type Contacts } from '../pose/settle-mesh.ts';
import { subset, touchable, type Touchable } from '../../shared/pose/touchable.ts';

/** One belt on one side at one place: where the fixture stands and where the maker stops. */
export interface Pass {
  readonly side: Side;
  readonly contacts: Contacts;
  /** Lean of the platen, degrees. */
  readonly lean: number;
  /** Edge of this side to stop at, from the midplane, mm. */
  readonly edge: number;
}

/** A point of the section at a place, in blade coordinates. */
const inBlade = (at: Place, [v, w]: Vec2): Vec3 => {
  const slope = radians(at.slope);
  return [at.spine[0] - v * sin(slope), at.spine[1] + v * cos(slope), w];
};

/** The abrasive face as a half space of the blade's coordinates; what is kept lies outside it. */
export const faceInBlade = (pose: Frame, lean: number) => {
  const t = radians(lean);
  const normal: Vec3 = [0, -cos(t), -sin(t)];
  return halfSpace(localise(pose, [0, 0, 0]), [
    dot3(normal, pose.x),
    dot3(normal, pose.y),
    dot3(normal, pose.z),
  ]);
};

/** Where the face meets the level v of the section, from the midplane on the ground side, mm. */
const edgeLeft = (pose: Frame, pass: Pass, at: Place, v: number): number => {
  const face = faceInBlade(pose, pass.lean);
  const [low, high] = [inBlade(at, [v, 0]), inBlade(at, [v, 1])];
  const d0 = face.offset - dot3(face.normal, low);
  const d1 = face.offset - dot3(face.normal, high);
  const w = d0 / (d0 - d1);
  return pass.side === 'left' ? w : -w;
};

/** A blade being ground at one place: what stands in the fixture, and the slice to be measured. */
export interface Workpiece {
  /** The stretch that can be over the nose, without the faces below. */
  readonly stretch: Mesh;
  readonly faces: readonly HalfSpace[];
  /** What seat and step touch, with every face that reaches it. */
  readonly spine: Touchable;
  /** A thin slice round the place, with all faces. */
  readonly slice: Mesh;
}

/** Sections of a blade's mesh are nowhere farther apart, mm. */
const WIDEST = 10;
/** Half the thickness of the slice, mm. */
export const SLICE = 0.5;

/** The stretch of a blade within `reach` mm of a place. */
export const between = (mesh: Mesh, at: Place, reach: number): Mesh =>
  cutByPlane(
    cutByPlane(mesh, halfSpace([at.u + reach, 0, 0], [1, 0, 0])),
    halfSpace([at.u - reach, 0, 0], [-1, 0, 0]),
  );

const spineOf = (mesh: Mesh, at: Place, { noseHalf, stepHalf, stepTop }: Contacts): Touchable =>
  touchable(
    mesh,
    stepTop + 2,
    [noseHalf, -noseHalf, stepHalf, -stepHalf].map((x) => at.u + x),
  );

/** The blank at a place, ready for its first pass. */
export const workpiece = (blank: Mesh, at: Place, contacts: Contacts): Workpiece => {
  const stretch = between(blank, at, contacts.noseHalf + WIDEST);
  return {
    stretch,
    faces: [],
    spine: spineOf(stretch, at, contacts),
    slice: between(stretch, at, SLICE + Math.abs(at.height * sin(radians(at.slope)))),
  };
};

/** Tilts beyond this lay a blade down, degrees. */
const STEEPEST = 40;
/** Edge at which the stop counts as met, mm. */
const FINE = 1e-9;

/** Every how many-eth point finds the tilt roughly. */
const COARSE = 7;
/** How far the rough tilt may be off, degrees: the finer search looks that far to both sides. */
const ROUGH = 0.5;

/**
 * The pose in which the belt has brought the edge at a place down to the stop: the tilt at which
 * the settled blade's ground face passes that far from the midplane at the edge. A steeper tilt
 * always takes more off the edge, so the tilt is the one root. It is found roughly on some of
 * the points, then on all that lie near a contact there. None when no tilt between just leaning
 * and 40 degrees does it.
 */
export const stopPose = (piece: Workpiece, pass: Pass, at: Place): Frame | undefined => {
  const height = Math.max(...sectionAt(piece.slice, at).map(([v]) => v));
  const { contacts, side, lean } = pass;
  const room = createRoom();
  const search = (spine: Touchable, low: number, high: number): number | undefined => {
    const excess = (tilt: number): number => {
      const pose = settleMesh(spine, { side, u: at.u, tilt }, contacts, room);
      const off = pose ? edgeLeft(pose, pass, at, height) - pass.edge : NaN;
      return Math.abs(off) < FINE ? 0 : off;
    };
    return excess(low) >= 0 && excess(high) <= 0 ? root(excess, low, high) : undefined;
  };
  const least = Math.max(0.02, lean + 0.02);
  const some = subset(piece.spine, (i) => i % COARSE === 0);
  const rough = search(some, least, STEEPEST);
  const near =
    rough === undefined
      ? undefined
      : settleMesh(some, { side, u: at.u, tilt: rough }, contacts, room);
  if (rough === undefined || !near) return undefined;
  const close = nearTo(piece.spine, near, contacts, room);
  const tilt =
    search(close, Math.max(least, rough - ROUGH), rough + ROUGH) ??
    search(piece.spine, least, STEEPEST);
  return tilt === undefined
    ? undefined
    : settleMesh(piece.spine, { side, u: at.u, tilt }, contacts, room);
};

const takes = ({ normal, offset }: HalfSpace, { points }: Touchable): boolean => {
  for (let i = 0; i < points.length; i += 3) {
    const p: Vec3 = [points[i] ?? 0, points[i + 1] ?? 0, points[i + 2] ?? 0];
    if (dot3(normal, p) > offset + FINE) return true;
  }
  return false;
};

/**
 * The blade after one pass at a place: everything the face reaches in its last pose is gone. The
 * stretch is cut only where a face takes something that seat or step touch.
 */
export const ground = (piece: Workpiece, pass: Pass, at: Place): Workpiece | undefined => {
  const pose = stopPose(piece, pass, at);
  if (!pose) return undefined;
  const face = faceInBlade(pose, pass.lean);
  const faces = [...piece.faces, face];
  const slice = cutByPlane(piece.slice, face);
  if (!takes(face, piece.spine)) return { ...piece, faces, slice };
  const stretch = faces.reduce(cutByPlane, piece.stretch);
  return { stretch, faces: [], spine: spineOf(stretch, at, pass.contacts), slice };
};
