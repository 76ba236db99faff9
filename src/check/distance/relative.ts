import { length3, sub3 } from '../../geometry/vector.ts';
import { grown, int, real } from './flat.ts';
import { poseAt, relativePose, type Track } from './motion.ts';
import { POSE } from './placed.ts';
import { ENDS, SAME, STILL, type Ways } from './ways.ts';

/**
 * The motion of one body as seen from another, as a tree: the root bounds all configurations,
 * its leaves are single sweeps, which `split` halves as far as a search asks. A node says where
 * a point p of the moving body can be: at M p + o, every entry of the matrix M and of the origin
 * o within an interval; and, which is closer for small turns, within a small distance of the
 * straight way from the node's first pose to its last. Numbers a node: offsets below.
 */
export interface Relative {
  data: Float64Array;
  /** Three numbers a node: its children, the first -1 where it has none, and its sweep, -1 for a group. */
  links: Int32Array;
  used: number;
  readonly root: number;
  /** The nodes of whole sweeps, one for each distinct one. */
  readonly whole: readonly number[];
  readonly a: readonly Track[];
  readonly b: readonly Track[];
}

/** Offsets: middle of the matrix (9) by rows, of the origin (3); half widths of both (9, 3). */
export const CENTRE = 9;
export const SPIN = 12;
export const HALF = 21;
/** Deviation of a point's way from the straight line between the end poses: D0 + D1 |p|. */
export const STRAY = HALF + 3;
export const STRAY_PER = STRAY + 1;
export const START_POSE = STRAY_PER + 1;
export const END_POSE = START_POSE + POSE;
export const FROM = END_POSE + POSE;
export const TO = FROM + 1;
/** The share of the first child in a group's way. */
const PART = TO + 1;
/** 1 when the node's sweeps carry each other on without a leap: the straight way is a real one. */
export const JOINED = PART + 1;
export const STRIDE = JOINED + 1;

/** Typical reach at which two valid bounds on the deviation are compared, mm. */
const TYPICAL = 100;

const LINKS = 3;

/** The first of a node's halves, -1 where it has not been halved. */
export const firstOf = ({ links }: Relative, node: number): number => int(links, LINKS * node);

export const secondOf = ({ links }: Relative, node: number): number => int(links, LINKS * node + 1);

/** The number of a node's sweep, -1 for a group. */
export const sweepAt = ({ links }: Relative, node: number): number => int(links, LINKS * node + 2);

const setHalves = ({ links }: Relative, node: number, first: number, second: number): void => {
  links[LINKS * node] = first;
  links[LINKS * node + 1] = second;
};

const setSweep = ({ links }: Relative, node: number, sweep: number): void => {
  links[LINKS * node + 2] = sweep;
};

const reserve = (m: Relative): number => {
  const node = m.used++;
  if (LINKS * node >= m.links.length) {
    m.data = grown(m.data, new Float64Array(2 * m.data.length));
    m.links = grown(m.links, new Int32Array(2 * m.links.length));
  }
  setHalves(m, node, -1, -1);
  return node;
};

/**
 * Bounds the deviation from straight ways on one sweep's interval of length h. With the rates
 * of both bodies, a point p of the moving one has, seen from the other, a speed of at most
 * s0 + s1 |p| and an acceleration of at most c0 + c1 |p| (product rule on R_b'(R_a p + o)); it
 * strays from its chord by speed * h / 2 and by acceleration * h^2 / 8 at most.
 */
const setStray = (m: Relative, node: number, a: Track, b: Track): void => {
  const base = node * STRIDE;
  const h = real(m.data, base + TO) - real(m.data, base + FROM);
  const travel = relativeTravel(a, b);
  const apart =
    Math.max(originAway(m.data, base + START_POSE), originAway(m.data, base + END_POSE)) +
    (travel * h) / 2;
  const s0 = b.turn * apart + travel;
  const s1 = a.turn + b.turn;
  const c0 = times(b.turn * b.turn + b.twist, apart) + 2 * b.turn * travel + a.bend + b.bend;
  const c1 = b.turn * b.turn + b.twist + 2 * b.turn * a.turn + a.turn * a.turn + a.twist;
  const bent = times(c0, (h * h) / 8);
  const bentPer = times(c1, (h * h) / 8);
  const better = bent + bentPer * TYPICAL < (s0 * h) / 2 + ((s1 * h) / 2) * TYPICAL;
  m.data[base + STRAY] = better ? bent : (s0 * h) / 2;
  m.data[base + STRAY_PER] = better ? bentPer : (s1 * h) / 2;
};

