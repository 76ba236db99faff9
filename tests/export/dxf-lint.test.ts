import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plateDxf } from '../../src/export/dxf/index.ts';
import { CUT_LAYERS, type CutEntity as Entity } from '../../src/export/dxf/entity.ts';
import { writeR12 } from '../../src/export/dxf/r12.ts';
import { writeR2000 } from '../../src/export/dxf/r2000.ts';
import { lintDxf, type DxfExpectation } from '../../src/export/lint/dxf.ts';
import { circle, path, type Vertex } from '../../src/geometry/loop.ts';
import type { Vec2 } from '../../src/geometry/vector.ts';
import { plate } from './samples.ts';

/** Every test here spoils a good file in one way and asks the lint for that one defect. */
const expected: DxfExpectation = {
  flavour: 'r2000',
  units: 'mm',
  layers: ['CUT'],
  box: { min: [0, 0], max: [100, 50] },
};
const contour = (points: readonly (readonly [number, number, number?])[]): Entity => ({
  kind: 'contour',
  layer: 'CUT',
  vertices: points.map(([x, y, bulge = 0]) => ({ x, y, bulge })),
});
const outline = contour([
  [0, 0],
  [100, 0],
  [100, 50],
  [0, 50],
]);
const hole = (x: number, y: number, radius: number): Entity => ({
  kind: 'circle',
  layer: 'CUT',
  centre: [x, y],
  radius,
});
const codes = (entities: readonly Entity[], spoil = (dxf: string): string => dxf): string[] => [
  ...new Set(
    lintDxf(spoil(writeR2000(entities, CUT_LAYERS, 'mm', [])), expected).map((i) => i.code),
  ),
];
const line = (a: Vec2, b: Vec2): Entity => ({ kind: 'line', layer: 'CUT', a, b });
const r12 = (entities: readonly Entity[]): string[] => [
  ...new Set(
    lintDxf(writeR12(entities, CUT_LAYERS, []), { ...expected, flavour: 'r12' }).map((i) => i.code),
  ),
];
const sides = [
  line([0, 0], [100, 0]),
  line([100, 0], [100, 50]),
  line([100, 50], [0, 50]),
  line([0, 50], [0, 0]),
];

describe('a sound file', () => {
  it('has no issue', () => {
    expect(codes([outline, hole(20, 20, 3)])).toEqual([]);
    expect(r12([...sides, hole(20, 20, 3)])).toEqual([]);
  });
  it('may have tangent fillets, flat arcs and a two-edged hole', () => {
    const lens = contour([
      [40, 20, 0.3],
      [60, 20, 0.3],
    ]);
    const flat = contour([
      [70, 10],
      [90, 10],
      [90, 20, 0.0005],
      [70, 20],
    ]);
    expect(codes([outline, lens, flat])).toEqual([]);
  });
});

