import { describe, expect, it } from 'vitest';
import { shapeOf } from '../../src/blade/shape.ts';
import { grindVirtually } from '../../src/virtual/grind.ts';
import { along, edgeOf, grindLine } from '../../src/virtual/measure/line.ts';
import type { VirtualGrind } from '../../src/virtual/types.ts';
import { BODY, bladeOf, passOf, type Measures } from './blades.ts';
import { bruteGrind, type Left, type Situation } from './brute.ts';

const rad = Math.PI / 180;
const cos = Math.cos(3.5 * rad);
const sin = Math.sin(3.5 * rad);

type Points = [number, number][];

/** Points of a straight line at height v, close enough together for a spline to be straight. */
const straight = (v: number): Points => Array.from({ length: 16 }, (_, i) => [10 * i, v]);

/** An edge at 50 with a recurve of `depth` between u 40 and 110. */
const recurved = (depth: number): Points =>
  Array.from({ length: 31 }, (_, i) => {
    const share = Math.min(1, Math.max(0, (5 * i - 40) / 70));
    return [5 * i, 50 - depth * Math.sin(Math.PI * share) ** 2];
  });

interface Case {
  readonly measures: Measures;
  readonly setoff: number;
  readonly overlap: number;
  readonly yaw?: number;
  readonly us: readonly number[];
  /** Spacing of the brute-force poses away from the ends of the belt, mm. */
  readonly coarse?: number;
}

/** The same situation ground by the program and by brute force. */
const both = ({
  measures,
  setoff,
  overlap,
  yaw = 0,
  us,
  coarse = 8,
}: Case): [VirtualGrind, Left[]] => {
  const blade = bladeOf({ ricasso: 0, ...measures });
  const { length, spine, edge, thickness } = shapeOf(blade);
  const body = { ...BODY, step: { kind: 'wide' as const, half: 35, yaw } };
  const pass = passOf('left', setoff, length, { overlap, body });
  const situation: Situation = {
    length,
    spine: spine.value,
    edge: edge.value,
    thickness: thickness.value,
    stop: 0.1,
    setoff,
    beltHalf: 25,
    from: pass.stroke.from,
    to: pass.stroke.to,
    noseHalf: BODY.noseHalf,
    stepHalf: 35,
    stepTop: BODY.stepTop,
    stepYaw: yaw,
  };
  const done = grindVirtually({
    blade,
    passes: [pass],
    start: { kind: 'bar' },
    resolution: { step: 1, rows: 60 },
  });
  return [done, bruteGrind(situation, us, 0.02, coarse)];
};

const compare = (given: Case, edgeWithin: number, lineWithin: number): void => {
  const [done, left] = both(given);
  const [edge, line] = [edgeOf(done.finished, 'left'), grindLine(done.finished, 'left')];
  for (const { u, ...found } of left) {
    expect(Math.abs(along(done.finished, edge, u) - found.edge), `edge at ${u}`).toBeLessThan(
      edgeWithin,
    );
    expect(Math.abs(along(done.finished, line, u) - found.line), `line at ${u}`).toBeLessThan(
      lineWithin,
    );
  }
};

const dimensions = {
  kind: 'dimensions' as const,
  length: 150,
  heelHeight: 50,
  bellyStart: 150,
  bellyHeight: 50,
  spineDropStart: 150,
  tipDrop: 0,
  spineSagitta: 0,
};

