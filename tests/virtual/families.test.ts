import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { grindVirtually } from '../../src/virtual/grind.ts';
import { placeOn } from '../../src/blade/place.ts';
import { carriageJob, carriagePassesOf } from '../../src/virtual/from-carriage.ts';
import { edgeRestJob, edgeRestPassesOf, hollowStart } from '../../src/virtual/from-edge-rest.ts';
import { wantedHollows } from '../../src/virtual/picture/hollow.ts';
import { reportOf } from '../../src/virtual/report.ts';
import { along, edgeOf, grindLine, lineHeight } from '../../src/virtual/measure/line.ts';
import { input as carriageInput, planned as plannedCarriage } from '../grind/carriage-brute.ts';
import { input as edgeInput, planned as plannedEdge } from '../grind/edge-samples.ts';
import { flatSurface, wheelSurface } from '../../src/virtual/surface.ts';
import type { Field } from '../../src/virtual/field.ts';
import type { VirtualPass } from '../../src/virtual/types.ts';
import { bladeOf } from './blades.ts';

const rad = Math.PI / 180;
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const stroke = { width: 50, from: 26, to: 110 };

/** Depth of the left face below the blank's in one column: greatest, where over the edge, and its chord. */
const hollowOf = ({ rows, v, stock, left }: Field, i: number) => {
  const nodes = Array.from({ length: rows }, (_, j) => i * rows + j);
  const edge = v[(i + 1) * rows - 1] ?? 0;
  const cut = nodes.map((k) => ({ h: edge - (v[k] ?? 0), d: (stock[k] ?? 0) - (left[k] ?? 0) }));
  const deepest = cut.reduce((best, at) => (at.d > best.d ? at : best));
  const taken = cut.filter(({ d }) => d > 1e-9).map(({ h }) => h);
  return { ...deepest, from: Math.min(...taken), to: Math.max(...taken) };
};

describe('an edge rest before a wheel', () => {
  const rest = (lip: number, depth: number, radius: number, drop: number): VirtualPass => ({
    id: 'wheel',
    side: 'left',
    holding: {
      kind: 'edge-rest',
      depth,
      body: { seatHalf: 40, lip, lipHeight: 0.01, lipFrom: 0, lipTo: 35 },
    },
    surface: wheelSurface(radius, drop),
    edge: 0,
    stroke,
  });

  it('hollows a bar where and as wide as the closed form says', () => {
    const hollows = fc.record({
      radius: between(60, 200),
      centre: between(15, 25),
      depth: between(0.1, 0.4),
      drop: between(-15, 30),
    });
    fc.assert(
      fc.property(hollows, ({ radius, centre, depth, drop }) => {
        // Section 4 of the domain page with q = 0, the flank running down to the edge.
        const lip = Math.sqrt(Math.hypot(radius - depth, centre) ** 2 - drop ** 2) - radius;
        const { finished, passes } = grindVirtually({
          blade: bladeOf({ ricasso: 0, length: 120 }),
          passes: [rest(lip, depth, radius, drop)],
          start: { kind: 'bar' },
          resolution: { step: 6, rows: 500 },
        });
        expect(passes[0]?.missed).toEqual([]);
        const { h, d, from, to } = hollowOf(finished, 10);
        const half = Math.sqrt(2 * radius * depth - depth ** 2);
        expect(Math.abs(d - depth)).toBeLessThan(1e-4);
        // Nodes stand 0.1 mm apart, and the bottom of a hollow is flat.
        expect(Math.abs(h - centre)).toBeLessThan(0.15);
        expect(Math.abs(from - (centre - half))).toBeLessThan(0.15);
        expect(Math.abs(to - (centre + half))).toBeLessThan(0.15);
      }),
      { numRuns: 5, seed: 2 },
    );
  });

  it('climbs along a curved edge, which the flat seat lifts at its ends', () => {
    // Edge radius 300: over the seat it touches at the belt's middle, so the hollow follows the edge.
    const edge = Array.from({ length: 25 }, (_, i): [number, number] => [
      5 * i,
      50 - (300 - Math.sqrt(300 ** 2 - (5 * i - 60) ** 2)),
    ]);
    const spine = Array.from({ length: 13 }, (_, i): [number, number] => [10 * i, 0]);
    const lip = Math.hypot(150 - 0.3, 20) - 150;
    const { finished } = grindVirtually({
      blade: bladeOf({ outline: { kind: 'curves', spine, edge }, ricasso: 0 }),
      passes: [rest(lip, 0.3, 150, 0)],
      start: { kind: 'bar' },
      resolution: { step: 2, rows: 100 },
    });
    const middle = finished.us.indexOf(60);
    expect(hollowOf(finished, middle).d).toBeCloseTo(0.3, 3);
    // One pose hollows the belt's whole width along a straight line; swept over the stroke, the
    // ends of the belt reach lower on the curved edge by up to its sagitta over half the belt.
    const { from } = hollowOf(finished, middle);
    const chord = 20 - Math.sqrt(2 * 150 * 0.3 - 0.09);
    const sagitta = 300 - Math.sqrt(300 ** 2 - 25 ** 2);
    expect(from).toBeLessThan(chord + 0.3);
    expect(from).toBeGreaterThan(chord - sagitta - 0.5);
  });
});

