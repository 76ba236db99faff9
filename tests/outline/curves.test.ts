import { describe, expect, it } from 'vitest';
import { readDxf } from '../../src/outline/read-dxf.ts';
import { readSvg } from '../../src/outline/read-svg.ts';
import { readOutline } from '../../src/outline/read.ts';
import { bytesOf, svgOf } from './files.ts';

const largest = async (content: string) => {
  const read = await readOutline(bytesOf(content));
  const contour = read.ok ? read.value.contours[0] : undefined;
  if (!read.ok || !contour) throw new Error(read.issues[0]?.message ?? 'no contour');
  return { ...read.value, contour, issues: read.issues };
};

const dxf = (...entity: (string | number)[]): string =>
  [0, 'SECTION', 2, 'ENTITIES', ...entity, 0, 'ENDSEC', 0, 'EOF', ''].join('\n');

/** A circle of nine control points, squares and corners in turn (Piegl and Tiller, 7.5). */
const circle = (weights: readonly number[], flags = 12): string => {
  const r = 40;
  const ring = [
    [r, 0],
    [r, r],
    [0, r],
    [-r, r],
    [-r, 0],
    [-r, -r],
    [0, -r],
    [r, -r],
    [r, 0],
  ];
  return dxf(
    ...[0, 'SPLINE', 8, 0, 70, flags, 71, 2, 72, 12, 73, 9],
    ...[0, 0, 0, 1, 1, 2, 2, 3, 3, 4, 4, 4].flatMap((knot) => [40, knot]),
    ...weights.flatMap((weight) => [41, weight]),
    ...ring.flatMap(([x = 0, y = 0]) => [10, x, 20, y, 30, 0]),
  );
};

describe('curves of DXF', () => {
  const half = Math.SQRT1_2;

  it('follows a spline with weights: a whole circle, exactly', async () => {
    const { contour, issues } = await largest(circle([1, half, 1, half, 1, half, 1, half, 1]));
    expect(issues).toEqual([]);
    const off = contour.points.map(([x, y]) => Math.abs(Math.hypot(x, y) - 40));
    expect(Math.max(...off)).toBeLessThan(1e-9);
    expect(Math.abs(contour.area / (Math.PI * 1600) - 1)).toBeLessThan(1e-3);
  });

  it('leaves out by name what it cannot follow, and what the reader passes over', () => {
    // Weights missing, too few, or not positive; only points to pass through.
    for (const weights of [[], [1, half], [1, half, 1, half, 0, half, 1, half, 1]]) {
      const { paths, ignored } = readDxf(circle(weights));
      expect(paths).toEqual([]);
      expect([...ignored]).toEqual([['SPLINE', 1]]);
    }
    const fitted = dxf(0, 'SPLINE', 8, 0, 70, 8, 71, 3, 74, 2, 11, 0, 21, 0, 11, 9, 21, 9);
    expect([...readDxf(fitted).ignored]).toEqual([['SPLINE', 1]]);
    const others = dxf(0, 'HATCH', 8, 0, 0, 'MLINE', 8, 0, 0, 'HATCH', 8, 0);
    expect([...readDxf(others).ignored]).toEqual([
      ['HATCH', 2],
      ['MLINE', 1],
    ]);
  });
});

describe('shapes of SVG', () => {
  it('rounds the corners of a rectangle by the rules of SVG 2, 10.2', async () => {
    const area = async (attributes: string) =>
      (await largest(svgOf(`<rect x="10" y="5" width="120" height="60" ${attributes}/>`))).contour
        .area;
    const rounded = (rx: number, ry: number) => 120 * 60 - (4 - Math.PI) * rx * ry;
    const near = (found: number, wanted: number) =>
      expect(Math.abs(found / wanted - 1)).toBeLessThan(2e-4);
    near(await area('rx="20" ry="10"'), rounded(20, 10));
    // One radius alone counts for both, and neither passes half a side.
    near(await area('rx="12"'), rounded(12, 12));
    near(await area('ry="12" rx="auto"'), rounded(12, 12));
    near(await area('rx="500"'), rounded(60, 30));
    // A radius of nought leaves the corner sharp.
    near(await area('rx="0" ry="20"'), 7200);
  });

  it('reads lengths with units as CSS has them, and names a rectangle in per cent', async () => {
    const inches = '<rect width="1in" height="25.4mm" x="3px" y="0"/>';
    expect((await largest(svgOf(inches))).contour.area).toBeCloseTo(96 * 96, 6);
    const { ignored, paths } = readSvg(svgOf('<rect width="50%" height="10"/>'));
    expect(paths).toEqual([]);
    expect([...ignored]).toEqual([['rect', 1]]);
    // Without a view box a user unit is a pixel, 96 to the inch.
    expect(readSvg(svgOf('<circle r="5"/>', 'width="300mm"')).unit).toBeCloseTo(25.4 / 96, 9);
  });

  it('draws a copy where use puts it, of copies too', async () => {
    const file = `<defs><path id="half" d="M0 0H40V10Z"/><g id="both"><use xlink:href="#half"/></g></defs>
      <use href="#both" transform="scale(2)" x="30" y="7"/>`;
    const { contour } = await largest(svgOf(file));
    expect(contour.area).toBeCloseTo(800, 6);
    const [x, y] = [0, 1].map((axis) => Math.min(...contour.points.map((p) => p[axis] ?? NaN)));
    // Moved by x and y within what transform says: 2 (30, 7), and the corner 2 (0, 10); y up.
    expect([x, y]).toEqual([60, -34]);
  });

  it('names copies it does not follow, and ends with copies of copies without end', async () => {
    const strange = `<symbol id="s" viewBox="0 0 9 9"><path d="M0 0H9V9Z"/></symbol>
      <use href="#s"/><use href="#none"/><use href="other.svg#s"/>`;
    expect([...readSvg(svgOf(strange)).ignored]).toEqual([['use', 3]]);
    const endless = await readOutline(bytesOf(svgOf('<g id="a"><use href="#a"/></g>')));
    expect(endless.ok).toBe(false);
    // Each level ten copies of the one below: ten thousand million in all.
    const levels = Array.from({ length: 10 }, (_, i) => {
      const copies = `<use href="#l${String(i)}"/>`.repeat(10);
      return `<g id="l${String(i + 1)}">${copies}</g>`;
    });
    const bomb = svgOf(
      `<defs><path id="l0" d="M0 0H9V9Z"/>${levels.join('')}</defs><use href="#l10"/>`,
    );
    expect((await readOutline(bytesOf(bomb))).issues.map(({ code }) => code)).toEqual(['too-much']);
  });
});
