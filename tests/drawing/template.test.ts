import { describe, expect, it } from 'vitest';
import type { Item, Sheet } from '../../src/drawing/sheet.ts';
import { templateSheets } from '../../src/drawing/template-sheets.ts';
import type { Vec2 } from '../../src/geometry/vector.ts';
import { clashes, outside } from './overlap.ts';
import { bar, base, hole, plateOf } from './parts.ts';
import { BLOCK } from './random-plate.ts';

const only = <K extends Item['kind']>(sheet: Sheet, kind: K): Extract<Item, { kind: K }>[] =>
  sheet.items.filter((item): item is Extract<Item, { kind: K }> => item.kind === kind);

const textsOf = (sheet: Sheet): string[] => only(sheet, 'text').map((t) => t.text);

/** A plate larger than any page, with a hole in two far corners. */
const large = plateOf('large', [400, 320], 6, [
  hole('A1', [20, 20], 8),
  hole('A2', [380, 300], 12.5),
  hole('A3', [200, 160], 5, 'M6'),
]);

const small = templateSheets(base, BLOCK);
const tiled = templateSheets(large, BLOCK);
const tiles = tiled.filter((sheet) => !sheet.id.endsWith('overview'));
const all = [...small, ...tiled, ...templateSheets(bar, BLOCK)];

describe('templates', () => {
  it('fit one page where the part does', () => {
    expect(small).toHaveLength(1);
  });

  // 1 in = 25.4 mm exactly, so 4 in = 101.6 mm.
  it.each([
    ['100 mm', 100],
    ['4 in', 101.6],
  ] as const)('have a bar of %s along x and along y on every page', (name, length) => {
    for (const sheet of all)
      for (const axis of [0, 1] as const) {
        const label = only(sheet, 'text').find(
          (t) => t.text === name && t.angle === (axis === 0 ? 0 : 90),
        );
        expect(label).toBeDefined();
        const across = axis === 0 ? 1 : 0;
        const near = only(sheet, 'line').filter(
          (l) =>
            l.stroke === 'visible' &&
            Math.abs(l.a[across] - (label?.at[across] ?? 0)) < 4 &&
            Math.abs(Math.abs(l.b[axis] - l.a[axis]) - length) < 1e-9,
        );
        expect(near).toHaveLength(1);
      }
  });

  it('say on every page to print at actual size, and what the part is', () => {
    for (const sheet of all) {
      const words = textsOf(sheet).join(' ');
      expect(words).toContain('Print at actual size');
      // A plate's thickness; of a bar its section and its length.
      if (words.startsWith('Bar'))
        expect(words).toContain('square bar 20 x 20, 50 mm long, quantity 1');
      else expect(words).toMatch(/Steel S235, \d+ mm, quantity 1/);
    }
    expect(all.filter((sheet) => textsOf(sheet)[0] === 'Bar')).toHaveLength(1);
  });

  it('show holes at full size with a punch mark in the middle, name and drill', () => {
    const [sheet] = small;
    if (!sheet) throw new Error('There is a page.');
    expect(textsOf(sheet)).toContain('A1 Ø5, M6');
    const circles = only(sheet, 'circle');
    const holes = circles.filter((c) => c.stroke === 'cut' && c.radius === 2.5);
    expect(holes).toHaveLength(2);
    const [one, other] = holes.map((h) => h.centre) as [Vec2, Vec2];
    expect(Math.hypot(one[0] - other[0], one[1] - other[1])).toBeCloseTo(90, 9);
    for (const { centre } of holes)
      expect(circles.some((c) => c.radius < 1 && c.centre[0] === centre[0])).toBe(true);
  });

  it('have no text on anything, on any page', () => {
    // Names on the overview stand on a cleared field of their own.
    const pages = all.filter((sheet) => !sheet.id.endsWith('overview'));
    expect(pages.flatMap(clashes)).toEqual([]);
    expect(all.flatMap(outside)).toEqual([]);
  });
});

/** Row and column of a tile from its name. */
const placeOf = (sheet: Sheet): readonly [number, number] => {
  const found = /-(\d+)-(\d+)$/.exec(sheet.id);
  return [Number(found?.[1]), Number(found?.[2])];
};

/** Crosses where the sheets are joined: narrow circles of 2 mm radius. */
const marksOf = (sheet: Sheet): Vec2[] =>
  only(sheet, 'circle')
    .filter((c) => c.radius === 2 && c.stroke === 'dimension')
    .map((c) => c.centre);