describe('a carriage against its fence', () => {
  const pass = (angle: number, edge: number, lean: number): VirtualPass => ({
    id: 'carriage',
    side: 'left',
    holding: { kind: 'carriage', angle, place: 60, turn: 0, edgeHeight: 70 },
    surface: flatSurface(lean),
    edge,
    stroke: { ...stroke, to: 120 },
  });

  it('cuts one plane through the edge asked for, whatever the lean', () => {
    const settings = fc.record({ a: between(2, 12), e: between(0.1, 0.6), lean: between(-2, 5) });
    fc.assert(
      fc.property(settings, ({ a, e, lean }) => {
        const { finished } = grindVirtually({
          blade: bladeOf({ ricasso: 0, length: 120 }),
          passes: [pass(a, e, lean)],
          start: { kind: 'bar' },
          resolution: { step: 6, rows: 40 },
        });
        const [edge, line] = [edgeOf(finished, 'left'), grindLine(finished, 'left')];
        finished.us.forEach((u, i) => {
          if (u < 1) return;
          expect(Math.abs((edge[i] ?? 0) - e / 2)).toBeLessThan(1e-9);
          expect(Math.abs(50 - (line[i] ?? 0) - (1.5 - e / 2) / Math.tan(a * rad))).toBeLessThan(
            1e-6,
          );
        });
      }),
      { numRuns: 20, seed: 7 },
    );
  });

  it('leaves an edge that falls away thicker by its fall times the tangent', () => {
    const outline = {
      kind: 'curves' as const,
      spine: Array.from({ length: 13 }, (_, i): [number, number] => [10 * i, 0]),
      edge: Array.from({ length: 13 }, (_, i): [number, number] => [10 * i, 50 - 0.05 * 10 * i]),
    };
    const { finished } = grindVirtually({
      blade: bladeOf({ ricasso: 0, outline }),
      passes: [pass(5, 0.2, 0)],
      start: { kind: 'bar' },
      resolution: { step: 6, rows: 40 },
    });
    const edge = edgeOf(finished, 'left');
    const i = finished.us.indexOf(90);
    expect(edge[i]).toBeCloseTo(0.1 + 0.05 * 30 * Math.tan(5 * rad), 6);
  });
});

