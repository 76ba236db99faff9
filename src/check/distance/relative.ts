import { length3, sub3 } from '../../geometry/vector.ts';
import { int, real } from './flat.ts';
import { poseAt, relativePose, track, type Motion, type Track } from './motion.ts';
import { POSE } from './placed.ts';

/**
 * The motion of one body as seen from another, as a tree: the root bounds all configurations,
 * its leaves are single sweeps, which `split` halves as far as a search asks. A node says where
 * a point p of the moving body can be: at M p + o, every entry of the matrix M and of the origin
 * o within an interval. Numbers a node (offsets below), then two poses of a single sweep's ends.
 */
export interface Relative {
  data: Float64Array;
  /** First child or -1; the second follows `second`. */
  first: Int32Array;
  second: Int32Array;
  /** Sweep of a single node, -1 for a group that has no poses of its own. */
  sweep: Int32Array;
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
/** The share of the first child in a straight group's way. */
export const PART = TO + 1;
export const STRIDE = PART + 1;

/** Typical reach at which two valid bounds on the deviation are compared, mm. */
const TYPICAL = 100;
/** Origins and axes nearer than this are one and the same pose, mm. */
const SAME = 1e-10;

const STILL: Track = track({
  kind: 'still',
  label: '',
  pose: { origin: [0, 0, 0], x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] },
});

const reserve = (m: Relative): number => {
  const node = m.used++;
  if (node >= m.first.length) {
    const grow = <T extends Float64Array | Int32Array>(old: T, fresh: T): T => {
      fresh.set(old);
      return fresh;
    };
    const size = 2 * m.first.length;
    m.data = grow(m.data, new Float64Array(size * STRIDE));
    m.first = grow(m.first, new Int32Array(size));
    m.second = grow(m.second, new Int32Array(size));
    m.sweep = grow(m.sweep, new Int32Array(size));
  }
  m.first[node] = -1;
  m.second[node] = -1;
  return node;
};

/** Largest difference of two matrices' entries. */
const spread = (data: Float64Array, p: number, q: number): number => {
  let most = 0;
  for (let k = 0; k < 9; k++)
    most = Math.max(most, Math.abs(real(data, p + k) - real(data, q + k)));
  return most;
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
  let apart = 0;
  for (const pose of [START_POSE, END_POSE]) {
    const at = base + pose + 9;
    apart = Math.max(
      apart,
      Math.hypot(real(m.data, at), real(m.data, at + 1), real(m.data, at + 2)),
    );
  }
  const travel = relativeTravel(a, b);
  apart += (travel * h) / 2;
  const times = (x: number, y: number): number => (x === 0 || y === 0 ? 0 : x * y);
  const s0 = b.turn * apart + travel;
  const s1 = a.turn + b.turn;
  const c0 = times(b.turn * b.turn + b.twist, apart) + 2 * b.turn * travel + a.bend + b.bend;
  const c1 = b.turn * b.turn + b.twist + 2 * b.turn * a.turn + a.turn * a.turn + a.twist;
  const first = [(s0 * h) / 2, (s1 * h) / 2] as const;
  const second = [times(c0, (h * h) / 8), times(c1, (h * h) / 8)] as const;
  const better = second[0] + second[1] * TYPICAL < first[0] + first[1] * TYPICAL ? second : first;
  m.data[base + STRAY] = better[0];
  m.data[base + STRAY_PER] = better[1];
};

const relativeTravel = (a: Track, b: Track): number => {
  if (a.sweep.kind === 'glide' && b.sweep.kind === 'glide') {
    const way = sub3(a.sweep.to.origin, a.sweep.from.origin);
    return length3(sub3(way, sub3(b.sweep.to.origin, b.sweep.from.origin)));
  }
  return a.travel + b.travel;
};

