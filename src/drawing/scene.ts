import { place, turn } from '../geometry/frame.ts';
import { cross3, dot3, unit3, type Vec2, type Vec3 } from '../geometry/vector.ts';
import { around, NOTHING, union, type Box } from './box.ts';
import { upOf, type Body } from './bodies.ts';
import { fill, polyline } from './items.ts';
import type { Item } from './sheet.ts';

/** A parallel projection: unit vectors to the right, up the paper and towards the eye. */
export interface Eye {
  readonly right: Vec3;
  readonly up: Vec3;
  readonly towards: Vec3;
}

/** Looking from a direction, z up the paper (for a view from above: y up). */
export const eyeFrom = (direction: Vec3): Eye => {
  const towards = unit3(direction);
  const right = unit3(cross3([0, 0, 1], towards));
  return { right, up: cross3(towards, right), towards };
};

/** From the right side (+x): y runs to the right, z up. The main view of a fixture at its belt. */
export const SIDE: Eye = { right: [0, 1, 0], up: [0, 0, 1], towards: [1, 0, 0] };
/** From above, turned as first-angle projection wants it below the side view. */
export const ABOVE_SIDE: Eye = { right: [0, 1, 0], up: [-1, 0, 0], towards: [0, 0, 1] };
/** Isometric from the maker's right. */
export const ISOMETRIC: Eye = eyeFrom([1, 1, 1]);

/** A filled face that was drawn, in the order of drawing: what shows at a point is the last one. */
export interface Face2 {
  readonly owner: string;
  readonly rings: readonly (readonly Vec2[])[];
}

export interface Scene {
  readonly items: readonly Item[];
  readonly faces: readonly Face2[];
  readonly box: Box;
}

const EPS = 1e-6;

/** Turns of an outline sharper than this are drawn as edges, degrees. */
const SHARP = 20;

/** Whether a must be drawn before b: some plane square to an axis parts them. */
const isBehind = (a: Body, b: Body, towards: Vec3): boolean =>
  ([0, 1, 2] as const).some(
    (i) =>
      (towards[i] > EPS && a.max[i] <= b.min[i] + EPS) ||
      (towards[i] < -EPS && a.min[i] >= b.max[i] - EPS),
  );

/** Nearest point of the body's box to the eye. */
const nearness = (body: Body, towards: Vec3): number =>
  ([0, 1, 2] as const).reduce<number>(
    (sum, i) => sum + towards[i] * (towards[i] > 0 ? body.max[i] : body.min[i]),
    0,
  );

/**
 * Bodies from far to near. Boxes parted by a plane square to an axis are ordered by it; where
 * that says nothing (a bolt in its hole) or both ways, the one that reaches less near goes first.
 */
export const paintOrder = (bodies: readonly Body[], towards: Vec3): Body[] => {
  const waiting = [...bodies].sort((a, b) => nearness(a, towards) - nearness(b, towards));
  const ordered: Body[] = [];
  while (waiting.length > 0) {
    const free = waiting.findIndex((a) =>
      waiting.every((b) => a === b || !isBehind(b, a, towards) || isBehind(a, b, towards)),
    );
    ordered.push(...waiting.splice(Math.max(0, free), 1));
  }
  return ordered;
};

