import { rounded } from '../../src/geometry/fillet.ts';
import { circle, polygon, slot, type Loop } from '../../src/geometry/loop.ts';
import { insideOf, loopGap } from '../../src/geometry/loop-measure.ts';
import type { Vec2 } from '../../src/geometry/vector.ts';
import type { Hole, PlatePart } from '../../src/model/part.ts';
import type { TitleBlock } from '../../src/drawing/title-block.ts';

/** A fixed sequence of numbers in 0..1 (mulberry32, public domain). */
export const sequence = (seed: number): (() => number) => {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
};

const outlines: readonly ((w: number, h: number, next: () => number) => Vec2[])[] = [
  (w, h) => [
    [0, 0],
    [w, 0],
    [w, h],
    [0, h],
  ],
  (w, h, next) => {
    const [a, b] = [w * (0.35 + 0.3 * next()), h * (0.35 + 0.3 * next())];
    return [
      [0, 0],
      [w, 0],
      [w, b],
      [a, b],
      [a, h],
      [0, h],
    ];
  },
  (w, h, next) => {
    const [a, b, c] = [
      w * (0.2 + 0.1 * next()),
      w * (0.65 + 0.1 * next()),
      h * (0.5 + 0.2 * next()),
    ];
    return [
      [0, 0],
      [w, 0],
      [w, c],
      [b, c],
      [b, h],
      [a, h],
      [a, c],
      [0, c],
    ];
  },
  (w, h, next) => [
    [0, 0],
    [w, h * 0.1 * next()],
    [w * (0.75 + 0.2 * next()), h * (0.8 + 0.15 * next())],
    [w * 0.1 * next(), h],
  ],
];

/** Numbers of a workshop (hundredths) or of a computation (all digits), by the seed. */
const grid = (value: number, isFine: boolean): number =>
  isFine ? value : Math.round(value * 100) / 100;

/** A valid random plate: outline of one of several kinds, fillets, round holes and slots. */
export const randomPlate = (seed: number): PlatePart => {
  const next = sequence(seed);
  const isFine = seed % 3 === 0;
  const g = (value: number): number => grid(value, isFine);
  const [w, h] = [30 + 250 * next() ** 1.5, 25 + 150 * next() ** 1.5];
  const kind = Math.floor(next() * (outlines.length + 0.4));
  const make = outlines[kind];
  const corners = make?.(w, h, next).map(([x, y]): Vec2 => [g(x), g(y)]);
  const radius = next() < 0.3 ? 0 : g(1 + 4 * next());
  const filleted = corners ? rounded(corners, radius) : undefined;
  const round = circle([g(w / 2), g(w / 2)], g(w / 2));
  // Where the fillets are too large for an edge the corners stay sharp.
  const outer: Loop = filleted?.ok ? filleted.value : corners ? polygon(corners) : round;
  const holes: Hole[] = [];
  const wanted = Math.floor(next() ** 2 * 26);
  for (let tries = 0; tries < 400 && holes.length < wanted; tries++) {
    const size = g(2.5 + 8 * next() ** 2);
    const at: Vec2 = [g(w * next()), g(h * next())];
    const reach = 5 + 15 * next();
    const isSlot = next() < 0.2;
    const ends: [Vec2, Vec2] =
      next() < 0.5 ? [at, [g(at[0] + reach), at[1]]] : [at, [at[0], g(at[1] + reach)]];
    const loop = isSlot ? slot(...ends, size) : circle(at, size / 2);
    const middle: Vec2 = isSlot
      ? [(ends[0][0] + ends[1][0]) / 2, (ends[0][1] + ends[1][1]) / 2]
      : at;
    const isClear =
      insideOf(outer)(loop) &&
      loopGap(outer, loop) > 1.5 &&
      holes.every((other) => loopGap(other.loop, loop) > 1.5 && !insideOf(other.loop)(loop));
    if (!isClear || holes.some((other) => insideOf(loop)(other.loop))) continue;
    holes.push({
      id: `${isSlot ? 'S' : 'H'}${String(holes.length + 1)}`,
      loop,
      at: middle,
      size,
      purpose: next() < 0.5 ? 'Clamp bolt M6, ISO 273 normal series' : 'Dowel',
      ...(!isSlot && next() < 0.2 ? { thread: 'M6' } : {}),
    });
  }
  return {
    kind: 'plate',
    process: next() < 0.5 ? 'laser' : 'saw-drill',
    id: `plate-${String(seed)}`,
    name: `Random plate ${String(seed)}`,
    quantity: 1 + Math.floor(3 * next()),
    material: 'Aluminium EN AW-6082, ground flat stock',
    finish: 'as cut',
    density: 2.7,
    layers: [
      { profile: { outer, holes: holes.map((hole) => hole.loop) }, from: 0, to: g(3 + 9 * next()) },
    ],
    holes,
    engraving: [],
    notes: next() < 0.5 ? ['Drill the clamp holes together with the nose.'] : [],
    tight: next() < 0.3 ? ['step face, parallel to the datum edge within 0.1'] : [],
  };
};

export const BLOCK: TitleBlock = {
  owner: 'A workshop',
  creator: '',
  approvedBy: '',
  date: '',
  design: 'Spine-referenced rest',
  designId: 'PW-0123AB',
  revision: 'A',
  paper: 'iso',
};
