import { describe, expect, it } from 'vitest';
import { shapeOf } from '../../src/blade/shape.ts';
import type { Vec2 } from '../../src/geometry/vector.ts';
import { undecided, type OutlineChoice } from '../../src/outline/lay.ts';
import { readOutline } from '../../src/outline/read.ts';
import { withOutline } from '../../src/outline/take.ts';
import { traceOutline } from '../../src/outline/trace.ts';
import { bladeOf, bytesOf, drawnOutline, dxfOfLines, sidesOf, svgOf } from './files.ts';

const kitchen = bladeOf('spine-rest/examples/kitchen-210');
const choice = (length: number, more: Partial<OutlineChoice> = {}): OutlineChoice => ({
  ...undecided(length),
  ...more,
});

const read = async (content: string) => {
  const result = await readOutline(bytesOf(content));
  if (!result.ok) throw new Error(result.issues.map(({ message }) => message).join(' '));
  const [contour] = result.value.contours;
  if (contour === undefined) throw new Error('no contour');
  return { ...result.value, contour, codes: result.issues.map(({ code }) => code) };
};

/** Distance of a point from a polyline, by looking at every piece: shares no code with the fit. */
const distanceTo = (line: readonly Vec2[], [x, y]: Vec2): number =>
  line.slice(1).reduce((least, [bx, by], i) => {
    const [ax, ay] = line[i] ?? [bx, by];
    const [dx, dy] = [bx - ax, by - ay];
    const t = Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy || 1)));
    return Math.min(least, Math.hypot(x - ax - t * dx, y - ay - t * dy));
  }, Infinity);

