import { describe, expect, it } from 'vitest';
import { sagittaArc, tangentArc } from '../../src/blade/curve.ts';
import { outlineLoop } from '../../src/blade/outline.ts';
import { bladeIssues } from '../../src/blade/rules.ts';
import type { Blade } from '../../src/blade/schema.ts';
import { shapeOf } from '../../src/blade/shape.ts';
import { plainBlade } from './arbitrary.ts';

/** Shoelace, written here so that it shares nothing with the program. */
const shoelace = (points: readonly { x: number; y: number }[]): number =>
  points.reduce((sum, p, i) => {
    const q = points[(i + 1) % points.length] ?? p;
    return sum + (p.x * q.y - q.x * p.y) / 2;
  }, 0);

// Radius, chord, exact sagitta: h = r - sqrt(r^2 - c^2/4) (CRC tables, circular segment).
const SAGITTA = [
  [100, 50, 3.17541634],
  [50, 30, 2.30303993],
  [125, 60, 3.653389],
  [450, 40, 0.44466414],
  [915, 50, 0.341593818],
  [1000, 100, 1.25078223],
  [25, 10, 0.505102572],
] as const;

describe('arcs of the outline', () => {
  it.each(SAGITTA)('has radius %d on a chord of %d for a sagitta of %d', (r, c, h) => {
    const arc = sagittaArc(c, h);
    // Depth of the circle of radius r below its top at a quarter of the chord from the middle.
    const quarter = h - (r - Math.sqrt(r * r - (c / 4) ** 2));
    expect(arc.value(c / 2)).toBeCloseTo(-h, 9);
    expect(arc.value(0)).toBeCloseTo(0, 9);
    expect(arc.value(c)).toBeCloseTo(0, 9);
    expect(arc.value(c / 4)).toBeCloseTo(-quarter, 6);
    expect(sagittaArc(c, -h).value(c / 4)).toBeCloseTo(quarter, 6);
  });

  it.each(SAGITTA)('leaves a line tangentially with radius %d (half chord of %d)', (r, c, h) => {
    const arc = tangentArc(0, 0, 0, c / 2, h);
    expect(arc.slope(0)).toBeCloseTo(0, 12);
    expect(arc.value(c / 2)).toBeCloseTo(h, 9);
    expect(arc.value(c / 4)).toBeCloseTo(r - Math.sqrt(r * r - (c / 4) ** 2), 6);
    // The tangent turns by twice the angle of the chord.
    expect(Math.atan(arc.slope(c / 2))).toBeCloseTo(2 * Math.atan2(h, c / 2), 9);
  });

  it('keeps the slope at the start of an arc that leaves a sloping line', () => {
    const arc = tangentArc(10, 5, -0.1, 60, -20);
    expect(arc.slope(10)).toBeCloseTo(-0.1, 12);
    expect(arc.value(10)).toBeCloseTo(5, 12);
    expect(arc.value(60)).toBeCloseTo(-20, 9);
    const [a, b] = [30, 30.001];
    expect((arc.value(b) - arc.value(a)) / (b - a)).toBeCloseTo(arc.slope(30.0005), 7);
  });
});