describe('plans of the other families, ground virtually', () => {
  it('hollows a bar as the edge rest plans it, both sides, two belts', () => {
    const given = edgeInput();
    const [blade] = given.blades;
    if (blade === undefined) throw new Error('no blade');
    const plan = plannedEdge(given);
    const done = grindVirtually({
      blade,
      passes: edgeRestPassesOf(blade, given, plan),
      start: hollowStart(blade),
      resolution: { step: 5, rows: 200 },
    });
    expect(done.passes.flatMap(({ missed }) => missed)).toEqual([]);
    const wanted = wantedHollows(done, edgeRestJob(blade, given, plan));
    for (const side of ['left', 'right'] as const) {
      // Where the outline is straight what stands over the wanted hollow is how far the line is off.
      const line = plan.lines.find((l) => l.side === side);
      const place = line?.places.find(({ u }) => Math.abs(u - 75) < 5);
      if (place === undefined) throw new Error('no place');
      const { us, rows, v } = done.finished;
      const i = Array.from(us).findIndex((u) => Math.abs(u - 75) < 1);
      const nodes = Array.from({ length: rows }, (_, j) => i * rows + j);
      const off = (k: number): number => (done.start[side][k] ?? 0) - (done.finished[side][k] ?? 0);
      const edge = v[(i + 1) * rows - 1] ?? 0;
      const taken = nodes.filter((k) => off(k) > 1e-9).map((k) => edge - (v[k] ?? 0));
      // Nodes are 0.2 mm apart; depth is square to the bevel of 3 degrees.
      const deepest = Math.max(...nodes.map(off)) * Math.cos(3 * rad);
      expect(Math.abs(deepest - place.depth)).toBeLessThan(2e-3);
      expect(Math.abs(Math.min(...taken) - place.lower)).toBeLessThan(0.3);
      expect(Math.abs(Math.max(...taken) - place.upper)).toBeLessThan(0.3);
      const stands = nodes.map((k) => (done.finished[side][k] ?? 0) - (wanted[side]?.[k] ?? NaN));
      expect(Math.max(...stands.map(Math.abs))).toBeLessThan(2e-3);
    }
  });

  it('grinds a short blade as the carriage plans it', () => {
    const given = carriageInput();
    const [blade] = given.blades;
    if (blade === undefined) throw new Error('no blade');
    const plan = plannedCarriage(given);
    const done = grindVirtually({
      blade,
      passes: carriagePassesOf(blade, given, plan),
      start: { kind: 'bar' },
      resolution: { step: 1, rows: 60 },
    });
    for (const side of ['left', 'right'] as const) {
      const line = grindLine(done.finished, side);
      const edge = edgeOf(done.finished, side);
      const planned = plan.lines.find((l) => l.side === side);
      for (const { u, bevelHeight, leftStanding, steers } of planned?.places ?? []) {
        if (!steers || u < 2) continue;
        const place = placeOn(done.shape, u);
        expect(Math.abs(lineHeight(done.finished, line, place) - bevelHeight)).toBeLessThan(0.02);
        const stands = along(done.finished, edge, place.edge[0]) - 0.1;
        expect(Math.abs(stands - leftStanding)).toBeLessThan(0.005);
      }
    }
  });

  it('measures a hollow against the bevel it is ground into, and converges with the grid', () => {
    const given = edgeInput();
    const [blade] = given.blades;
    if (blade === undefined) throw new Error('no blade');
    const job = edgeRestJob(blade, given, plannedEdge(given));
    const off = (rows: number): number =>
      Math.max(
        ...reportOf(job, { step: 5, rows }).model.map(({ worst }) => Math.abs(worst?.off ?? NaN)),
      );
    // A hollow runs out on its bevel under 3 to 4 degrees: the limit shows once nodes stand closely.
    expect(off(60)).toBeLessThan(0.06);
    expect(off(240)).toBeLessThan(0.01);
  });

  it('reports a carriage as its plan has it where the outline is straight', () => {
    const given = carriageInput();
    const [blade] = given.blades;
    if (blade === undefined) throw new Error('no blade');
    const { model, missed, lines } = reportOf(carriageJob(blade, given, plannedCarriage(given)));
    expect(missed).toEqual([]);
    expect(lines.map(({ side }) => side)).toEqual(['left', 'right']);
    expect(model).toHaveLength(2);
    for (const { worst } of model) expect(Math.abs(worst?.off ?? NaN)).toBeLessThan(0.02);
  });
});
