import { frame } from '../../src/geometry/frame.ts';
import { circle, polygon, rectangle } from '../../src/geometry/loop.ts';
import type { Vec2 } from '../../src/geometry/vector.ts';
import type {
  HardwarePart,
  Hole,
  Part,
  Placement,
  PlatePart,
  PrintPart,
  StockPart,
} from '../../src/model/part.ts';

/** Hand-made parts of one little fixture, for tests. */

const common = {
  quantity: 1,
  material: 'Steel S235',
  finish: 'oiled',
  density: 7.85,
  notes: [],
  tight: [],
};

export const hole = (id: string, at: Vec2, diameter: number, thread?: string): Hole => ({
  id,
  loop: circle(at, diameter / 2),
  at,
  size: diameter,
  purpose: 'Screw M6, ISO 273',
  ...(thread === undefined ? {} : { thread }),
});

export const plateOf = (
  id: string,
  [width, height]: Vec2,
  thickness: number,
  holes: readonly Hole[],
): PlatePart => ({
  ...common,
  kind: 'plate',
  process: 'saw-drill',
  id,
  name: id,
  holes,
  engraving: [],
  layers: [
    {
      profile: { outer: rectangle([0, 0], [width, height]), holes: holes.map((h) => h.loop) },
      from: 0,
      to: thickness,
    },
  ],
});

export const base = plateOf('base', [120, 80], 6, [
  hole('A1', [15, 15], 5, 'M6'),
  hole('A2', [105, 15], 5, 'M6'),
]);

/** A counterbored block with a rib on top: two layers of one outline, then a smaller one. */
export const nose: PrintPart = {
  ...common,
  kind: 'print',
  id: 'nose',
  name: 'Nose',
  material: 'PETG',
  holes: [hole('A1', [15, 10], 6.6), hole('B1', [15, 10], 11)],
  layers: [
    {
      profile: { outer: rectangle([0, 0], [90, 40]), holes: [circle([15, 10], 3.3)] },
      from: 0,
      to: 6,
    },
    {
      profile: { outer: rectangle([0, 0], [90, 40]), holes: [circle([15, 10], 5.5)] },
      from: 6,
      to: 12,
    },
    { profile: { outer: rectangle([10, 25], [80, 35]), holes: [] }, from: 12, to: 20 },
  ],
};

export const bar: StockPart = {
  ...common,
  kind: 'stock',
  id: 'bar',
  name: 'Bar',
  section: 'square bar 20 x 20',
  holes: [],
  crossHoles: [
    { id: 'D1', face: 'y', at: [10, 30], size: 6.6, depth: 'through', purpose: 'Screw' },
    { id: 'E1', face: 'x', at: [8, 12], size: 5, thread: 'M6', depth: 10, purpose: 'Lock' },
  ],
  layers: [{ profile: { outer: rectangle([0, 0], [20, 20]), holes: [] }, from: 0, to: 50 }],
};

export const screw: HardwarePart = {
  ...common,
  kind: 'hardware',
  id: 'screw',
  name: 'Socket head cap screw',
  quantity: 2,
  designation: 'ISO 4762 - M6 x 20 - 8.8',
  layers: [
    { profile: { outer: circle([0, 0], 3), holes: [] }, from: -20, to: 0 },
    { profile: { outer: circle([0, 0], 5), holes: [] }, from: 0, to: 6 },
  ],
};

export const nut: HardwarePart = {
  ...common,
  kind: 'hardware',
  id: 'nut',
  name: 'Hexagon nut',
  designation: 'ISO 4032 - M6 - 8',
  layers: [
    {
      profile: {
        outer: polygon(
          Array.from({ length: 6 }, (_, i): Vec2 => [
            5.77 * Math.cos((i * Math.PI) / 3),
            5.77 * Math.sin((i * Math.PI) / 3),
          ]),
        ),
        holes: [circle([0, 0], 3)],
      },
      from: 0,
      to: 5.2,
    },
  ],
};

export const parts: readonly Part[] = [base, nose, bar, screw, nut];

const put = (part: string, name: string, x: number, y: number, z: number): Placement => ({
  part,
  name,
  frame: frame([x, y, z]),
  carrier: 'ground',
  touches: [],
});

/** Base, the nose on it, the bar behind it, two screws (one through the nose), a nut below. */
export const placements: readonly Placement[] = [
  put('base', 'base', 0, 0, 0),
  put('nose', 'nose', 0, 5, 6),
  put('bar', 'bar', 95, 55, 6),
  put('screw', 'screw-1', 15, 15, 12),
  put('screw', 'screw-2', 105, 15, 6),
  put('nut', 'nut', 105, 15, -5.2),
];