/** Draws one body: walls that face the eye from far to near, then the end that faces it. */
const drawBody = (body: Body, eye: Eye, k: number): { items: Item[]; faces: Face2[] } => {
  const project = (p: Vec3): Vec2 => [dot3(p, eye.right) * k, dot3(p, eye.up) * k];
  const at = ([x, y]: Vec2, z: number): Vec3 => place(body.frame, [x, y, z]);
  const items: Item[] = [];
  const faces: Face2[] = [];
  const up = dot3(upOf(body), eye.towards);
  interface Wall {
    readonly depth: number;
    readonly ring: readonly Vec2[];
    readonly edges: readonly (readonly Vec2[])[];
  }
  const walls: Wall[] = [];
  for (const ring of [body.outer, ...body.holes]) {
    const n = ring.length;
    const corner = (i: number): Vec2 => ring[(i + n) % n] ?? [0, 0];
    const side = (i: number): Vec2 => {
      const [a, b] = [corner(i), corner(i + 1)];
      return [b[0] - a[0], b[1] - a[1]];
    };
    // The material lies to the left of every ring, so the outward normal to its right.
    const faced = ring.map((_, i) => {
      const [dx, dy] = side(i);
      return dot3(turn(body.frame, [dy, -dx, 0]), eye.towards) / Math.hypot(dx, dy) > 1e-4;
    });
    const sharp = ring.map((_, i) => {
      const [p, q] = [side(i - 1), side(i)];
      const cosine = (p[0] * q[0] + p[1] * q[1]) / (Math.hypot(...p) * Math.hypot(...q));
      return Math.acos(Math.max(-1, Math.min(1, cosine))) > (SHARP * Math.PI) / 180;
    });
    ring.forEach((a, i) => {
      if (faced[i] !== true) return;
      const b = corner(i + 1);
      const [a0, b0, a1, b1] = [at(a, body.from), at(b, body.from), at(a, body.to), at(b, body.to)];
      const [pa0, pb0, pa1, pb1] = [a0, b0, a1, b1].map(project) as [Vec2, Vec2, Vec2, Vec2];
      const edges: (readonly Vec2[])[] = [];
      const silhouette = (j: number, k: number): boolean =>
        faced[(j + n) % n] !== faced[(k + n) % n];
      if (sharp[i] === true || silhouette(i, i - 1)) edges.push([pa0, pa1]);
      if (sharp[(i + 1) % n] === true || silhouette(i, i + 1)) edges.push([pb0, pb1]);
      const isOuter = ring === body.outer;
      // The far rim; the near one is drawn with the end face.
      if (up >= -EPS && !(isOuter && body.flushBelow)) edges.push([pa0, pb0]);
      if (up <= EPS && !(isOuter && body.flushAbove)) edges.push([pa1, pb1]);
      const depth = Math.min(...[a0, b0, a1, b1].map((p) => dot3(p, eye.towards)));
      walls.push({ depth, ring: [pa0, pb0, pb1, pa1], edges });
    });
  }
  walls.sort((p, q) => p.depth - q.depth);
  for (const wall of walls) {
    items.push(fill(wall.ring, 'paper'), ...wall.edges.map((edge) => polyline(edge, 'visible')));
    faces.push({ owner: body.owner, rings: [wall.ring] });
  }
  if (Math.abs(up) > EPS) {
    const level = up > 0 ? body.to : body.from;
    const rings = [body.outer, ...body.holes].map((ring) => ring.map((p) => project(at(p, level))));
    faces.push({ owner: body.owner, rings });
    items.push(fill(keyhole(rings), 'paper'));
    const isFlush = up > 0 ? body.flushAbove : body.flushBelow;
    rings.forEach((ring, i) => {
      if (i > 0 || !isFlush) items.push(polyline([...ring, ring[0] ?? [0, 0]], 'visible'));
    });
  }
  return { items, faces };
};

/** Rings joined to one outline by bridges of no width: the windings add up to the region. */
const keyhole = (rings: readonly (readonly Vec2[])[]): Vec2[] => {
  const start = rings[0]?.[0] ?? [0, 0];
  return rings.flatMap((ring) => [...ring, ring[0] ?? start, start]);
};

/** The picture of bodies in parallel projection with hidden lines removed, `k` times as large. */
export const scene = (bodies: readonly Body[], eye: Eye, k: number): Scene => {
  const drawn = paintOrder(bodies, eye.towards).map((body) => drawBody(body, eye, k));
  const faces = drawn.flatMap((d) => d.faces);
  return {
    items: drawn.flatMap((d) => d.items),
    faces,
    box: faces.flatMap((f) => f.rings).reduce((box, ring) => union(box, around(ring)), NOTHING),
  };
};

export const projected = (p: Vec3, eye: Eye, k: number): Vec2 => [
  dot3(p, eye.right) * k,
  dot3(p, eye.up) * k,
];
