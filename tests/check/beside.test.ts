import { describe, expect, it } from 'vitest';
import { standBeside, type Stack } from '../../src/check/beside.ts';
import { CHECK_CHORD } from '../../src/check/chord.ts';
import { frame, type Frame } from '../../src/geometry/frame.ts';
import { circle, hexagon, rectangle, slot, type Loop } from '../../src/geometry/loop.ts';
import type { Vec3 } from '../../src/geometry/vector.ts';
import { meshOf } from '../../src/model/solid.ts';
import { valueOf } from '../family/examples.ts';
import { body, measure, random, turned } from './shapes.ts';

const HOLES: readonly Loop[] = [
  circle([-12, 0], 3.3),
  circle([0, 8], 2.5),
  slot([8, -8], [14, -8], 6.6),
];

/** A plate 60 x 40 x 6 with two round holes and a slot. */
const plate: Stack['layers'] = [
  { profile: { outer: rectangle([-30, -20], [30, 20]), holes: HOLES }, from: 0, to: 6 },
];

/** A screw of 6 mm with a hexagon head over z = 0. */
const screw: Stack['layers'] = [
  { profile: { outer: circle([0, 0], 3), holes: [] }, from: -20, to: 0 },
  { profile: { outer: hexagon([0, 0], 10), holes: [] }, from: 0, to: 4 },
];

const AT_HOME = frame([0, 0, 0]);

const meshed = (layers: Stack['layers']) =>
  valueOf(meshOf(layers, { chord: CHECK_CHORD, volumeShare: Infinity }));
const MESHES = new Map([plate, screw].map((layers) => [layers, meshed(layers)]));

/** The gap of the meshes of two stacks, mm: zero or less where they cross. */
const meshGap = (one: Stack, other: Stack): number => {
  const solid = ({ layers, frame: at }: Stack) =>
    body('', [{ kind: 'mesh', mesh: MESHES.get(layers) ?? meshed(layers), frame: at }]);
  const found = measure(solid(one), solid(other), { within: 0.1 });
  return found.state === 'beyond' ? 0.1 : found.gap;
};

const upAt = (origin: Vec3): Stack => ({ layers: screw, frame: frame(origin) });

describe('stacks that stand beside each other by their outlines', () => {
  it('are apart by their meshes wherever they are said to be, for screws strewn at random', () => {
    const next = random(71);
    const home: Stack = { layers: plate, frame: AT_HOME };
    let [told, apart] = [0, 0];
    for (let i = 0; i < 120; i += 1) {
      const at: Vec3 = [70 * next() - 35, 50 * next() - 25, 40 * next() - 10];
      // Half of them near a hole, half turned over.
      const [hx, hy] = i % 2 === 0 ? [-12, 0] : [0, 0];
      const near: Vec3 =
        hx === 0 ? at : [hx + 0.5 * (next() - 0.5), hy + 0.5 * (next() - 0.5), 6 + 3 * next()];
      const placed: Frame = i % 4 < 2 ? frame(near) : turned([1, 0, 0], 180, near);
      const one: Stack = { layers: screw, frame: placed };
      const gap = meshGap(one, home);
      if (gap > 0) apart += 1;
      if (!standBeside(one, home) && !standBeside(home, one)) continue;
      told += 1;
      expect(gap).toBeGreaterThan(0);
    }
    expect(told).toBeGreaterThan(0.6 * apart);
    expect(apart).toBeLessThan(120);
  });

  it('tells a shank in a clearance hole up to where it comes near the wall, and a head over the face', () => {
    const home: Stack = { layers: plate, frame: AT_HOME };
    // 3.3 - 3 = 0.3 mm of room all round, 0.01 mm of which belongs to the chords of both.
    expect(standBeside(upAt([-12 + 0.285, 0, 6.02]), home)).toBe(true);
    expect(standBeside(upAt([-12 + 0.295, 0, 6.02]), home)).toBe(false);
    expect(standBeside(upAt([-12, 0, 6.005]), home)).toBe(false);
    expect(standBeside(upAt([11 + 2.5, -8, 6.02]), home)).toBe(true);
    expect(standBeside(upAt([0, 8, 6.02]), home)).toBe(false);
  });

  it('tells nothing of a screw in the metal, of one inside a plate, nor of axes that are not parallel', () => {
    const home: Stack = { layers: plate, frame: AT_HOME };
    expect(standBeside(upAt([20, 10, 6.02]), home)).toBe(false);
    const deep = plate.map((layer) => ({ ...layer, from: -50, to: 50 }));
    const thick: Stack = { layers: deep, frame: AT_HOME };
    expect(standBeside(upAt([20, 10, 0]), thick)).toBe(false);
    const aslant: Stack = { layers: screw, frame: turned([1, 0, 0], 0.01, [-12, 0, 6.5]) };
    expect(standBeside(aslant, home)).toBe(false);
  });

  it('takes a bar for as thick as it reaches from its axis, wherever its outline lies', () => {
    const home: Stack = { layers: plate, frame: AT_HOME };
    const off: Stack['layers'] = [
      { profile: { outer: circle([2, 0], 1), holes: [] }, from: -9, to: 9 },
    ];
    const arc: Stack['layers'] = [
      { profile: { outer: slot([0, 0], [0, 1.8], 2), holes: [] }, from: -9, to: 9 },
    ];
    for (const layers of [off, arc]) {
      const one: Stack = { layers, frame: frame([-12, 0, 0]) };
      expect(standBeside(one, home)).toBe(true);
      expect(standBeside({ ...one, frame: frame([-12 + 0.6, 0, 0]) }, home)).toBe(false);
    }
  });
});