describe('each defect is caught', () => {
  it('wrong or missing units', () => {
    expect(codes([outline], (s) => s.replace('$INSUNITS\n 70\n4', '$INSUNITS\n 70\n1'))).toContain(
      'dxf-units',
    );
    expect(codes([outline], (s) => s.replace('$MEASUREMENT', '$OTHER'))).toEqual(['dxf-units']);
  });
  it('an open contour', () => {
    expect(codes([outline], (s) => s.replace(' 90\n4\n 70\n1', ' 90\n4\n 70\n0'))).toEqual([
      'dxf-open',
    ]);
    expect(r12(sides.slice(1))).toContain('dxf-open');
  });
  it('a gap of 0.0001 mm between two lines', () => {
    expect(r12([...sides.slice(0, 3), line([0, 50], [0, 0.0001])])).toContain('dxf-open');
  });
  it('a doubled outline, line or hole', () => {
    expect(codes([outline, outline])).toEqual(['dxf-overlap']);
    expect(codes([outline, hole(20, 20, 3), hole(20, 20, 3)])).toEqual(['dxf-overlap']);
    expect(r12([...sides, line([10, 0], [90, 0])])).toContain('dxf-overlap');
  });
  it('a segment 0.005 mm beside another', () => {
    const beside = contour([
      [10, 10],
      [20, 10],
      [20, 20],
      [10, 20],
    ]);
    const next = contour([
      [20.005, 10],
      [30, 10],
      [30, 20],
      [20.005, 20],
    ]);
    expect(codes([outline, beside, next])).toContain('dxf-overlap');
  });
  it('an outline that runs back on itself', () => {
    expect(
      codes([
        contour([
          [0, 0],
          [100, 0],
          [100, 50],
          [0, 50],
          [0, 25],
          [30, 25],
          [0, 25],
        ]),
      ]),
    ).toContain('dxf-overlap');
  });
  it('a repeated corner', () => {
    expect(
      codes([
        contour([
          [0, 0],
          [100, 0],
          [100, 0],
          [100, 50],
          [0, 50],
        ]),
      ]),
    ).toEqual(['dxf-zero-length']);
  });
  it('an edge of 0.09 mm but not one of 0.11 mm', () => {
    const chamfer = (c: number): Entity =>
      contour([
        [0, 0],
        [100 - c, 0],
        [100, c],
        [100, 50],
        [0, 50],
      ]);
    expect(codes([chamfer(0.09 / Math.SQRT2)])).toEqual(['dxf-short-edge']);
    expect(codes([chamfer(0.11 / Math.SQRT2)])).toEqual([]);
  });
  it('an arc that crosses a neighbour or the far side', () => {
    expect(
      codes([
        contour([
          [0, 0],
          [100, 0],
          [100, 50, -1],
          [0, 50],
        ]),
      ]),
    ).toContain('dxf-self-intersection');
  });
  it('a hole outside, across the edge, touching, or inside another', () => {
    expect(codes([outline, hole(200, 20, 3)])).toContain('dxf-outer');
    expect(codes([outline, hole(99, 20, 3)])).toEqual(
      expect.arrayContaining(['dxf-contours-touch', 'dxf-size']),
    );
    expect(codes([outline, hole(97, 20, 3)])).toEqual(['dxf-contours-touch']);
    expect(codes([outline, hole(50, 20, 10), hole(50, 20, 3)])).toEqual(['dxf-nested']);
  });
  it('a round hole as a polyline of arcs', () => {
    expect(
      codes([
        outline,
        contour([
          [17, 20, 1],
          [23, 20, 1],
        ]),
      ]),
    ).toEqual(['dxf-round-hole']);
  });
  it("a size that is not the model's", () => {
    expect(
      codes([
        contour([
          [0, 0],
          [100.002, 0],
          [100.002, 50],
          [0, 50],
        ]),
      ]),
    ).toEqual(['dxf-size']);
  });
  it('a layer that was not asked for, and a height', () => {
    expect(codes([outline], (s) => s.replaceAll('  8\nCUT\n', '  8\nENGRAVE\n'))).toEqual([
      'dxf-layer',
      'dxf-empty',
    ]);
    expect(
      codes([outline, hole(20, 20, 3)], (s) => s.replace('20\n 30\n0\n 40', '20\n 30\n2\n 40')),
    ).toEqual(['dxf-elevation']);
  });
  it('text, dimensions, blocks, hatches, splines and ellipses', () => {
    for (const type of ['TEXT', 'MTEXT', 'DIMENSION', 'INSERT', 'HATCH', 'SPLINE', 'ELLIPSE'])
      expect(
        codes([outline], (s) =>
          s.replace(
            '  0\nSECTION\n  2\nOBJECTS',
            `  0\nSECTION\n  2\nENTITIES\n  0\n${type}\n  8\nCUT\n  0\nENDSEC\n  0\nSECTION\n  2\nOBJECTS`,
          ),
        ),
      ).toEqual(['dxf-entity']);
  });
  it('a coordinate that is no number, and an empty file', () => {
    expect(codes([outline], (s) => s.replace(' 10\n100\n', ' 10\nNaN\n'))).toContain('dxf-number');
    expect(codes([])).toEqual(['dxf-empty']);
  });
});

describe('random plates', () => {
  /** A regular polygon with every edge bulged alike: simple as long as the bulge stays small. */
  const outer = (n: number, radius: number, bulge: number): Vertex[] =>
    Array.from({ length: n }, (_, i) => ({
      x: radius * Math.cos((2 * Math.PI * i) / n),
      y: radius * Math.sin((2 * Math.PI * i) / n),
      bulge,
    }));

  it('pass in all flavours and units', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 3, max: 12 }),
        fc.double({ min: 10, max: 400, noNaN: true }),
        fc.double({ min: -0.1, max: 0.3, noNaN: true }),
        fc.double({ min: 0.05, max: 0.25, noNaN: true }),
        (n, radius, bulge, hole) => {
          const part = plate({
            outer: path(outer(n, radius, bulge)),
            holes: [circle([radius * 0.05, 0], radius * hole)],
          });
          for (const flavour of ['r2000', 'r12'] as const)
            for (const units of ['mm', 'in'] as const)
              expect(plateDxf(part, { flavour, units }).issues).toEqual([]);
        },
      ),
      { numRuns: 40, seed: 7 },
    );
  });
});
