import {
  type Blade,
  type Design,
  type GrindLine,
  placeAt,
  radians,
  type Setting,
  shapeOf,
  tan,
  text,
  wantedBevel,
  wantedHeightAt,
} from '../../src/family/index.ts';
import type { Lean } from './lean.ts';

const words = text.family.bevelGauge;

/** b = (T/2 - e) / tan a, at most the height. */
export const heightOf = (lean: Lean, u: number, angle = lean.angle): number => {
  const { height, thickness } = placeAt(lean.blade, u);
  return Math.min(height, (thickness / 2 - lean.edge) / tan(radians(angle)));
};

export const lengthOf = (blade: Blade): number => shapeOf(blade).length;

/** Places that are looked at, as shares of the length. */
const SHARES = [0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8];
const PLACES = [
  ['heel', 0.1],
  ['middle', 0.5],
  ['tip', 0.8],
] as const;

export const settingId = (index: number, { side }: Lean): string => `${String(index)}-${side}`;

/** The last belt, each side of each blade: the lean, and the bevel heights to expect. */
export const settingsOf = (design: Design, leans: readonly Lean[]): Setting[] =>
  leans.map((lean, i): Setting => {
    const { blade, side, angle, tilt } = lean;
    const last = design.sequence.at(-1);
    const length = lengthOf(blade);
    return {
      id: settingId(Math.floor(i / 2) + 1, lean),
      step: design.sequence.length,
      side,
      belt: last?.belt ?? '',
      backing: last?.backing ?? '',
      edgeStop: blade.edge.wanted,
      angle,
      readings: [{ key: 'tilt', label: words.tilt, value: tilt, unit: 'deg' }],
      progress: [
        { edge: blade.edge.wanted, angle, bevelHeight: heightOf(lean, length * PLACES[1][1]) },
      ],
      expected: PLACES.map(([place, share]) => {
        const u = length * share;
        return { blade: blade.name, place, u, bevelHeight: heightOf(lean, u) };
      }),
      // Nothing but the hand holds the blade: it may push anywhere and no step carries load.
      push: { from: 0, to: placeAt(blade, length / 2).height, stepForce: [0, 0] },
      volume: [],
      notes: [],
    };
  });

/** What the angle gives along the blade, against the line that is wanted. */
export const linesOf = (leans: readonly Lean[]): GrindLine[] =>
  leans.map((lean): GrindLine => {
    const { blade, side, angle } = lean;
    const wanted = wantedBevel(blade, side);
    return {
      blade: blade.name,
      side,
      places: SHARES.map((share) => {
        const u = lengthOf(blade) * share;
        const { height, thickness } = placeAt(blade, u);
        const bevelHeight = heightOf(lean, u);
        const aim = wanted ? wantedHeightAt(blade.line.follow, wanted, height) : 0;
        return {
          u,
          height,
          thickness,
          angle,
          bevelHeight,
          wanted: aim,
          deviation: bevelHeight - aim,
          leftStanding: 0,
          certainty: { kind: 'estimate', basis: words.byHand },
        };
      }),
    };
  });
