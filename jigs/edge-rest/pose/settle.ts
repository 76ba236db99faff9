import {
  cos,
  cross3,
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
  levelled,
  placedPoints,
  stretchOf,
  type Room,
  type Stretch,
} from '../../shared/pose/placed-points.ts';
import { lineBelow } from '../../shared/pose/support-line.ts';
import { touchable, type Touchable } from '../../shared/pose/touchable.ts';

/** Seat and lip as parts, seat frame, mm. */
export interface EdgeContacts {
  readonly half: number;
  /** The lip holds up to here across the belt, or from here outwards. */
  readonly lipEnd: number;
  readonly pads: boolean;
  readonly lip: number;
  readonly lipHeight: number;
}

const ROUNDS = 60;
const FINE = 1e-9;

const turned = (vertices: Float64Array): Float64Array =>
  vertices.map((value, i) => (i % 3 === 1 ? -value : value));

/**
 * What seat and lip can touch of a blade: all of it, since a face that overhangs meets the lip's
 * top between corners of the mesh that lie far apart.
 */
export const edgeTouchable = (mesh: Mesh): Touchable => {
  const { points, edges } = touchable(
    { vertices: turned(new Float64Array(mesh.vertices)), triangles: mesh.triangles },
    Infinity,
  );
  return { points: turned(points), edges };
};

/** Axes of a blade edge down, its ground side to the wheel, its spine `tilt` towards the wheel. */
const standing = (side: Side, tilt: number): Frame => {
  const [s, c] = [sin(radians(tilt)), cos(radians(tilt))];
  const away = side === 'left' ? -1 : 1;
  const y: Vec3 = [0, s, -c];
  const z: Vec3 = [0, away * c, away * s];
  return { origin: [0, 0, 0], x: cross3(y, z), y, z };
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

/**
 * The front of crossings at the ends of the lip: between two corners of the line in which a face
 * meets the level of the lip's top. A lip shorter than the corners lie apart meets only these.
 */
const atEnds = ({ x, y, z }: Stretch, ends: readonly number[]): Stretch => {
  const order = Array.from(x, (_, i) => i).sort((p, q) => (x[p] ?? 0) - (x[q] ?? 0));
  const at = (list: Float64Array, i: number): number => list[i] as number;
  const hull: number[] = [];
  for (const i of order) {
    const below = (): boolean => {
      const [p, q] = [hull.at(-2), hull.at(-1)];
      if (p === undefined || q === undefined) return false;
      const along = (at(x, q) - at(x, p)) * (at(y, i) - at(y, p));
      return along <= (at(x, i) - at(x, p)) * (at(y, q) - at(y, p));
    };
    while (below()) hull.pop();
    hull.push(i);
  }
  const found = hull.slice(1).flatMap((q, k) => {
    const p = hull[k] ?? q;
    return ends.flatMap((end): Vec3[] => {
      const t = (end - at(x, p)) / (at(x, q) - at(x, p));
      return t >= 0 && t <= 1 ? [[end, at(y, p) + t * (at(y, q) - at(y, p)), at(z, p)]] : [];
    });
  });
  const column = (k: 0 | 1 | 2): Float64Array => Float64Array.from(found, (p) => p[k]);
  return { x: column(0), y: column(1), z: column(2) };
};

/**
 * Settles a blade edge down at one tilt: its edge comes down on the flat seat and forward against
 * the lip, with the load at x = `load`, and the place `at` of its edge (u, v) stands at x = 0.
 * Found on the corners of the blade's mesh and where its edges leave seat and lip, turning it
 * level and square until nothing changes; no formula of the solver enters. None when no point of
 * the blade is over the seat or before the lip.
 */
export const settleEdge = (
  { points, edges }: Touchable,
  side: Side,
  at: readonly [u: number, v: number],
  tilt: number,
  { half, lipEnd, pads, lip, lipHeight }: EdgeContacts,
  load = 0,
  room: Room = createRoom(),
): Frame | undefined => {
  const centred = (f: Frame): Frame => shift(f, [-place(f, [at[0], at[1], 0])[0], 0, 0]);
  let frame = centred(standing(side, tilt));
  for (let round = 0; round < ROUNDS; round += 1) {
    const placed = placedPoints(points, frame, room);
    const over = stretchOf(placed, edges, half, room, 'over');
    const below = lineBelow(over.x, over.z, load);
    if (!below) return undefined;
    const [from, to] = pads ? [lipEnd, half] : [0, lipEnd];
    const atTop = crossings(placed, edges, below.a + lipHeight, room);
    const stretches = [
      over,
      stretchOf(placed, edges, lipEnd, room, 'lip'),
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
    frame = levelled(shift(frame, [0, 0, -below.a]), below.b, 2);
    frame = levelled(shift(frame, [0, -front.a, 0]), front.b, 1);
    frame = centred(shift(frame, [0, lip, 0]));
    const moved = Math.max(
      Math.abs(below.a),
      Math.abs(front.a - lip),
      100 * Math.abs(below.b),
      100 * Math.abs(front.b),
    );
    if (moved < FINE) break;
  }
  return frame;
};
