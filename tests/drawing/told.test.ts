import { describe, expect, it } from 'vitest';
import { checkBars } from '../../src/drawing/check-bars.ts';
import { threadItem } from '../../src/drawing/centre-lines.ts';
import { cuttingPlans } from '../../src/drawing/cutting-plan.ts';
import { linear } from '../../src/drawing/dimension.ts';
import { crossHoleTable } from '../../src/drawing/hole-table.ts';
import { partsList, rowsOf } from '../../src/drawing/parts-list.ts';
import { partSheets } from '../../src/drawing/part-sheets.ts';
import { partViews } from '../../src/drawing/part-views.ts';
import type { Item } from '../../src/drawing/sheet.ts';
import { circle, rectangle } from '../../src/geometry/loop.ts';
import { containsPoint } from '../../src/geometry/loop-measure.ts';
import { translated } from '../../src/geometry/loop-transform.ts';
import type { Vec2 } from '../../src/geometry/vector.ts';
import type { StockPart } from '../../src/model/part.ts';
import { bar, base, screw } from './parts.ts';
import { BLOCK } from './random-plate.ts';

const textsOf = (items: readonly Item[]): string[] =>
  items.flatMap((item) => (item.kind === 'text' ? [item.text] : []));
const only = <K extends Item['kind']>(items: readonly Item[], kind: K) =>
  items.filter((item): item is Extract<Item, { kind: K }> => item.kind === kind);

/** The bar as drawn away from the origin of its own coordinates: its holes stay where they are in it. */
const away: StockPart = {
  ...bar,
  quantity: 3,
  crossHoles: bar.crossHoles.map((hole) => ({
    ...hole,
    at: [hole.at[0] + (hole.face === 'y' ? 100 : 40), hole.at[1] + 7],
  })),
  layers: bar.layers.map(({ profile, from, to }) => ({
    profile: { outer: translated(profile.outer, [100, 40]), holes: [] },
    from: from + 7,
    to: to + 7,
  })),
};

describe('a part away from the origin of its coordinates', () => {
  // Dimensions start at the datum, the corner of the part (ISO 129-1, running dimensioning).
  it('has its cross holes told from its own datum', () => {
    const cells = textsOf(crossHoleTable(away, 150).flatMap(({ items }) => items));
    expect(cells).toEqual(textsOf(crossHoleTable(bar, 150).flatMap(({ items }) => items)));
    for (const wanted of ['10', '30', '8', '12']) expect(cells).toContain(wanted);
    expect(cells.join(' ')).toMatch(/tap M6, 10 deep/);
  });

  it('is drawn like one at it', () => {
    expect(textsOf(partViews(away, 1))).toEqual(textsOf(partViews(bar, 1)));
  });
});

describe('the left view of a bar', () => {
  // First angle: the view from the left stands to the right of the front view (ISO 5456-2).
  const deep: StockPart = {
    ...bar,
    crossHoles: [
      { id: 'D1', face: 'y', at: [10, 30], size: 6, depth: 7, purpose: 'Screw' },
      { id: 'E1', face: 'x', at: [4, 12], size: 5, thread: 'M6', depth: 10, purpose: 'Lock' },
    ],
  };
  const items = partViews(deep, 1);
  const visible = only(items, 'line').filter(({ stroke }) => stroke === 'visible');
  const right = Math.max(...visible.flatMap(({ a, b }) => [a[0], b[0]]));

  it('has the front of the bar at its right', () => {
    const spot = only(items, 'circle').find(({ radius }) => radius === 2.5)?.centre;
    expect(right - (spot?.[0] ?? NaN)).toBeCloseTo(4, 9);
  });

  it('hides a hole from the front as far as it is drilled from there', () => {
    const hidden = only(items, 'line').filter(
      ({ stroke, a, b }) => stroke === 'hidden' && Math.min(a[0], b[0]) > right - 20 - 1e-9,
    );
    const along = hidden.filter(({ a, b }) => Math.abs(a[1] - b[1]) < 1e-9);
    expect(along).toHaveLength(2);
    for (const { a, b } of along)
      expect([right - a[0], right - b[0]].sort((p, q) => p - q)).toEqual([
        expect.closeTo(0, 9),
        expect.closeTo(7, 9),
      ]);
  });

  // ISO 6410-1, 4.2: about three quarters of a circle of the nominal diameter, narrow.
  it('shows a thread as three quarters of its nominal circle', () => {
    const arcs = only(items, 'arc').filter(({ stroke }) => stroke === 'dimension');
    expect(arcs.map(({ radius }) => radius)).toContain(3);
    const [arc] = threadItem([0, 0], 'M8', 2);
    if (arc?.kind !== 'arc') throw new Error('no arc');
    expect(arc.radius).toBe(8);
    expect(arc.to - arc.from).toBeGreaterThan(240);
    expect(arc.to - arc.from).toBeLessThan(300);
  });
});

