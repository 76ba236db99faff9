import { cos } from '../core/trigonometry.ts';
import { radians } from '../core/units.ts';
import { place } from '../geometry/frame.ts';
import { cross3, dot3, sub2, type Vec2, type Vec3 } from '../geometry/vector.ts';
import { upOf, type Body } from './bodies.ts';
import { around } from './box.ts';
import { projected, type Eye } from './eye.ts';

const EPS = 1e-6;

/** Walls narrower than this across the view have no edges between them, mm of the real thing. */
const NARROW = 1.5;

/** Overlap of filled faces that go on into each other, mm on the paper. */
const SEAM = 0.15;

/** Turns of an outline sharper than this are drawn as edges, degrees. */
const SHARP = 20;
const SHARP_COSINE = cos(radians(SHARP));

/** A smooth run of a body's wall that faces the eye. */
export interface Wall {
  /** Its course across the view and towards the eye, from left to right or right to left. */
  readonly course: readonly Vec2[];
  /** From where to where that course goes across the view. */
  readonly from: number;
  readonly to: number;
  readonly ring: readonly Vec2[];
  readonly edges: readonly (readonly Vec2[])[];
}

/** From where, and how large. */
export interface View {
  readonly eye: Eye;
  readonly k: number;
}

/** Stretches of consecutive corners of a ring whose sides face the eye without a sharp corner. */
const runsOf = (faced: readonly boolean[], sharp: readonly boolean[]): number[][] => {
  const n = faced.length;
  const runs: number[][] = [];
  for (let start = 0; start < n; start += 1) {
    if (faced[start] !== true) continue;
    if (sharp[start] !== true && faced[(start + n - 1) % n] === true) continue;
    const run = [start, (start + 1) % n];
    for (let i = (start + 1) % n; faced[i] === true && sharp[i] !== true && run.length <= n;) {
      i = (i + 1) % n;
      run.push(i);
    }
    runs.push(run);
  }
  return runs;
};

/** Where a line of a body, flat at a level of it, is seen. */
export const seenAt = (
  { frame }: Body,
  line: readonly Vec2[],
  level: number,
  { eye, k }: View,
): Vec2[] => {
  const out: Vec2[] = [];
  for (const [x, y] of line) out.push(projected(place(frame, [x, y, level]), eye, k));
  return out;
};

/** The course of a line of a body across the view, along a direction, and towards the eye. */
const courseOf = (
  { frame, from }: Body,
  line: readonly Vec2[],
  across: Vec3,
  towards: Vec3,
): Vec2[] => {
  const out: Vec2[] = [];
  for (const [x, y] of line) {
    const p = place(frame, [x, y, from]);
    out.push([dot3(p, across), dot3(p, towards)]);
  }
  return out;
};

/** Of the corners of a ring: whether the side after one faces the eye, and whether it is sharp. */
const sidesOf = (
  { frame }: Body,
  ring: readonly Vec2[],
  { towards }: Eye,
): { readonly faced: readonly boolean[]; readonly sharp: readonly boolean[] } => {
  const n = ring.length;
  // The material lies to the left of every ring, so the outward normal to its right.
  const [ahead, aside] = [dot3(frame.x, towards), dot3(frame.y, towards)];
  const faced: boolean[] = [];
  const sharp: boolean[] = [];
  for (let i = 0; i < n; i += 1) {
    const here = ring[i] as Vec2;
    const before = ring[(i + n - 1) % n] as Vec2;
    const after = ring[(i + 1) % n] as Vec2;
    const [px, py] = [here[0] - before[0], here[1] - before[1]];
    const [qx, qy] = [after[0] - here[0], after[1] - here[1]];
    const [p, q] = [Math.sqrt(px * px + py * py), Math.sqrt(qx * qx + qy * qy)];
    faced.push((qy * ahead - qx * aside) / q > 1e-4);
    sharp.push((px * qx + py * qy) / (p * q) < SHARP_COSINE);
  }
  return { faced, sharp };
};

/** A point moved on by a seam, away from its neighbour on the line. */
const beyond = (p: Vec2, from: Vec2): Vec2 => {
  const [dx, dy] = sub2(p, from);
  const length = Math.sqrt(dx * dx + dy * dy);
  return length > 0 ? [p[0] + (SEAM / length) * dx, p[1] + (SEAM / length) * dy] : p;
};

