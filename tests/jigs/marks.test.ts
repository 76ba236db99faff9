import { describe, expect, it } from 'vitest';
import { place } from '../../src/geometry/frame.ts';
import { signedArea } from '../../src/geometry/loop-measure.ts';
import { dialOf } from '../../jigs/shared/feed.ts';
import { examplesOf, solved, valueOf } from '../family/examples.ts';

// What a maker reads the slide's place by: the knob's notches, and the ticks that pass an index.

it.each([
  [0, 0],
  [0.25, 13],
  [1.02, 1],
  [-0.02, 49],
  [-0.3, 35],
  [-2.5, 25],
])('a slide opened %s mm from zero shows %s of fifty divisions of a millimetre', (open, shown) => {
  // A turn of an M6 is 1 mm (ISO 261), and a knob that went past its zero shows what is left to it.
  expect(dialOf(open, 0)).toEqual({ turnsFromZero: open, turnsFromLast: 0, division: shown });
});

describe.each([
  ['spine-rest', 'step', 'packer'],
  ['edge-rest', 'lip-slide', 'packer'],
  ['spine-rest with strips', 'step', 'guide-strip'],
])('marks of a %s', (family, slide, still) => {
  const [name = ''] = family.split(' ');
  const example = examplesOf(name).find(({ file }) =>
    still === 'packer' ? /paring|herb/.test(file) : file.startsWith('hunting'),
  );
  if (!example) throw new Error('no example');
  const fixture = solved(example);
  const parts = valueOf(fixture.parts());

  /** Lines engraved on a part as they stand at a setting: from and to, seat frame. */
  const linesOf = (id: string, setting: string) => {
    const part = parts.find((one) => one.id === id);
    const placed = fixture.place(setting).find((one) => one.part === id);
    if (part?.kind !== 'plate' || !placed) throw new Error(`no plate ${id}`);
    return part.engraving.map((line) => line.map(([x, y]) => place(placed.frame, [x, y, 0])));
  };

  it('divide the knob in fifty, the deeper notch at its zero', () => {
    const knob = parts.find(({ id }) => id === 'knob');
    const outer = knob?.kind === 'print' ? knob.layers[0]?.profile.outer : undefined;
    if (outer?.kind !== 'path') throw new Error('no rim');
    const radius = Math.max(...outer.vertices.map(({ x, y }) => Math.hypot(x, y)));
    const notched = (turn: number, depth: number): boolean => {
      const [s, c] = [Math.sin(2 * Math.PI * turn), Math.cos(2 * Math.PI * turn)];
      const r = radius - depth;
      return outer.vertices.some(({ x, y }) => Math.hypot(x - r * s, y - r * c) < 1e-9);
    };
    const turns = Array.from({ length: 50 }, (_, i) => i / 50);
    expect(turns.filter((turn) => !notched(turn, turn === 0 ? 1.6 : 0.8))).toEqual([]);
    expect(outer.vertices).toHaveLength(150);
    // A disc less fifty small notches.
    expect(signedArea(outer)).toBeLessThan(Math.PI * radius ** 2);
    expect(signedArea(outer)).toBeGreaterThan(Math.PI * (radius - 0.8) ** 2);
  });

  it('stand a millimetre apart along the slide, every fifth longer, under the index', () => {
    for (const { id } of fixture.settings) {
      const ticks = linesOf(slide, id).map(([from, to]) => ({
        y: from?.[1] ?? NaN,
        length: Math.abs((to?.[0] ?? NaN) - (from?.[0] ?? NaN)),
      }));
      ticks.sort((a, b) => a.y - b.y);
      const middle = (ticks.length - 1) / 2;
      ticks.forEach(({ y, length }, i) => {
        expect(y - (ticks[middle]?.y ?? NaN)).toBeCloseTo(i - middle, 9);
        expect(length).toBe(i === middle ? 8 : (i - middle) % 5 === 0 ? 6 : 3);
      });
      const index = linesOf(still, id)[0]?.[0]?.[1] ?? NaN;
      expect(index).toBeGreaterThan((ticks[0]?.y ?? NaN) - 1);
      expect(index).toBeLessThan((ticks.at(-1)?.y ?? NaN) + 1);
    }
  });
});
