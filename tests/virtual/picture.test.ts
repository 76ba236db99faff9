import { describe, expect, it } from 'vitest';
import { grindVirtually } from '../../src/virtual/grind.ts';
import { mapItems } from '../../src/drawing/blade-map.ts';
import { bounds } from '../../src/drawing/items.ts';
import { text } from '../../src/text/index.ts';
import { bladeMap } from '../../src/virtual/picture/map.ts';
import { bladeOf, passOf } from './blades.ts';

const rad = Math.PI / 180;
type Loop = readonly (readonly [number, number])[];

/** Area of a loop by Gauss's formula, mm^2. */
const area = (loop: Loop): number =>
  Math.abs(
    loop.reduce((sum, [x, y], i) => {
      const [p, q] = loop[(i + 1) % loop.length] ?? [0, 0];
      return sum + (x * q - p * y) / 2;
    }, 0),
  );

const ground = (length: number) => {
  const setoff = 1.6 * Math.cos(3.5 * rad) + 50 * Math.sin(3.5 * rad);
  return grindVirtually({
    blade: bladeOf({ ricasso: 0, length }),
    passes: [passOf('left', setoff, length), passOf('right', setoff, length)],
    start: { kind: 'bar' },
    resolution: { step: 3, rows: 40 },
  });
};

describe('the picture of a ground blade', () => {
  const { shape, finished } = ground(120);

  it('covers the outline with bands that do not overlap', () => {
    const { outline, bands } = bladeMap(shape, finished, 'thickness', 0.2);
    expect(area(outline)).toBeCloseTo(120 * 50, 6);
    const covered = bands.reduce(
      (sum, { loops }) => sum + loops.reduce((all, loop) => all + area(loop), 0),
      0,
    );
    expect(Math.abs(covered - 120 * 50)).toBeLessThan(1);
    expect(bands.every(({ from }, i) => i === 0 || from === bands[i - 1]?.to)).toBe(true);
  });

  it('draws a level of a wedge where the wedge is that thick', () => {
    const { bands, lines } = bladeMap(shape, finished, 'thickness', 0.2);
    // Thickness 0.2 + 2 h tan 3.5 over the edge: each band is as high as its levels ask.
    for (const { from, to, loops } of bands) {
      if (from < 0.2 || to > 2.9) continue;
      const high = (to - from) / (2 * Math.tan(3.5 * rad));
      const all = loops.reduce((sum, loop) => sum + area(loop), 0);
      expect(Math.abs(all / 120 - high)).toBeLessThan(0.05);
    }
    const b = 1.4 / Math.tan(3.5 * rad);
    const left = lines.find(({ role, side }) => role === 'ground' && side === 'left');
    for (const [u, y] of left?.points ?? []) {
      if (u > 1 && u < 117) expect(Math.abs(y - (b - 50))).toBeLessThan(0.01);
    }
  });

  it('shows nothing standing over on a blade ground as wanted', () => {
    const { bands } = bladeMap(shape, finished, 'standing', 0.2);
    const even = bands.find(({ from, to }) => from < 0 && to > 0);
    const all = (even?.loops ?? []).reduce((sum, loop) => sum + area(loop), 0);
    expect(all).toBeGreaterThan(0.98 * 120 * 50);
  });

  it('is drawn within its width, each band with a pattern and words of its own', () => {
    const { thickness, line } = text.virtual.map;
    const map = bladeMap(shape, finished, 'thickness', 0.2);
    const items = mapItems(map, { ...thickness, line }, 180);
    const box = bounds(items);
    expect(box.x0).toBeGreaterThan(-1);
    expect(box.x1).toBeLessThan(181);
    const said = items.flatMap((item) => (item.kind === 'text' ? [item.text] : []));
    for (const { from, to, loops } of map.bands)
      if (loops.length > 0) expect(said).toContain(thickness.band(from, to));
    expect(new Set(said).size).toBe(said.length);
    // One band at a time: what marks it differs from what marks every other.
    const marks = map.bands
      .filter(({ loops }) => loops.length > 0)
      .map((_, i, used) => {
        const others = used.map((band, k) => (k === i ? band : { ...band, loops: [[]] }));
        const drawn = mapItems({ ...map, bands: others, lines: [] }, { ...thickness, line }, 180);
        const inside = drawn.filter(
          (item) =>
            item.kind !== 'text' &&
            item.kind !== 'polyline' &&
            bounds([item]).y0 > 0 &&
            bounds([item]).x1 > 0,
        );
        const lean = new Set(
          inside.map((item) =>
            item.kind === 'line'
              ? Math.sign((item.b[1] - item.a[1]) * (item.b[0] - item.a[0]))
              : item.kind === 'fill'
                ? item.tone
                : item.kind,
          ),
        );
        return [...lean].map(String).sort().join();
      });
    expect(new Set(marks).size).toBe(marks.length);
  });
});
