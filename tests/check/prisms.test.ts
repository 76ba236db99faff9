import { expect, it } from 'vitest';
import type { Body, Motion } from '../../src/check/distance/index.ts';
import { overlapVolume } from '../../src/check/distance/overlap-volume.ts';
import type { Shape } from '../../src/check/distance/shape.ts';
import { circle, rectangle } from '../../src/geometry/loop.ts';
import { WORLD } from '../../src/geometry/frame.ts';
import type { Layer } from '../../src/model/part.ts';
import { prismsOf } from '../../src/model/prisms.ts';
import { meshOf } from '../../src/model/solid.ts';
import { valueOf } from '../family/examples.ts';
import { body, measure, random, turned } from './shapes.ts';

const layers: Layer[] = [
  {
    from: 0,
    to: 6,
    profile: {
      outer: rectangle([-30, -20], [30, 20]),
      holes: [circle([-12, 4], 7), circle([14, -6], 3.3)],
    },
  },
  { from: 6, to: 14, profile: { outer: rectangle([-25, -15], [-22, 15]), holes: [] } },
];
const CHORD = 0.02;
const prisms: Shape = { kind: 'prisms', prisms: valueOf(prismsOf(layers, CHORD)) };
const mesh: Shape = {
  kind: 'mesh',
  mesh: valueOf(meshOf(layers, { chord: CHORD, volumeShare: Infinity })),
};

// Two ways to tell the kernel of one solid; meshes are held against libraries elsewhere.
it('keep the distance of the mesh of the same stack, still and moving, through its holes and over it', () => {
  const next = random(31);
  const between = (low: number, high: number): number => low + (high - low) * next();
  let [apart, hit, held] = [0, 0, 0];
  for (let i = 0; i < 120; i += 1) {
    const rod: Shape = {
      kind: 'cylinder',
      from: [0, 0, -20],
      to: [0, 0, between(0, 20)],
      radius: between(0.5, 4),
    };
    const there = (): ReturnType<typeof turned> =>
      i % 3 === 0
        ? turned([between(-1, 1), between(-1, 1), 0], between(0, 8), [-12, 4, between(-9, 9)])
        : turned([between(-1, 1), between(-1, 1), 1], between(0, 180), [
            between(-40, 40),
            between(-30, 30),
            between(-25, 25),
          ]);
    const [from, to] = [there(), there()];
    const motion: Motion =
      i % 2 === 0
        ? [{ kind: 'still', label: '', pose: from }]
        : [{ kind: 'glide', label: '', from, to: { ...from, origin: to.origin } }];
    const moving: Body = { ...body('rod', [rod]), motion };
    const [one, other] = [prisms, mesh].map((shape) => measure(moving, body('it', [shape])));
    if (one === undefined || other === undefined) throw new Error('not measured');
    expect(one.state).toBe(other.state);
    if (one.state === 'hit') hit += 1;
    if (one.state !== 'apart' || other.state !== 'apart') continue;
    // Each is told to its slack of a thousandth.
    expect(Math.abs(one.gap - other.gap)).toBeLessThan(0.0011);
    apart += 1;
    if (i % 3 === 0) held += 1;
  }
  expect(Math.min(apart, hit)).toBeGreaterThan(20);
  expect(held).toBeGreaterThan(5);
});

it('share with a box what the mesh of the same stack shares', () => {
  const next = random(32);
  let tried = 0;
  for (let i = 0; i < 25; i += 1) {
    const size = [10 + 30 * next(), 10 + 20 * next(), 4 + 8 * next()] as const;
    const box = body('box', [{ kind: 'box', frame: WORLD, size }]);
    const pose = turned([next(), next(), 1], 180 * next(), [40 * next() - 20, 20 * next() - 10, 5]);
    const [one = NaN, other = NaN] = [prisms, mesh].map((shape) =>
      overlapVolume(body('it', [shape]), box, { a: WORLD, b: pose }),
    );
    expect(one).toBeCloseTo(other, 6);
    if (one > 1) tried += 1;
  }
  expect(tried).toBeGreaterThan(15);
});