describe('an outline from a file', () => {
  it.each([
    'spine-rest/examples/kitchen-210',
    'spine-rest/examples/paring-80',
    'edge-rest/examples/slicer-200-hollow',
  ])('brings back the dimensions %s was drawn from, turned and in inches', async (file) => {
    const blade = bladeOf(file);
    if (blade.outline.kind !== 'dimensions') throw new Error('not by dimensions');
    const { length } = blade.outline;
    const lines = sidesOf(drawnOutline(blade, 27, 1 / 25.4));
    const { contour, unit, codes } = await read(dxfOfLines(lines));
    expect(unit).toBe(25.4);
    expect(codes).toEqual([]);
    const traced = traceOutline(blade, contour, choice(length + blade.ricasso + blade.tang.length));
    if (!traced.ok) throw new Error(traced.issues[0]?.message);
    expect(traced.value.plungeBy).toBe('step');
    expect(traced.value.scale).toBeCloseTo(25.4, 3);
    expect(traced.value.byDimensions?.deviation).toBeLessThan(0.02);
    const found = traced.value.byDimensions?.outline;
    if (found?.kind !== 'dimensions') throw new Error('no dimensions');
    // The belly leaves its line tangentially, so its start is soft; every other is sharp.
    expect(Math.abs(found.length - length)).toBeLessThan(0.02);
    expect(Math.abs(found.heelHeight - blade.outline.heelHeight)).toBeLessThan(0.03);
    expect(Math.abs(found.tipDrop - blade.outline.tipDrop)).toBeLessThan(0.02);
    expect(Math.abs(found.bellyStart - blade.outline.bellyStart)).toBeLessThan(0.5);
    expect(traced.value.tang).toEqual({
      length: blade.tang.length,
      height: blade.tang.height,
      drop: blade.tang.drop,
    });
  });

  it('states no less than the distance from every drawn point to the curve it takes', async () => {
    const { contour } = await read(dxfOfLines(sidesOf(drawnOutline(kitchen, -140, 1)), 4));
    const traced = traceOutline(kitchen, contour, choice(320));
    if (!traced.ok) throw new Error(traced.issues[0]?.message);
    for (const { outline, deviation } of [
      traced.value.byPoints,
      traced.value.byDimensions ?? traced.value.byPoints,
    ]) {
      const shape = shapeOf({ ...kitchen, outline });
      const n = 4000;
      const along = (value: (u: number) => number): Vec2[] =>
        Array.from({ length: n + 1 }, (_, i): Vec2 => [
          (shape.length * i) / n,
          value((shape.length * i) / n),
        ]);
      const whole = [...along(shape.spine.value), ...along(shape.edge.value).reverse()];
      const off = [...traced.value.spine, ...traced.value.edge].map((p) => distanceTo(whole, p));
      expect(Math.max(...off)).toBeLessThanOrEqual(deviation + 1e-3);
      expect(deviation).toBeLessThan(0.025);
    }
  });

  it('names doubled lines, gaps and open contours', async () => {
    const points = drawnOutline(kitchen, 0, 1);
    const lines = sidesOf(points);
    const [first, second] = [lines[10], lines[40]];
    if (!first || !second) throw new Error('too few lines');
    // One line twice, one the other way round, one shortened by 0.4 mm.
    const [a, b] = second;
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    const shorter: Vec2 = [a[0] + (b[0] - a[0]) * 0.5, a[1] + (b[1] - a[1]) * 0.5];
    const torn = [
      ...lines.slice(0, 40),
      [a, shorter] as const,
      ...lines.slice(41),
      first,
      [first[1], first[0]] as const,
    ];
    const { codes, contour } = await read(dxfOfLines(torn, 4));
    expect(codes).toContain('doubled-lines');
    expect(codes).toContain('gap-bridged');
    expect(contour.gap).toBe(0);
    expect(length).toBeLessThan(3);
    const open = await read(dxfOfLines(lines.slice(0, -1), 4));
    expect(open.codes).toContain('open-contour');
    expect(open.contour.gap).toBeGreaterThan(1);
  });

  it('follows the curves of SVG within the stated error: a circle, an ellipse, arcs, cubics', async () => {
    const circle = await read(svgOf('<circle cx="150" cy="100" r="80"/>'));
    // Area of the inscribed polygon, from the closed form pi r^2.
    expect(Math.abs(circle.contour.area / (Math.PI * 80 ** 2) - 1)).toBeLessThan(1e-3);
    const off = circle.contour.points.map(([x, y]) => Math.abs(Math.hypot(x - 150, y + 100) - 80));
    expect(Math.max(...off)).toBeLessThan(1e-6);
    const middles = circle.contour.points.map(([x, y], i) => {
      const [nx, ny] = circle.contour.points[i + 1] ?? [x, y];
      return 80 - Math.hypot((x + nx) / 2 - 150, (y + ny) / 2 + 100);
    });
    expect(Math.max(...middles)).toBeLessThanOrEqual(circle.chord * 1.01);
    const arcs = await read(svgOf('<path d="M70 100 a80 40 0 0 1 160 0 a80 40 0 0 1 -160 0z"/>'));
    expect(Math.abs(arcs.contour.area / (Math.PI * 80 * 40) - 1)).toBeLessThan(1e-3);
    // A cubic with its handles on the chord's thirds is that chord: a triangle of known area.
    const cubic = await read(svgOf('<path d="M0 0 C 30 0 60 0 90 0 L 90 60 z"/>'));
    expect(cubic.contour.area).toBeCloseTo(2700, 6);
  });

  it('follows bulges, splines and inserted blocks of DXF', async () => {
    const tags = (...list: (string | number)[]): string => list.join('\n');
    const corner = (x: number, y: number) => tags(10, x, 20, y, 42, 1);
    const round = tags(0, 'LWPOLYLINE', 8, 0, 90, 2, 70, 1, corner(0, 0), corner(60, 0));
    const file = (entities: string, blocks = '') =>
      tags(
        0,
        'SECTION',
        2,
        'BLOCKS',
        ...(blocks === '' ? [] : [blocks]),
        0,
        'ENDSEC',
        0,
        'SECTION',
        2,
        'ENTITIES',
        entities,
        0,
        'ENDSEC',
        0,
        'EOF',
        '',
      );
    const bulged = await read(file(round));
    expect(Math.abs(bulged.contour.area / (Math.PI * 30 ** 2) - 1)).toBeLessThan(1e-3);
    // The circle as a block, inserted at twice its size: four times its area.
    const block = tags(0, 'BLOCK', 8, 0, 2, 'B', 70, 0, 10, 0, 20, 0, round, 0, 'ENDBLK');
    const insert = tags(0, 'INSERT', 8, 0, 2, 'B', 10, 5, 20, 5, 41, 2, 42, 2);
    const inserted = await read(file(insert, block));
    expect(Math.abs(inserted.contour.area / (Math.PI * 60 ** 2) - 1)).toBeLessThan(1e-3);
    // One Bezier arch as a spline with end knots of full order; its area over the chord is
    // 3/5 of the box 0..90 x 0..60 for handles above the ends (Bernstein integrals).
    const knots = [0, 0, 0, 0, 1, 1, 1, 1].flatMap((k) => [40, k]);
    const points = [
      [0, 0],
      [0, 60],
      [90, 60],
      [90, 0],
    ].flatMap(([x = 0, y = 0]) => [10, x, 20, y]);
    const spline = tags(0, 'SPLINE', 8, 0, 70, 8, 71, 3, 72, 8, 73, 4, ...knots, ...points);
    const chord = tags(0, 'LINE', 8, 0, 10, 90, 20, 0, 11, 0, 21, 0);
    const arch = await read(file(tags(spline, chord)));
    expect(arch.contour.gap).toBe(0);
    expect(Math.abs(arch.contour.area / (0.6 * 90 * 60) - 1)).toBeLessThan(1e-3);
  });

  it('applies the transforms of SVG and its unit', async () => {
    const moved = await read(
      svgOf(
        '<g transform="translate(10 5) rotate(30)"><rect x="0" y="0" width="40" height="20" transform="scale(2)"/></g>',
        'width="10in" height="5in" viewBox="0 0 500 250"',
      ),
    );
    expect(moved.contour.area).toBeCloseTo(3200, 6);
    expect(moved.unit).toBeCloseTo(0.508, 9);
    // The far corner of the rectangle, by hand: (10, 5) + R(30) (80, 40), y turned up.
    const [cos, sin] = [Math.sqrt(3) / 2, 0.5];
    const far = [10 + 80 * cos - 40 * sin, -(5 + 80 * sin + 40 * cos)];
    const nearest = moved.contour.points.map(([x, y]) =>
      Math.hypot(x - (far[0] ?? 0), y - (far[1] ?? 0)),
    );
    expect(Math.min(...nearest)).toBeLessThan(1e-9);
  });

  it('tells how long the file says it is along the blade, not from corner to corner', async () => {
    // A chopper drawn by hand: 250 mm from the end of its tang to its square front, 70 mm high.
    const front = 'M0,0 H142 A8,8 0 0 1 150,8 V60 A10,10 0 0 1 140,70 H0 V44 H-100 V2 H0 Z';
    for (const way of ['', 'transform="rotate(31)"', 'transform="rotate(-90)"']) {
      const { contour } = await read(svgOf(`<path ${way} d="${front}"/>`));
      expect(Math.abs(contour.along - 250)).toBeLessThan(0.1);
    }
  });

  it('takes the blade whichever way it lies', async () => {
    const length = 320;
    for (const degrees of [0, 90, 180, 271]) {
      const { contour } = await read(dxfOfLines(sidesOf(drawnOutline(kitchen, degrees, 0.5)), 0));
      const mirrored = { ...contour, points: contour.points.map(([x, y]): Vec2 => [-x, y]) };
      for (const one of [contour, mirrored]) {
        const traced = traceOutline(kitchen, one, choice(length));
        expect(traced.ok && Math.abs(traced.value.length - 210)).toBeLessThan(0.02);
      }
    }
  });

  it('keeps thickness places and tang in step with the new length', async () => {
    const { contour } = await read(dxfOfLines(sidesOf(drawnOutline(kitchen, 0, 1)), 4));
    const traced = traceOutline(kitchen, contour, choice(160));
    if (!traced.ok) throw new Error('no trace');
    const taken = withOutline(kitchen, traced.value.byPoints.outline, traced.value);
    const last = taken.thickness.at(-1)?.u ?? 0;
    expect(last).toBeLessThanOrEqual(traced.value.length);
    expect(taken.tang.length).toBeCloseTo(55, 1);
  });

  it.each([
    ['nothing', '', 'not-an-outline'],
    ['text', 'hello', 'not-an-outline'],
    ['an SVG without lines', svgOf('<text>blade</text>'), 'no-contour'],
    ['an SVG cut short', '<svg><path d="M0 0 L', 'damaged-file'],
    ['a damaged path', svgOf('<path d="M0 0 L banana"/>'), 'damaged-file'],
    ['groups without end', `<svg>${'<g>'.repeat(5000)}`, 'damaged-file'],
    ['too many lines', svgOf(`<polygon points="${'1,2 3,4 '.repeat(40_000)}"/>`), 'too-much'],
    ['a DXF cut short', '0\nSECTION\n2\nENTITIES\n0\nLINE\n10\n', 'damaged-file'],
  ])('answers %s with a message', async (_, content, code) => {
    const result = await readOutline(bytesOf(content));
    expect(result.ok).toBe(false);
    expect(result.issues.map((issue) => issue.code)).toContain(code);
  });

  it('expands no entities of its own making', async () => {
    const bomb = `<?xml version="1.0"?><!DOCTYPE svg [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;">]>${svgOf('<path d="&b;"/>').slice(21)}`;
    const result = await readOutline(bytesOf(bomb));
    expect(result.ok).toBe(false);
  });
});
