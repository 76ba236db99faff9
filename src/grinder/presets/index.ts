import type { Grinder } from '../schema.ts';
import { ABRASIVES, BARE, FILE, LEATHER, NARROW_ABRASIVES, belt, wheel } from './parts.ts';

/** A two-wheel platen between idlers, drive wheel behind, tension wheel above. */
const platen50: Grinder = {
  ...FILE,
  name: 'Platen grinder, 50 mm belt, slotted rest',
  belt: belt(50, 1830),
  belts: ABRASIVES,
  backings: [BARE, LEATHER],
  platen: { kind: 'flat', width: 50, bottom: -45, top: 150, edgeRadius: 4, liner: 0 },
  wheels: [
    wheel('idler', 50, 50, [-26, -75], 'lower'),
    wheel('idler', 50, 50, [-26, 180], 'upper'),
    wheel('tracking', 75, 50, [-300, 303]),
    wheel('drive', 125, 50, [-600, -20]),
  ],
  rest: {
    kind: 'table',
    width: 150,
    depth: 120,
    thickness: 10,
    gap: 8,
    pattern: {
      kind: 'slots',
      axis: 'y',
      slots: [
        { at: -50, from: 30, to: 110, width: 8.5 },
        { at: 50, from: 30, to: 110, width: 8.5 },
      ],
    },
    travelY: 15,
    travelZ: 0,
  },
  lean: 0,
  keepOuts: [{ name: 'Frame behind the platen', min: [-60, -300, -45], max: [60, -12, 150] }],
  drive: { shaftSpeed: 2850, pulleyDiameter: 125, beltRating: 35, wheelRating: 40 },
};

/** The same class of machine without a table: the fixture sits on the bare tool arm. */
const arm50: Grinder = {
  ...platen50,
  name: 'Platen grinder, 50 mm belt, bare tool arm',
  rest: { kind: 'arm', width: 38, height: 38, reach: 140, slots: [], travelY: 60, travelZ: 0 },
};

const platen25: Grinder = {
  ...FILE,
  name: 'Bench grinder, 25 mm belt, small table',
  belt: belt(25, 762),
  belts: NARROW_ABRASIVES,
  backings: [BARE],
  platen: { kind: 'flat', width: 25, bottom: -10, top: 75, edgeRadius: 2, liner: 0 },
  wheels: [
    wheel('drive', 100, 25, [-51, -85]),
    wheel('idler', 50, 25, [-26, 125], 'upper'),
    wheel('tracking', 50, 25, [-161, 60]),
  ],
  rest: {
    kind: 'table',
    width: 100,
    depth: 80,
    thickness: 6,
    gap: 3,
    pattern: { kind: 'edges' },
    travelY: 3,
    travelZ: 0,
  },
  lean: 0,
  keepOuts: [],
  drive: { shaftSpeed: 2850, pulleyDiameter: 100, beltRating: 30, wheelRating: 30 },
};

const platen75: Grinder = {
  ...FILE,
  name: 'Floor grinder, 75 mm belt, drilled table',
  belt: belt(75, 2000),
  belts: ABRASIVES,
  backings: [BARE, LEATHER],
  platen: { kind: 'flat', width: 76, bottom: -55, top: 175, edgeRadius: 5, liner: 3 },
  wheels: [
    wheel('idler', 60, 76, [-30, -95], 'lower'),
    wheel('idler', 60, 76, [-30, 215], 'upper'),
    wheel('tracking', 100, 76, [-300, 379]),
    wheel('drive', 150, 76, [-600, 0]),
  ],
  rest: {
    kind: 'table',
    width: 200,
    depth: 150,
    thickness: 12,
    gap: 12,
    pattern: {
      kind: 'holes',
      at: [
        [-70, 50],
        [70, 50],
        [-70, 130],
        [70, 130],
      ],
      hole: { kind: 'tapped', thread: 'M8' },
    },
    travelY: 20,
    travelZ: 20,
  },
  lean: 0,
  keepOuts: [{ name: 'Frame behind the platen', min: [-80, -350, -60], max: [80, -12, 180] }],
  drive: { shaftSpeed: 2850, pulleyDiameter: 150, beltRating: 35, wheelRating: 40 },
};

/** A machine whose belt is ground on over a rubber-tyred wheel. */
const contact = (diameter: number, tensionHeight: number): Grinder => ({
  ...FILE,
  name: `Contact-wheel grinder, ${diameter} mm wheel, 50 mm belt`,
  belt: belt(50, 2000),
  belts: ABRASIVES,
  backings: [BARE],
  platen: { kind: 'none' },
  wheels: [
    wheel('contact', diameter, 50, [-diameter / 2, 60]),
    wheel('tracking', 75, 50, [-300, tensionHeight]),
    wheel('drive', 100, 50, [-650, 40]),
  ],
  rest: {
    kind: 'table',
    width: 150,
    depth: 120,
    thickness: 10,
    gap: 6,
    pattern: {
      kind: 'slots',
      axis: 'y',
      slots: [
        { at: -50, from: 30, to: 110, width: 8.5 },
        { at: 50, from: 30, to: 110, width: 8.5 },
      ],
    },
    travelY: 20,
    travelZ: 60,
  },
  lean: 0,
  keepOuts: [],
  drive: { shaftSpeed: 2850, pulleyDiameter: 100, beltRating: 35, wheelRating: 35 },
});

/** Grinders by size, to start from: no machine is exactly like them, so measure your own. */
export const grinderPresets: Readonly<Record<string, Grinder>> = {
  'platen-25': platen25,
  'platen-50': platen50,
  'arm-50': arm50,
  'platen-75': platen75,
  'wheel-200': contact(200, 498),
  'wheel-250': contact(250, 487),
  'wheel-355': contact(355, 461),
};
