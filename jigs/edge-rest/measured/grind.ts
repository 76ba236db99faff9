import {
  type Blade,
  bladeMesh,
  cos,
  dot2,
  type Frame,
  localise,
  type Mesh,
  type Place,
  radians,
  root,
  type Side,
  sin,
  sub2,
  type Vec2,
} from '../../../src/family/index.ts';
import { sectionAt } from '../../shared/measured/section-at.ts';
import { within, type Touchable } from '../../shared/pose/touchable.ts';
import { cutsOf, type AlongEdge } from '../blade.ts';
import { createRoom } from '../../shared/pose/placed-points.ts';
import { settleEdge, type EdgeContacts } from '../pose/settle.ts';

/** One belt on one side at one place: where lip and wheel stand, and where the maker stops. */
export interface WheelPass {
  readonly side: Side;
  readonly contacts: EdgeContacts;
  readonly radius: number;
  readonly drop: number;
  readonly depth: number;
}

/** Chord error of the blades that are ground and measured, mm. */
const CHORD = 2e-4;

/** A blade with the hollows it has, as a solid. */
export const groundMesh = (
  blade: Blade,
  hollows: Partial<Record<Side, readonly AlongEdge[]>>,
): Mesh => bladeMesh(blade, { chord: CHORD, sides: cutsOf(blade, hollows) }).blade;

/** The section square to the edge at a place: (h from the edge up, w), one closed polygon. */
export const edgeSection = (mesh: Mesh, at: Place): Vec2[] =>
  sectionAt(mesh, at).map(([v, w]): Vec2 => [-v, w]);

/** The wheel's axis in the section square to the edge: (h, w). */
const axisIn = (pose: Frame, at: Place, { radius, drop }: WheelPass): Vec2 => {
  const [u, v, w] = localise(pose, [0, -radius, drop]);
  const slope = radians(at.slope);
  const [du, dv] = [u - at.edge[0], v - at.edge[1]];
  return [du * sin(slope) - dv * cos(slope), w];
};

/** Distance of a point from a polygon's sides. */
export const distanceTo = (p: Vec2, polygon: readonly Vec2[]): number =>
  Math.min(
    ...polygon.map((a, i) => {
      const b = polygon[(i + 1) % polygon.length] ?? a;
      const along = sub2(b, a);
      const square = dot2(along, along);
      const t = square > 0 ? Math.min(1, Math.max(0, dot2(sub2(p, a), along) / square)) : 0;
      return Math.hypot(p[0] - a[0] - t * along[0], p[1] - a[1] - t * along[1]);
    }),
  );

/** Tilts at which the stop is looked for first, degrees: from leaning well back to well forward. */
const LEANING = Array.from({ length: 13 }, (_, i) => -30 + 5 * i);
const FINE = 1e-9;

/** Sections of a blade's mesh are nowhere farther apart, mm. */
const WIDEST = 10;

/** What of a blade seat and lip can touch while a place is at the belt's middle. */
export const near = (blade: Touchable, { u }: Place, half: number): Touchable =>
  within(blade, u, half + WIDEST);

/**
 * The hollow that a pass grinds at a place: the tilt at which the settled blade has the wheel
 * `depth` into the outline it came with, the axis of the wheel then. None when no tilt does it.
 */
export const hollowOf = (
  edge: Touchable,
  outline: readonly Vec2[],
  pass: WheelPass,
  at: Place,
): AlongEdge | undefined => {
  const room = createRoom();
  const poseAt = (tilt: number): Frame | undefined =>
    settleEdge(edge, { side: pass.side, at: at.edge, tilt }, pass.contacts, room);
  const bite = (tilt: number): number => {
    const pose = poseAt(tilt);
    if (!pose) return NaN;
    const short = distanceTo(axisIn(pose, at, pass), outline) - pass.radius + pass.depth;
    return Math.abs(short) < FINE ? 0 : short;
  };
  // Tipped forward step by step until the wheel is deep enough for the first time.
  const bites = LEANING.map((tilt) => ({ tilt, short: bite(tilt) }));
  const after = bites.findIndex(({ short }, i) => short < 0 && (bites[i - 1]?.short ?? NaN) >= 0);
  const [before, deep] = [bites[after - 1], bites[after]];
  if (before === undefined || deep === undefined) return undefined;
  const pose = poseAt(root(bite, before.tilt, deep.tilt));
  if (!pose) return undefined;
  const [up, w] = axisIn(pose, at, pass);
  return { radius: pass.radius, up, out: pass.side === 'left' ? w : -w };
};