describe('outline by points', () => {
  // NACA 4-digit thickness with closed trailing edge (NASA TM-4741), t = 0.12.
  const naca = (x: number): number =>
    0.6 * (0.2969 * Math.sqrt(x) - 0.126 * x - 0.3516 * x ** 2 + 0.2843 * x ** 3 - 0.1036 * x ** 4);
  const primitive = (x: number): number =>
    0.6 *
    ((0.2969 * 2 * x ** 1.5) / 3 -
      0.063 * x ** 2 -
      0.1172 * x ** 3 +
      0.071075 * x ** 4 -
      0.02072 * x ** 5);
  const chord = 300;
  const middle = 18;
  const stations = Array.from({ length: 90 }, (_, i) => 0.3 + (0.7 * i) / 89);
  const side = (sign: 1 | -1): [number, number][] =>
    stations.map((x, i) => [
      (x - 0.3) * chord,
      middle + (i === stations.length - 1 ? 0 : sign * chord * naca(x)),
    ]);
  const blade: Blade = {
    ...plainBlade,
    outline: { kind: 'curves', spine: side(-1), edge: side(1) },
    ricasso: 0,
    tang: { ...plainBlade.tang, drop: 10 },
    bevels: { left: { kind: 'height', height: 15 }, right: { kind: 'height', height: 15 } },
  };

  it('agrees with the published area of the whole section', () => {
    // 0.0817060: NACA 0012, closed trailing edge, integrated in closed form.
    expect(2 * (primitive(1) - primitive(0))).toBeCloseTo(0.081706, 6);
  });

  it('is accepted', () => {
    expect(bladeIssues(blade, 'blades.0')).toEqual([]);
  });

  it('runs through published ordinates between its points', () => {
    // NACA 0012, closed trailing edge: y 5.28615 % at 50 %, 1.36505 % at 90 %.
    const { edge, spine } = shapeOf(blade);
    for (const [x, y] of [
      [0.5, 5.28615],
      [0.9, 1.36505],
    ] as const) {
      const u = (x - 0.3) * chord;
      // 90 points leave the curve by less than 5 micrometres.
      expect(edge.value(u) - middle).toBeCloseTo((y / 100) * chord, 2);
      expect(middle - spine.value(u)).toBeCloseTo((y / 100) * chord, 2);
    }
  });

  it('encloses the area of the section in closed form', () => {
    const loop = outlineLoop(blade, 0.001);
    const tang = blade.tang.length * blade.tang.height;
    const exact = 2 * chord ** 2 * (primitive(1) - primitive(0.3));
    const area = shoelace(loop.vertices) - tang;
    expect(Math.abs(area - exact) / exact).toBeLessThan(1e-4);
  });

  it('stays between its points and straight on straight ones', () => {
    const straight: Blade = {
      ...plainBlade,
      outline: {
        kind: 'curves',
        spine: [
          [0, 0],
          [50, 0],
          [100, 0],
        ],
        edge: [
          [0, 30],
          [40, 30],
          [60, 28],
          [100, 0],
        ],
      },
    };
    const { edge } = shapeOf(straight);
    for (let u = 0; u <= 40; u += 5) expect(edge.value(u)).toBeLessThanOrEqual(30);
    for (let u = 0; u < 100; u += 1) expect(edge.value(u + 1)).toBeLessThanOrEqual(edge.value(u));
    expect(shapeOf(straight).spine.value(77)).toBe(0);
  });
});

describe('whole outline', () => {
  it('encloses the closed-form area, tang and ricasso included', () => {
    const [run, rise] = [60, 30];
    const r = (run ** 2 + rise ** 2) / (2 * rise);
    const under =
      (rise - r) * run + (run * Math.sqrt(r * r - run ** 2) + r * r * Math.asin(run / r)) / 2;
    const exact = 30 * 90 + under + 100 * 15;
    const loop = outlineLoop(plainBlade, 1e-4);
    expect(shoelace(loop.vertices)).toBeGreaterThan(0);
    expect(shoelace(loop.vertices)).toBeCloseTo(exact, 1);
    const coarse = outlineLoop(plainBlade, 0.1);
    expect(coarse.vertices.length).toBeLessThan(loop.vertices.length);
    // Every point of the belly lies on its circle: centre (80, 30 - r).
    for (const { x, y } of loop.vertices)
      if (x > 80 && y > 0) expect(Math.hypot(x - 80, y - 30 + r)).toBeCloseTo(r, 6);
  });
});

describe('outlines that contradict themselves', () => {
  it.each([
    ['steep-belly', { bellyStart: 205 }],
    ['beyond-tip', { bellyStart: 215 }],
    ['steep-spine', { spineDropStart: 209, tipDrop: 20 }],
    ['tip-outside', { tipDrop: 60 }],
    ['spine-curve', { spineSagitta: -40 }],
  ] as const)('%s is mended by the value that it names', (code, values) => {
    const blade = plainBlade;
    if (blade.outline.kind !== 'dimensions') throw new Error('not by dimensions');
    const whole = { length: 210, heelHeight: 50, bellyStart: 95, bellyHeight: 49 };
    const rest = { spineDropStart: 110, tipDrop: 8, spineSagitta: 0 };
    const outline = { ...blade.outline, ...whole, ...rest, ...values };
    const found = bladeIssues({ ...blade, outline }, 'blades.0').find((one) => one.code === code);
    const key = found?.mend?.path.split('.').at(-1) ?? '';
    expect(Object.keys(values)).toContain(key);
    const mended = { ...outline, [key]: found?.mend?.value };
    const left = bladeIssues({ ...blade, outline: mended }, 'blades.0');
    expect(left.map((one) => one.code)).not.toContain(code);
  });
});
