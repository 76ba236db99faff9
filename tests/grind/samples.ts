import type { Blade } from '../../src/blade/schema.ts';
import type { Grinder } from '../../src/grinder/schema.ts';
import type { SpineRestInput, SpineRestParameters } from '../../src/grind/index.ts';

/** A straight bar of a blade: spine and edge parallel up to a square end. */
export const strip = (over: Partial<Blade> = {}, length = 150, height = 50): Blade => ({
  name: 'Strip',
  quantity: 1,
  outline: {
    kind: 'curves',
    spine: [
      [0, 0],
      [length, 0],
    ],
    edge: [
      [0, height],
      [length, height],
    ],
  },
  ricasso: 0,
  tang: { kind: 'tang', length: 100, height: 20, thickness: 3, drop: 4 },
  thickness: [{ u: 0, t: 3 }],
  spineRadius: 0,
  edge: { asHeatTreated: 0.7, wanted: 0.2, shareLeft: 0.5 },
  bevels: { left: { kind: 'angle', angle: 3.5 }, right: { kind: 'angle', angle: 3.5 } },
  line: { follow: 'share', allowed: 1 },
  ...over,
});

/** A kitchen blade with a belly and a falling tip. */
export const kitchen210: Blade['outline'] = {
  kind: 'dimensions',
  length: 210,
  heelHeight: 50,
  bellyStart: 90,
  bellyHeight: 49,
  spineDropStart: 110,
  tipDrop: 10,
  spineSagitta: 0,
};

export const grinder = (over: Partial<Grinder> = {}): Grinder => ({
  format: 'platenwright-grinder',
  schema: 1,
  name: 'Belt grinder 50',
  belt: { width: 50, length: 1830, tracking: 2, flutter: 0.3, splice: 0.2, direction: 'down' },
  belts: [
    { id: 'coarse', grit: 60, thickness: 1.2, purpose: '' },
    { id: 'fine', grit: 120, thickness: 0.9, purpose: '' },
  ],
  backings: [
    { kind: 'none', id: 'bare', thickness: 0 },
    { kind: 'leather', id: 'leather', thickness: 5 },
  ],
  platen: { kind: 'flat', width: 50, bottom: -40, top: 160, edgeRadius: 3, liner: 0 },
  wheels: [
    { id: 'drive', role: 'drive', diameter: 100, width: 50, centre: [-200, 60], surface: 'rubber' },
  ],
  rest: {
    kind: 'table',
    width: 150,
    depth: 120,
    thickness: 8,
    gap: 3,
    pattern: { kind: 'edges' },
    travelY: 0,
    travelZ: 0,
  },
  lean: 0,
  keepOuts: [],
  drive: { shaftSpeed: 2850, pulleyDiameter: 100, beltRating: 35, wheelRating: 40 },
  ...over,
});

export const parameters: SpineRestParameters = {
  noseWidth: 60,
  stackHeight: 16,
  plungeStop: 0,
  tipOverlap: 3,
  friction: [0.2, 0.6],
  reserve: 0.1,
  screwPitch: 1,
  divisions: 50,
  settingTolerance: 0.05,
  aim: 'line',
};

export const input = (over: Partial<SpineRestInput> = {}): SpineRestInput => ({
  blades: [strip()],
  grinder: grinder(),
  sequence: [
    { belt: 'coarse', backing: 'bare', edge: 0.4, steeper: 0.2 },
    { belt: 'fine', backing: 'bare', edge: 0.2, steeper: 0 },
  ],
  parameters,
  ...over,
});