/** Adds the node of one sweep's interval. */
const addInterval = (m: Relative, sweep: number, from: number, to: number): number => {
  const node = reserve(m);
  const a = m.a[sweep] ?? STILL;
  const b = m.b[sweep] ?? STILL;
  const base = node * STRIDE;
  const { data } = m;
  m.sweep[node] = sweep;
  data[base + FROM] = from;
  data[base + TO] = to;
  relativePose(poseAt(a, from), poseAt(b, from), data, base + START_POSE);
  if (to > from) relativePose(poseAt(a, to), poseAt(b, to), data, base + END_POSE);
  else data.copyWithin(base + END_POSE, base + START_POSE, base + START_POSE + POSE);
  setStray(m, node, a, b);
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

/** Whether the second child carries the first one's straight, unturned way on. */
const carriesOn = (m: Relative, p: number, q: number): boolean => {
  const { data } = m;
  const at = p * STRIDE;
  const next = q * STRIDE;
  if (int(m.sweep, p) < 0 || int(m.sweep, q) < 0) return false;
  for (const node of [at, next]) {
    if (real(data, node + STRAY) > SAME || real(data, node + STRAY_PER) * TYPICAL > SAME)
      return false;
  }
  if (spread(data, at, next) * TYPICAL > SAME) return false;
  const way = (node: number, k: number): number =>
    real(data, node + END_POSE + 9 + k) - real(data, node + START_POSE + 9 + k);
  let along = 0;
  let first = 0;
  let second = 0;
  for (let k = 0; k < 3; k++) {
    const joint = real(data, at + END_POSE + 9 + k) - real(data, next + START_POSE + 9 + k);
    if (Math.abs(joint) > SAME) return false;
    along += way(at, k) * way(next, k);
    first += way(at, k) ** 2;
    second += way(next, k) ** 2;
  }
  if (first === 0 || second === 0 || along <= 0) return false;
  // Distance of the joint from the straight line of both, by the sine between the ways.
  const sine2 = Math.max(0, 1 - (along * along) / (first * second));
  return sine2 <= 1e-15;
};

/** Adds a node over two others. */
const addGroup = (m: Relative, p: number, q: number): number => {
  const node = reserve(m);
  const { data } = m;
  const base = node * STRIDE;
  const at = p * STRIDE;
  const next = q * STRIDE;
  m.first[node] = p;
  m.second[node] = q;
  m.sweep[node] = -1;
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
  if (carriesOn(m, p, q)) {
    m.sweep[node] = int(m.sweep, p);
    for (let k = 0; k < POSE; k++) {
      data[base + START_POSE + k] = real(data, at + START_POSE + k);
      data[base + END_POSE + k] = real(data, next + END_POSE + k);
    }
    data[base + FROM] = 0;
    data[base + TO] = 1;
    data[base + STRAY] = 2 * SAME;
    data[base + STRAY_PER] = 0;
    const way = (n: number): number =>
      Math.hypot(
        ...[9, 10, 11].map((k) => real(data, n + END_POSE + k) - real(data, n + START_POSE + k)),
      );
    data[base + PART] = way(at) / (way(at) + way(next));
  }
  return node;
};

/** Builds the motion of a as seen from b; sweeps with equal members are taken once. */
export const relativeMotion = (a: Motion | undefined, b: Motion | undefined): Relative => {
  const together = a !== undefined && a === b;
  const count = together ? 1 : Math.max(a?.length ?? 1, b?.length ?? 1);
  const seen = new Map<unknown, Set<unknown>>();
  const distinct: number[] = [];
  for (let i = 0; i < count; i++) {
    const partners = seen.get(a?.[i]) ?? new Set<unknown>();
    seen.set(a?.[i], partners);
    if (partners.has(b?.[i])) continue;
    partners.add(b?.[i]);
    distinct.push(i);
  }
  const tracks = (motion: Motion | undefined): Track[] =>
    Array.from({ length: count }, (_, i) => {
      const sweep = together ? undefined : motion?.[i];
      return sweep ? track(sweep) : STILL;
    });
  const size = 2 * distinct.length + 16;
  const m: { -readonly [K in keyof Relative]: Relative[K] } = {
    data: new Float64Array(size * STRIDE),
    first: new Int32Array(size),
    second: new Int32Array(size),
    sweep: new Int32Array(size),
    used: 0,
    root: 0,
    whole: [],
    a: tracks(a),
    b: tracks(b),
  };
  const whole: number[] = [];
  const build = (from: number, to: number): number => {
    if (to - from === 1) {
      const i = distinct[from] ?? 0;
      const moves = m.a[i]?.sweep.kind !== 'still' || m.b[i]?.sweep.kind !== 'still';
      const node = addInterval(m, i, 0, moves ? 1 : 0);
      whole.push(node);
      return node;
    }
    const middle = (from + to) >> 1;
    return addGroup(m, build(from, middle), build(middle, to));
  };
  m.root = build(0, distinct.length);
  m.whole = whole;
  return m;
};

/** Halves a node's interval where that is not done yet; false when it cannot be halved. */
export const split = (m: Relative, node: number): boolean => {
  if (int(m.first, node) >= 0) return true;
  const from = real(m.data, node * STRIDE + FROM);
  const to = real(m.data, node * STRIDE + TO);
  if (to - from < 1e-9) return false;
  const middle = (from + to) / 2;
  const sweep = int(m.sweep, node);
  const first = addInterval(m, sweep, from, middle);
  const second = addInterval(m, sweep, middle, to);
  m.first[node] = first;
  m.second[node] = second;
  return true;
};

/** Which sweep, and where on it, a share of a single node's way is. */
export const moment = (m: Relative, node: number, share: number): { sweep: number; t: number } => {
  const base = node * STRIDE;
  const first = int(m.first, node);
  const group = first >= 0 && int(m.sweep, first) >= 0 && real(m.data, base + PART) > 0;
  if (group) {
    const part = real(m.data, base + PART);
    return share <= part
      ? moment(m, first, share / part)
      : moment(m, int(m.second, node), (share - part) / (1 - part));
  }
  const from = real(m.data, base + FROM);
  const to = real(m.data, base + TO);
  return { sweep: int(m.sweep, node), t: from + share * (to - from) };
};

/** Writes the exact relative pose at a moment. */
export const poseOf = (m: Relative, sweep: number, t: number, out: Float64Array): void =>
  relativePose(poseAt(m.a[sweep] ?? STILL, t), poseAt(m.b[sweep] ?? STILL, t), out, 0);
