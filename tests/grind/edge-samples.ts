import type { Blade } from '../../src/blade/schema.ts';
import type { Grinder } from '../../src/grinder/schema.ts';
import {
  planEdgeRest,
  type EdgeRestInput,
  type EdgeRestParameters,
  type EdgeRestPlan,
} from '../../src/grind/index.ts';
import { grinder as flatGrinder, strip } from './samples.ts';

/** A grinder with a contact wheel, its axis at (y, z) of the grinder frame. */
export const wheelGrinder = (
  diameter: number,
  centre: readonly [number, number],
  over: Partial<Grinder> = {},
): Grinder =>
  flatGrinder({
    platen: { kind: 'none' },
    wheels: [
      { id: 'contact', role: 'contact', diameter, width: 50, centre: [...centre], surface: 'hard' },
      {
        id: 'drive',
        role: 'drive',
        diameter: 100,
        width: 50,
        centre: [-500, -60],
        surface: 'hard',
      },
      {
        id: 'tracking',
        role: 'tracking',
        diameter: 75,
        width: 50,
        centre: [-450, 250],
        surface: 'hard',
      },
    ],
    ...over,
  });

export const parameters: EdgeRestParameters = {
  wheel: 'contact',
  stackHeight: 20,
  lip: 'strip',
  lipHeight: 1.2,
  lipThickness: 0.8,
  lipReach: 40,
  runningClearance: 0.4,
  leastWeb: 0.3,
  plungeStop: 1,
  tipOverlap: 20,
  friction: [0.2, 0.6],
  reserve: 0.1,
  wheelShare: 0.5,
  screwPitch: 1,
  divisions: 50,
  settingTolerance: 0.05,
};

export const hollow = (depth: number, centre: number, angle?: number): Blade['bevels']['left'] =>
  angle === undefined
    ? { kind: 'hollow', depth, centre }
    : { kind: 'hollow', depth, centre, angle };

/** A straight bar of a blade, hollow on both sides in a flat bevel. */
export const bar = (over: Partial<Blade> = {}, height = 40): Blade =>
  strip(
    {
      thickness: [{ u: 0, t: 4 }],
      edge: { asHeatTreated: 0.7, wanted: 0.4, shareLeft: 0.5 },
      bevels: { left: hollow(0.3, 22, 3), right: hollow(0.3, 22, 3) },
      ...over,
    },
    150,
    height,
  );

export const input = (over: Partial<EdgeRestInput> = {}): EdgeRestInput => ({
  blades: [bar()],
  grinder: wheelGrinder(200, [-101, 45]),
  sequence: [
    { belt: 'coarse', backing: 'bare', edge: 0.4, depthLeft: 0.1 },
    { belt: 'fine', backing: 'bare', edge: 0.4 },
  ],
  parameters,
  ...over,
});

export const planned = (of: EdgeRestInput): EdgeRestPlan => {
  const result = planEdgeRest(of);
  if (!result.ok) throw new Error(result.issues.map(({ message }) => message).join('\n'));
  return result.value;
};
