import {
  cos,
  type Frame,
  type Mesh,
  place,
  radians,
  shift,
  type Side,
  sin,
  type Vec3,
} from '../../../src/family/index.ts';
import {
  createRoom,
  keptOf,
  placedPoints,
  stretchOf,
  type Room,
  type Stretch,
} from '../../shared/pose/placed-points.ts';
import { broughtTo, FINE, ROCKING, ROUNDS, stood } from '../../shared/pose/bring.ts';
import { lineBelow } from '../../shared/pose/support-line.ts';
import { edgeStrip, type Touchable } from '../../shared/pose/touchable.ts';

/** Seat and lip as parts, seat frame, mm. */
export interface EdgeContacts {
  readonly half: number;
  /** The lip holds up to here across the belt, or from here outwards. */
  readonly lipEnd: number;
  readonly pads: boolean;
  readonly lip: number;
  readonly lipHeight: number;
}

/** How a blade stands on the rest before it is settled. */
export interface EdgeStance {
  readonly side: Side;
  /** The place of its edge (u, v) that stands at x = 0. */
  readonly at: readonly [u: number, v: number];
  /** Of its spine towards the wheel, degrees. */
  readonly tilt: number;
  /** Where the load acts along the stroke: the middle of the belt unless stated. */
  readonly load?: number;
}

/** Most that a blade may lean for the strip along its edge to be all that counts, degrees. */
export const MOST_LEAN = 45;
/** Room for the slope of an edge line between its millimetres, mm. */
const SPARE = 1;

/**
 * How far from the edge, mm, seat and lip can touch a blade that is `thickness` mm thick and leans by
 * `MOST_LEAN` at most. A place D mm from the edge and w out of the blade's middle is at least
 * D cos t - w sin t above the edge beside it, which is not below the seat: beyond what that leaves
 * under the lip's top nothing is met.
 */
export const touchedDepth = (thickness: number, lipHeight: number): number => {
  const [s, c] = [sin(radians(MOST_LEAN)), cos(radians(MOST_LEAN))];
  return (lipHeight + thickness * s + SPARE) / c;
};

/**
 * What of a blade lies as deep as that. A face that overhangs may meet the lip's top between corners
 * of the mesh that lie far apart: these are kept too.
 */
export const edgeTouchable = (mesh: Mesh, lipHeight: number): Touchable => {
  let half = 0;
  for (let i = 2; i < mesh.vertices.length; i += 3)
    half = Math.max(half, Math.abs(mesh.vertices[i] as number));
  return edgeStrip(mesh, touchedDepth(2 * half, lipHeight));
};

/** Where edges of the mesh cross the level of the lip's top, which slopes with the seat line. */
const crossings = (
  placed: Float64Array,
  edges: Uint32Array,
  level: number,
  room: Room,
): Stretch => {
  const most = edges.length / 2;
  const [x, y, z] = [room('top x', most), room('top y', most), room('top z', most)];
  const at = (i: number): number => placed[i] as number;
  let found = 0;
  for (let e = 0; e < edges.length; e += 2) {
    const p = 3 * (edges[e] as number);
    const q = 3 * (edges[e + 1] as number);
    const a = at(p + 2);
    const b = at(q + 2);
    if (a < level === b < level) continue;
    const t = (level - a) / (b - a);
    x[found] = at(p) + t * (at(q) - at(p));
    y[found] = at(p + 1) + t * (at(q + 1) - at(p + 1));
    z[found++] = level;
  }
  return { x: x.subarray(0, found), y: y.subarray(0, found), z: z.subarray(0, found) };
};

/** The corners of the lower hull of points in order of x, into `hull`; how many there are. */
const hullOf = ({ x, y }: Stretch, order: Uint32Array, hull: Uint32Array): number => {
  let top = 0;
  for (const i of order) {
    const xi = x[i] as number;
    const yi = y[i] as number;
    while (top > 1) {
      const [p, q] = [hull[top - 2] as number, hull[top - 1] as number];
      const xp = x[p] as number;
      const yp = y[p] as number;
      const along = ((x[q] as number) - xp) * (yi - yp);
      if (along > (xi - xp) * ((y[q] as number) - yp)) break;
      top -= 1;
    }
    hull[top++] = i;
  }
  return top;
};

/**
 * The front of crossings at the ends of the lip: between two corners of the line in which a face
 * meets the level of the lip's top. A lip shorter than the corners lie apart meets only these.
 */
const atEnds = (crossed: Stretch, ends: readonly number[]): Stretch => {
  const { x, y, z } = crossed;
  const order = new Uint32Array(x.length);
  for (let i = 0; i < order.length; i += 1) order[i] = i;
  order.sort((p, q) => (x[p] as number) - (x[q] as number));
  const hull = new Uint32Array(x.length);
  const top = hullOf(crossed, order, hull);
  const found: Vec3[] = [];
  for (let k = 1; k < top; k += 1) {
    const [p, q] = [hull[k - 1] as number, hull[k] as number];
    const [xp, yp] = [x[p] as number, y[p] as number];
    for (const end of ends) {
      const t = (end - xp) / ((x[q] as number) - xp);
      if (t >= 0 && t <= 1) found.push([end, yp + t * ((y[q] as number) - yp), z[p] as number]);
    }
  }
  const column = (k: 0 | 1 | 2): Float64Array => Float64Array.from(found, (p) => p[k]);
  return { x: column(0), y: column(1), z: column(2) };
};

/**
 * Settles a blade edge down at one tilt: its edge comes down on the flat seat and forward against
 * the lip. Found on the corners of the blade's mesh and where its edges leave seat and lip, turning
 * it level and square until nothing changes; no formula of the solver enters. `ending`: those edges
 * that can leave seat or lip. None when no point of the blade is over the seat or before the lip, or
 * when it does not come to rest.
 */
export const settleEdge = (
  { points, edges }: Touchable,
  { side, at, tilt, load = 0 }: EdgeStance,
  { half, lipEnd, pads, lip, lipHeight }: EdgeContacts,
  room: Room = createRoom(),
  ending: Uint32Array = edges,
): Frame | undefined => {
  const centred = (f: Frame): Frame => shift(f, [-place(f, [at[0], at[1], 0])[0], 0, 0]);
  let frame = centred(stood(side, tilt, 'down'));
  let moved = Infinity;
  for (let round = 0; round < ROUNDS; round += 1) {
    const placed = placedPoints(points, frame, room);
    const over = stretchOf(placed, ending, half, room, 'over');
    const below = lineBelow(over.x, over.z, load);
    if (!below) return undefined;
    const [from, to] = pads ? [lipEnd, half] : [0, lipEnd];
    const atTop = crossings(placed, edges, below.a + lipHeight, room);
    const stretches = [
      over,
      stretchOf(placed, ending, lipEnd, room, 'lip'),
      atTop,
      atEnds(atTop, [-half, -lipEnd, lipEnd, half]),
    ];
    const [xs, ys] = keptOf(
      stretches,
      (x, z) =>
        Math.abs(x) <= to + FINE &&
        Math.abs(x) >= from - FINE &&
        z - below.a - below.b * x <= lipHeight + FINE,
      room,
    );
    const front = lineBelow(xs, ys, load);
    if (!front) return undefined;
    const next = broughtTo(frame, below, front, lip, centred);
    ({ frame, moved } = next);
    if (moved < FINE) break;
  }
  return moved < ROCKING ? frame : undefined;
};