const times = (x: number, y: number): number => (x === 0 || y === 0 ? 0 : x * y);

/** How far a pose carries the origin. */
const originAway = (data: Float64Array, pose: number): number => {
  const x = real(data, pose + 9);
  const y = real(data, pose + 10);
  const z = real(data, pose + 11);
  return Math.sqrt(x * x + y * y + z * z);
};

const relativeTravel = (a: Track, b: Track): number => {
  if (a.sweep.kind === 'glide' && b.sweep.kind === 'glide') {
    const way = sub3(a.sweep.to.origin, a.sweep.from.origin);
    return length3(sub3(way, sub3(b.sweep.to.origin, b.sweep.from.origin)));
  }
  return a.travel + b.travel;
};

/** Completes the node of one sweep's interval whose poses at both ends are there. */
const close = (m: Relative, node: number, sweep: number, from: number, to: number): number => {
  const base = node * STRIDE;
  const { data } = m;
  setSweep(m, node, sweep);
  data[base + JOINED] = 1;
  data[base + FROM] = from;
  data[base + TO] = to;
  setStray(m, node, m.a[sweep] ?? STILL, m.b[sweep] ?? STILL);
  // The columns of the matrix move like points at unit distance, less the origin's way.
  for (let k = 0; k < POSE; k++) {
    const p = real(data, base + START_POSE + k);
    const q = real(data, base + END_POSE + k);
    const stray = real(data, base + (k < 9 ? STRAY_PER : STRAY));
    data[base + k] = (p + q) / 2;
    data[base + SPIN + k] = Math.abs(q - p) / 2 + stray;
  }
  return node;
};

/** Adds the node of one sweep's interval. */
const addInterval = (m: Relative, sweep: number, from: number, to: number): number => {
  const node = reserve(m);
  const a = m.a[sweep] ?? STILL;
  const b = m.b[sweep] ?? STILL;
  const base = node * STRIDE;
  const { data } = m;
  relativePose(poseAt(a, from), poseAt(b, from), data, base + START_POSE);
  if (to > from) relativePose(poseAt(a, to), poseAt(b, to), data, base + END_POSE);
  else data.copyWithin(base + END_POSE, base + START_POSE, base + START_POSE + POSE);
  return close(m, node, sweep, from, to);
};

/** Adds the node of a whole sweep, by its place in the list of distinct ones. */
const addWhole = (m: Relative, { distinct, ends }: Ways, place: number): number => {
  const node = reserve(m);
  const sweep = distinct[place] ?? 0;
  const at = node * STRIDE;
  // One pose lies behind the other.
  for (let k = 0; k < ENDS; k++) m.data[at + START_POSE + k] = real(ends, place * ENDS + k);
  const moves = m.a[sweep]?.sweep.kind !== 'still' || m.b[sweep]?.sweep.kind !== 'still';
  return close(m, node, sweep, 0, moves ? 1 : 0);
};

/**
 * Where on the straight way from the pose at `start` to that at `end` a third pose is best
 * placed, and how far it is from there: 0 to 1, then d0 and d1 such that a point p is off by at
 * most d0 + d1 |p|.
 */
const offWay = (
  data: Float64Array,
  start: number,
  end: number,
  third: number,
): readonly [share: number, d0: number, d1: number] => {
  let along = 0;
  let whole = 0;
  for (let k = 0; k < POSE; k++) {
    const weight = k < 9 ? TYPICAL * TYPICAL : 1;
    const way = real(data, end + k) - real(data, start + k);
    along += weight * way * (real(data, third + k) - real(data, start + k));
    whole += weight * way * way;
  }
  const share = whole > 0 ? Math.min(1, Math.max(0, along / whole)) : 0;
  let turned = 0;
  let moved = 0;
  for (let k = 0; k < POSE; k++) {
    const from = real(data, start + k);
    const off = real(data, third + k) - from - share * (real(data, end + k) - from);
    if (k < 9) turned += off * off;
    else moved += off * off;
  }
  return [share, Math.sqrt(moved), Math.sqrt(turned)];
};

/** Whether the second node starts where the first one ends, and both move without a leap. */
const joins = (data: Float64Array, p: number, q: number): boolean => {
  let off = 0;
  for (let k = 0; k < POSE; k++) {
    off = Math.max(off, Math.abs(real(data, p + END_POSE + k) - real(data, q + START_POSE + k)));
  }
  return off <= SAME && real(data, p + JOINED) === 1 && real(data, q + JOINED) === 1;
};

