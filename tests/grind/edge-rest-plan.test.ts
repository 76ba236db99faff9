import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Blade } from '../../src/blade/schema.ts';
import { planEdgeRest } from '../../src/grind/index.ts';
import { grindAt, gridOf, turned } from './edge-brute.ts';
import { bar, hollow, input, parameters, wheelGrinder } from './edge-samples.ts';

const rad = Math.PI / 180;
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const flankOf = (t: number, edge: number, angle: number | undefined) => (h: number) =>
  angle === undefined ? t / 2 : Math.min(t / 2, edge + h * Math.tan(angle * rad));

describe('a planned edge rest', () => {
  const design = fc.record({
    t: between(3, 6),
    edge: between(0.3, 0.8),
    angles: fc.constantFrom<[number | undefined, number | undefined]>(
      [3, 3],
      [undefined, undefined],
      [2, 5],
      [4, undefined],
    ),
    sides: fc.constantFrom<['left' | 'both' | 'right']>(['left'], ['both'], ['right']),
    diameter: between(80, 300),
    centre: between(17, 26),
    depth: between(0.15, 0.5),
    left: between(0.03, 0.1),
    drop: between(8, 34),
    lean: fc.constantFrom(0, 0, -4, 6),
    lipHeight: between(0.8, 2),
  });

  it('agrees with a section stood, tipped, cut and measured by hand, pass after pass', () => {
    let compared = 0;
    fc.assert(
      fc.property(design, (d) => {
        const [sides] = d.sides;
        const [angleLeft, angleRight] = d.angles;
        const other = (angle: number | undefined): Blade['bevels']['left'] =>
          angle === undefined ? { kind: 'none' } : { kind: 'angle', angle };
        const bevels = {
          left: sides === 'right' ? other(angleLeft) : hollow(d.depth, d.centre, angleLeft),
          right: sides === 'left' ? other(angleRight) : hollow(d.depth, d.centre, angleRight),
        };
        const blade = bar({
          bevels,
          thickness: [{ u: 0, t: d.t }],
          edge: { asHeatTreated: 1, wanted: d.edge, shareLeft: 0.5 },
        });
        // The wheel's axis before the lean: turned by it, it stands `drop` over the seat.
        const [y, z] = [-d.diameter / 2, d.drop + 20];
        const [c, s] = [Math.cos(d.lean * rad), Math.sin(d.lean * rad)];
        const axis = [c * y + s * z, c * z - s * y] as const;
        const result = planEdgeRest(
          input({
            blades: [blade],
            grinder: wheelGrinder(d.diameter, axis, { lean: d.lean }),
            sequence: [
              { belt: 'coarse', backing: 'bare', edge: d.edge, depthLeft: d.left },
              { belt: 'fine', backing: 'bare', edge: d.edge },
            ],
            parameters: { ...parameters, lipHeight: d.lipHeight, lip: 'pads' },
          }),
        );
        fc.pre(result.ok);
        if (!result.ok) return;
        const both = angleLeft !== undefined && angleRight !== undefined;
        const edgeOf = both ? d.edge / 2 : d.edge - d.t / 2;
        const [left, right] = [flankOf(d.t, edgeOf, angleLeft), flankOf(d.t, edgeOf, angleRight)];
        let grid = gridOf(40, left, right);
        for (const setting of result.value.settings) {
          const isLeft = setting.side === 'left';
          const facing = isLeft ? grid : turned(grid);
          const flank = isLeft ? left : right;
          const angle = isLeft ? angleLeft : angleRight;
          const shoulder = angle === undefined ? 0 : (d.t / 2 - edgeOf) / Math.sin(angle * rad);
          const slope = angle !== undefined && d.centre <= shoulder ? angle : 0;
          const base = gridOf(40, flank, flank).near;
          const belt = setting.belt === 'coarse' ? 1.2 : 0.9;
          const rest = {
            radius: d.diameter / 2 + belt,
            drop: d.drop,
            lip: setting.lip,
            lipHeight: d.lipHeight,
          };
          const found = grindAt(facing, base, slope, setting.depth, rest);
          const along = Math.cos(slope * rad);
          const chord = setting.upper - setting.lower;
          const [low, high] = [d.centre - chord / 2, d.centre + chord / 2];
          // Across a shoulder a hollow is deepest elsewhere than below the face of its centre.
          fc.pre(angle === undefined || (slope > 0 ? high < shoulder : low > shoulder));
          expect(Math.abs(found.tilt - setting.tilt)).toBeLessThan(5e-4);
          const calipers = (h: number): number => Math.hypot(h, flank(h) - flank(0));
          expect(Math.abs(calipers(found.lower) - setting.lower)).toBeLessThan(2e-3);
          expect(Math.abs(calipers(found.upper) - setting.upper)).toBeLessThan(2e-3);
          // The deepest point lies a depth under the face.
          const deepest = setting.centre * along + setting.depth * Math.sin(slope * rad);
          expect(Math.abs(found.deepestAt - deepest)).toBeLessThan(0.01);
          expect(Math.abs(found.web - setting.web.thickness)).toBeLessThan(2e-3);
          compared += 1;
          grid = isLeft ? found.grid : turned(found.grid);
        }
      }),
      { numRuns: 24, seed: 11, endOnFailure: true },
    );
    expect(compared).toBeGreaterThan(40);
  });
});