describe('what a drawing tells', () => {
  it('is the diameter of what is round (ISO 129-1)', () => {
    const round: StockPart = {
      ...bar,
      crossHoles: [],
      layers: [{ profile: { outer: circle([0, 0], 6), holes: [] }, from: 0, to: 50 }],
    };
    expect(textsOf(partViews(round, 1))).toContain('Ø12');
  });

  it('is an extent that no corner has in parentheses, as auxiliary (ISO 129-1)', () => {
    const rounded = {
      ...base,
      layers: base.layers.map((layer) => ({
        ...layer,
        profile: {
          holes: [],
          // A half circle at its right end: no corner lies at x 80.
          outer: {
            kind: 'path',
            vertices: [
              { x: 0, y: 0, bulge: 0 },
              { x: 60, y: 0, bulge: 1 },
              { x: 60, y: 40, bulge: 0 },
              { x: 0, y: 40, bulge: 0 },
            ],
          } as const,
        },
      })),
      holes: [],
    };
    const texts = textsOf(partViews(rounded, 1));
    expect(texts).toContain('(80)');
    expect(texts).toContain('40');
  });

  it('is of every part how many are made, and its issue', () => {
    const block = { ...BLOCK, revision: 'K7' };
    const texts = partSheets(away, block).flatMap(({ items }) => textsOf(items));
    const after = (head: string) => texts[texts.indexOf(head) + 1];
    expect(after('Quantity')).toBe('3');
    expect(texts).toContain('K7');
  });

  it('is in the parts list the quantity, and what is to be bought by its designation', () => {
    const strips = partsList(rowsOf([{ ...base, quantity: 4 }, away, screw], []), new Map());
    const texts = textsOf(strips.flatMap(({ items }) => items));
    const row = (name: string) =>
      texts.slice(texts.indexOf(name), texts.indexOf(name) + 3).join(' ');
    expect(row('base')).toContain('base 4 Steel S235');
    expect(row('Bar')).toContain('Bar 3 Steel S235,');
    expect(texts.join(' ')).toMatch(/square bar\s+20\s+x\s+20/);
    expect(texts.join(' ')).toMatch(/ISO 4762 -\s+M6 x 20/);
  });
});

describe('a linear dimension', () => {
  // ISO 129-1: extension lines leave a gap at the outline and run a little beyond their line.
  it.each([-10, 10] as const)('reaches from what it measures to its line at %s', (at) => {
    const lines = only(linear({ axis: 'x', a: [0, 0], b: [50, 0], at, text: '50' }), 'line').filter(
      ({ a, b }) => a[0] === b[0],
    );
    expect(lines).toHaveLength(2);
    for (const { a, b } of lines) {
      expect(a[1] * Math.sign(at)).toBeGreaterThan(0);
      expect(b[1] * Math.sign(at)).toBeGreaterThan(Math.abs(at));
    }
  });
});

describe('a check bar', () => {
  it('has its ticks a centimetre and an inch apart, the last at its end', () => {
    const ticks = only(checkBars([0, 0], 'x'), 'line').filter(({ a, b }) => a[0] === b[0]);
    const at = (y: number) => ticks.filter(({ a }) => a[1] === y).map(({ a }) => a[0]);
    expect(at(0)).toEqual([0, 10, 20, 30, 40, 50, 60, 70, 80, 90, 100]);
    expect(at(7)).toEqual([0, 25.4, 50.8, 76.2, 101.6].map((x) => expect.closeTo(x, 9)));
  });
});

describe('the number of a piece on a cutting plan', () => {
  it('stands in its metal, not in a window of it, and each part is counted', () => {
    const window = (x: number, y: number) => ({
      outer: rectangle([x, y], [x + 200, y + 200]),
      holes: [rectangle([x + 30, y + 30], [x + 190, y + 190])],
    });
    const cuts = [window(10, 10), window(220, 10)];
    const small = { outer: rectangle([10, 220], [60, 260]), holes: [] };
    const pieces = [
      ...cuts.map((cut) => ({ part: 'frame', name: 'Frame', cut })),
      { part: 'small', name: 'Small', cut: small },
    ];
    const plan = {
      file: 'sheets/x.dxf',
      size: [500, 300] as Vec2,
      material: 'Steel, 6 mm',
      pieces,
    };
    const [sheet] = cuttingPlans([plan], { title: 'x', gap: 5, margin: 10 }, BLOCK);
    if (!sheet) throw new Error('no sheet');
    const frame = only(sheet.items, 'polyline').find(({ stroke }) => stroke === 'phantom')?.points;
    const [x0, y0] = frame?.[0] ?? [NaN, NaN];
    const k = ((frame?.[1]?.[0] ?? NaN) - x0) / 500;
    const spots = only(sheet.items, 'text')
      .filter(({ text }) => text === '1')
      .map(({ at }): Vec2 => [(at[0] - x0) / k, (at[1] - y0) / k]);
    for (const { outer, holes } of cuts) {
      const own = spots.filter((p) => containsPoint(outer, p));
      expect(own).toHaveLength(1);
      for (const p of own) expect(holes.some((hole) => containsPoint(hole, p))).toBe(false);
    }
    const texts = textsOf(sheet.items);
    const row = (name: string) => texts.slice(texts.indexOf(name), texts.indexOf(name) + 2);
    expect([row('Frame'), row('Small')]).toEqual([
      ['Frame', '2'],
      ['Small', '1'],
    ]);
  });
});