/** A line that goes on a little where its wall has no edge, so that no seam shows to the next wall. */
const stretched = (line: readonly Vec2[], atStart: boolean, atEnd: boolean): readonly Vec2[] => {
  const [first, second] = line;
  const [last, before] = [line.at(-1), line.at(-2)];
  if (!first || !second || !last || !before || !(atStart || atEnd)) return line;
  return [
    atStart ? beyond(first, second) : first,
    ...line.slice(1, -1),
    atEnd ? beyond(last, before) : last,
  ];
};

export const wallsOf = (body: Body, ring: readonly Vec2[], view: View): Wall[] => {
  const n = ring.length;
  const { eye, k } = view;
  const { faced, sharp } = sidesOf(body, ring, eye);
  const axis = upOf(body);
  const up = dot3(axis, eye.towards);
  const across = cross3(axis, eye.towards);
  const isOuter = ring === body.outer;
  const walls: Wall[] = [];
  for (const run of runsOf(faced, sharp)) {
    const line: Vec2[] = [];
    for (const i of run) line.push(ring[i] as Vec2);
    const low = seenAt(body, line, body.from, view);
    const high = seenAt(body, line, body.to, view);
    const course = courseOf(body, line, across, eye.towards);
    const [start, end] = [run[0] ?? 0, run.at(-1) ?? 0];
    const isNarrow = Math.abs((course[0]?.[0] ?? 0) - (course.at(-1)?.[0] ?? 0)) < NARROW;
    // Edges of a knurl would run together; where the wall turns from the eye the edge stays.
    const drawsStart = !isNarrow || faced[(start + n - 1) % n] !== true || sharp[start] !== true;
    const drawsEnd = !isNarrow || faced[end] !== true || sharp[end] !== true;
    const last = run.length - 1;
    const edges: (readonly Vec2[])[] = [];
    if (drawsStart) edges.push([low[0] ?? [0, 0], high[0] ?? [0, 0]]);
    if (drawsEnd) edges.push([low[last] ?? [0, 0], high[last] ?? [0, 0]]);
    // The near rim is drawn with the end face; a flush outline goes on without an edge.
    if (up >= -EPS && !(isOuter && body.flushBelow)) edges.push(low);
    if (up <= EPS && !(isOuter && body.flushAbove)) edges.push(high);
    // Walls of flush layers overlap a little, so that no seam shows between them.
    const foot = body.from - (isOuter && body.flushBelow ? SEAM / k : 0);
    const overlapped = seenAt(body, line, foot, view);
    const { x0, x1 } = around(course);
    const closed = (rim: readonly Vec2[]) => stretched(rim, !drawsStart, !drawsEnd);
    const whole = [...closed(overlapped), ...closed(high).toReversed()];
    walls.push({ course, from: x0, to: x1, ring: whole, edges });
  }
  return walls;
};

/** Whether a course reaches a place across the view between its corners i and i + 1. */
const reaches = (course: readonly Vec2[], i: number, place: number): boolean => {
  const [t, u] = [course[i]?.[0] ?? 0, course[i + 1]?.[0] ?? 0];
  return Math.min(t, u) <= place && Math.max(t, u) >= place;
};

/** How near a wall comes at a place across the view that it reaches; its course never turns back. */
const depthAt = ({ course }: Wall, place: number): number => {
  let i = 0;
  while (i + 2 < course.length && !reaches(course, i, place)) i += 1;
  const [t, d] = course[i] ?? [0, 0];
  const [u, e] = course[i + 1] ?? [t, d];
  return t === u ? d : d + ((e - d) * (place - t)) / (u - t);
};

/** Walls of one prism stand side by side or one before the other, which a shared place tells. */
export const isWallBehind = (a: Wall, b: Wall): boolean => {
  const [low, high] = [Math.max(a.from, b.from), Math.min(a.to, b.to)];
  if (high - low < 1e-6) return false;
  const middle = (low + high) / 2;
  return depthAt(a, middle) < depthAt(b, middle) - EPS;
};