describe('the virtual grind against brute force placement', () => {
  const thickness = [
    { u: 0, t: 3 },
    { u: 150, t: 1.5 },
  ];

  it('taper, the tip kept on the belt', () => {
    const setoff = 1.2 * cos + 50 * sin;
    compare({ measures: { thickness }, setoff, overlap: 50, us: [40, 110, 140] }, 0.001, 0.005);
  });

  it('taper, a step turned by half of it, stroked off the tip', () => {
    const setoff = 1.2 * cos + 50 * sin;
    const yaw = -Math.atan(0.005) / rad;
    compare({ measures: { thickness }, setoff, overlap: 3, yaw, us: [5, 110] }, 0.001, 0.01);
  });

  it('falling tip with belly, rolling over the nose', () => {
    const outline = {
      ...dimensions,
      length: 180,
      bellyStart: 80,
      bellyHeight: 48,
      spineDropStart: 90,
      tipDrop: 12,
    };
    const setoff = 1.6 * cos + 50 * sin;
    // The lines are sampled 2 mm apart along the stroke, and here rise with the pitch.
    compare({ measures: { outline }, setoff, overlap: 8, us: [100], coarse: 2 }, 0.001, 0.15);
  });

  it('heel drop', () => {
    // The heel's edge stands 3 mm lower and rises over the first 12 mm.
    const outline = {
      kind: 'curves' as const,
      spine: straight(0),
      edge: [[0, 47], [6, 48.5], [12, 50], ...straight(50).filter(([u]) => u > 20)] as Points,
    };
    const setoff = 1.6 * cos + 50 * sin;
    compare({ measures: { outline }, setoff, overlap: 8, us: [1, 8, 60] }, 0.001, 0.005);
  });

  it('recurve', () => {
    const outline = { kind: 'curves' as const, spine: straight(0), edge: recurved(2) };
    const setoff = 1.6 * cos + 50 * sin;
    compare({ measures: { outline }, setoff, overlap: 8, us: [20, 75], coarse: 2 }, 0.001, 0.005);
  });

  it('hollow spine, standing on the ends of the nose', () => {
    const outline = { ...dimensions, spineSagitta: -0.8 };
    const setoff = 1.6 * cos + 50 * sin;
    compare({ measures: { outline }, setoff, overlap: 8, us: [20, 75], coarse: 2 }, 0.001, 0.005);
  });
});

/** What stands at the edge over the wanted 0.2, both sides together, greatest over a stretch. */
const standing = (
  measures: Measures,
  half: number,
  overlap: number,
  from: number,
  to: number,
): number => {
  const blade = bladeOf({ ricasso: 0, ...measures });
  const { length } = shapeOf(blade);
  const setoff = half * cos + 50 * sin;
  const { finished } = grindVirtually({
    blade,
    passes: [
      passOf('left', setoff, length, { overlap }),
      passOf('right', setoff, length, { overlap }),
    ],
    start: { kind: 'bar' },
    resolution: { step: 1, rows: 40 },
  });
  const [left, right] = [edgeOf(finished, 'left'), edgeOf(finished, 'right')];
  return finished.us.reduce(
    (most, u, i) =>
      u < from || u > to ? most : Math.max(most, (left[i] ?? 0) + (right[i] ?? 0) - 0.2),
    0,
  );
};

/** Magnitudes named in section 3 of the domain page: design references, each derived again here. */
describe('metal left at the edge', () => {
  const thickness = [
    { u: 0, t: 3 },
    { u: 150, t: 1.5 },
  ];

  it('is about 0.5 where a taper of 3 to 1.5 over 150 keeps the tip on the belt', () => {
    // The flank lies on the step, so the midplane is turned by half the taper, 0.75 / 150; the belt
    // bears at its heel end and stands off by its width times that at the other, on either side.
    const derived = 2 * 50 * (0.75 / 150);
    expect(derived).toBeCloseTo(0.5, 6);
    expect(Math.abs(standing({ thickness }, 1.2, 50, 0, 149.9) - derived)).toBeLessThan(0.01);
  });

  it('is about 0.03 where it is stroked off the tip', () => {
    const derived = 2 * 3 * (0.75 / 150);
    expect(derived).toBeCloseTo(0.03, 6);
    expect(Math.abs(standing({ thickness }, 1.2, 3, 0, 150) - derived)).toBeLessThan(0.005);
  });

  it('is about 0.36 at a heel 3 mm lower, the plunge against the belt', () => {
    // The first place at full height is under the belt in every pose that covers the heel.
    const derived = 2 * 3 * sin;
    expect(derived).toBeCloseTo(0.36, 1);
    const outline = {
      kind: 'curves' as const,
      spine: straight(0),
      edge: [[0, 47], [6, 48.5], [12, 50], ...straight(50).filter(([u]) => u > 20)] as Points,
    };
    expect(Math.abs(standing({ outline }, 1.6, 8, 0, 5) - derived)).toBeLessThan(0.02);
  });

  it('is about 0.2 in a recurve of 2 mm', () => {
    // The belt bridges 50 of the 70 mm: 2 sin^2 of the rest away from where it bears.
    const bridged = 2 - 2 * Math.sin((Math.PI * 10) / 70) ** 2;
    const derived = 2 * bridged * sin;
    expect(derived).toBeCloseTo(0.2, 1);
    const outline = { kind: 'curves' as const, spine: straight(0), edge: recurved(2) };
    expect(Math.abs(standing({ outline }, 1.6, 8, 60, 90) - derived)).toBeLessThan(0.02);
  });
});