/** Adds a node over two others. */
const addGroup = (m: Relative, p: number, q: number): number => {
  const node = reserve(m);
  const { data } = m;
  const base = node * STRIDE;
  const at = p * STRIDE;
  const next = q * STRIDE;
  setHalves(m, node, p, q);
  setSweep(m, node, -1);
  for (let k = 0; k < POSE; k++) {
    const low = Math.min(
      real(data, at + k) - real(data, at + SPIN + k),
      real(data, next + k) - real(data, next + SPIN + k),
    );
    const high = Math.max(
      real(data, at + k) + real(data, at + SPIN + k),
      real(data, next + k) + real(data, next + SPIN + k),
    );
    data[base + k] = (low + high) / 2;
    data[base + SPIN + k] = (high - low) / 2;
  }
  for (let k = 0; k < POSE; k++) {
    data[base + START_POSE + k] = real(data, at + START_POSE + k);
    data[base + END_POSE + k] = real(data, next + END_POSE + k);
  }
  // The children's straight ways lie within their joints' distance of the straight way of both.
  const [start, end] = [base + START_POSE, base + END_POSE];
  const [before, b0, b1] = offWay(data, start, end, at + END_POSE);
  const [after, a0, a1] = offWay(data, start, end, next + START_POSE);
  data[base + STRAY] = Math.max(real(data, at + STRAY) + b0, real(data, next + STRAY) + a0);
  data[base + STRAY_PER] = Math.max(
    real(data, at + STRAY_PER) + b1,
    real(data, next + STRAY_PER) + a1,
  );
  data[base + FROM] = 0;
  data[base + TO] = 1;
  data[base + PART] = (before + after) / 2;
  data[base + JOINED] = joins(data, at, next) ? 1 : 0;
  return node;
};

/** Builds a motion of all distinct sweeps, or of some, by their places in the list of those. */
export const relativeMotion = (
  ways: Ways,
  places: readonly number[] = ways.distinct.map((_, i) => i),
): Relative => {
  const size = 2 * places.length + 16;
  const m: { -readonly [K in keyof Relative]: Relative[K] } = {
    data: new Float64Array(size * STRIDE),
    links: new Int32Array(size * LINKS),
    used: 0,
    root: 0,
    whole: [],
    a: ways.a,
    b: ways.b,
  };
  const whole: number[] = [];
  const build = (from: number, to: number): number => {
    if (to - from === 1) {
      const node = addWhole(m, ways, places[from] ?? 0);
      whole.push(node);
      return node;
    }
    const middle = (from + to) >> 1;
    return addGroup(m, build(from, middle), build(middle, to));
  };
  m.root = build(0, places.length);
  m.whole = whole;
  return m;
};

/** Halves a node's interval where that is not done yet; false when it cannot be halved. */
export const split = (m: Relative, node: number): boolean => {
  if (firstOf(m, node) >= 0) return true;
  const from = real(m.data, node * STRIDE + FROM);
  const to = real(m.data, node * STRIDE + TO);
  if (to - from < 1e-9) return false;
  const middle = (from + to) / 2;
  const sweep = sweepAt(m, node);
  const first = addInterval(m, sweep, from, middle);
  const second = addInterval(m, sweep, middle, to);
  setHalves(m, node, first, second);
  return true;
};

/** The same motion held still at one moment of one of its sweeps. */
export const heldAt = (m: Relative, sweep: number, t: number): Relative => {
  const node = addInterval(m, sweep, t, t);
  return { ...m, root: node, whole: [node] };
};

/** Which sweep, and where on it, a share of a node's way is. */
export const moment = (m: Relative, node: number, share: number): { sweep: number; t: number } => {
  const base = node * STRIDE;
  const sweep = sweepAt(m, node);
  if (sweep < 0) {
    const part = real(m.data, base + PART);
    return share < part
      ? moment(m, firstOf(m, node), share / part)
      : moment(m, secondOf(m, node), part < 1 ? (share - part) / (1 - part) : 0);
  }
  const from = real(m.data, base + FROM);
  const to = real(m.data, base + TO);
  return { sweep, t: from + share * (to - from) };
};

/** Writes the exact relative pose at a moment. */
export const poseOf = (m: Relative, sweep: number, t: number, out: Float64Array): void =>
  relativePose(poseAt(m.a[sweep] ?? STILL, t), poseAt(m.b[sweep] ?? STILL, t), out, 0);