/** The shift that lays a neighbour's marks on a tile's, from the marks both share. */
const joint = (tile: Sheet, next: Sheet, side: 'right' | 'top'): Vec2 => {
  const axis = side === 'right' ? 0 : 1;
  const byAlong = (p: Vec2, q: Vec2): number => (axis === 0 ? p[1] - q[1] : p[0] - q[0]);
  const far = Math.max(...marksOf(tile).map((p) => p[axis]));
  const near = Math.min(...marksOf(next).map((p) => p[axis]));
  const mine = marksOf(tile)
    .filter((p) => Math.abs(p[axis] - far) < 1e-6)
    .sort(byAlong);
  const its = marksOf(next)
    .filter((p) => Math.abs(p[axis] - near) < 1e-6)
    .sort(byAlong);
  expect(mine).toHaveLength(2);
  expect(its).toHaveLength(2);
  const shifts = mine.map((p, i): Vec2 => [
    p[0] - (its[i]?.[0] ?? NaN),
    p[1] - (its[i]?.[1] ?? NaN),
  ]);
  const [first, second] = shifts as [Vec2, Vec2];
  expect(Math.hypot(first[0] - second[0], first[1] - second[1])).toBeLessThan(1e-9);
  return first;
};

describe('tiles', () => {
  const at = (row: number, column: number): Sheet | undefined =>
    tiles.find((sheet) => placeOf(sheet)[0] === row && placeOf(sheet)[1] === column);

  it('come with an overview that names them', () => {
    const overview = tiled.find((sheet) => sheet.id.endsWith('overview'));
    const names = overview ? textsOf(overview) : [];
    expect(tiles.length).toBeGreaterThan(3);
    for (const tile of tiles) {
      const [row, column] = placeOf(tile);
      expect(names).toContain(`row ${String(row)}, column ${String(column)}`);
      expect(textsOf(tile).join(' ')).toContain(`row ${String(row)}, column ${String(column)}`);
    }
  });

  it('laid together on their marks give the holes back within 0.1 mm', () => {
    // Every tile's shift to the first one's coordinates, walking right and up over shared marks.
    const shifts = new Map<string, Vec2>();
    const first = at(1, 1);
    if (!first) throw new Error('The first tile shows the datum.');
    const walk = (sheet: Sheet, shift: Vec2): void => {
      if (shifts.has(sheet.id)) return;
      shifts.set(sheet.id, shift);
      const [row, column] = placeOf(sheet);
      for (const [next, side] of [
        [at(row, column + 1), 'right'],
        [at(row + 1, column), 'top'],
      ] as const) {
        if (!next) continue;
        const [dx, dy] = joint(sheet, next, side);
        walk(next, [shift[0] + dx, shift[1] + dy]);
      }
    };
    walk(first, [0, 0]);
    const found = tiles.flatMap((sheet) => {
      const shift = shifts.get(sheet.id);
      return shift === undefined
        ? []
        : only(sheet, 'circle')
            .filter((c) => c.stroke === 'visible' && c.radius < 1)
            .map((c): Vec2 => [c.centre[0] + shift[0], c.centre[1] + shift[1]]);
    });
    const wanted = large.holes.map((h) => h.at);
    const [x0, y0] = wanted[0] ?? [0, 0];
    const origin = found.sort((p, q) => p[0] + p[1] - q[0] - q[1])[0] ?? [NaN, NaN];
    for (const [x, y] of wanted) {
      const nearest = Math.min(
        ...found.map((p) => Math.hypot(p[0] - origin[0] - (x - x0), p[1] - origin[1] - (y - y0))),
      );
      expect(nearest).toBeLessThan(0.1);
    }
  });

  it('that would be empty are left out', () => {
    for (const tile of tiles) {
      const drawn = tile.items.filter(
        (item) => 'stroke' in item && (item.stroke === 'cut' || item.stroke === 'centre'),
      );
      expect(drawn.length).toBeGreaterThan(0);
    }
  });
});

describe('bars', () => {
  it('are unfolded about the edge of front and left face', () => {
    const [sheet] = templateSheets(bar, BLOCK);
    if (!sheet) throw new Error('There is a page.');
    const datum = only(sheet, 'circle').find((c) => Math.abs(c.radius - 1.7) < 1e-9)?.centre;
    const punched = only(sheet, 'circle')
      .filter((c) => c.stroke === 'visible' && c.radius < 1)
      .map((c) => [c.centre[0] - (datum?.[0] ?? 0), c.centre[1] - (datum?.[1] ?? 0)] as const);
    // Front: 10 to the right, 30 up; left face: 8 from the shared edge to the left, 12 up.
    expect(punched).toEqual(
      expect.arrayContaining([
        [expect.closeTo(10), expect.closeTo(30)],
        [expect.closeTo(-8), expect.closeTo(12)],
      ]),
    );
    expect(textsOf(sheet)).toContain('fold along the edge');
  });
});
