import { describe, expect, it } from 'vitest';
import { circle, hexagon, rectangle } from '../../src/geometry/loop.ts';
import { boundingBox } from '../../src/geometry/loop-measure.ts';
import { audit } from '../../src/model/audit.ts';
import { COUPON_TENTHS, couponLayers, openingsOf, rowLabel } from '../../src/model/fit-coupon.ts';
import type { PrintPart } from '../../src/model/part.ts';
import { meshOf } from '../../src/model/solid.ts';
import { valueOf } from '../family/examples.ts';

const bore = circle([10, 10], 3.5);
const outer = rectangle([0, 0], [20, 20]);
const block: PrintPart = {
  kind: 'print',
  id: 'block',
  name: 'Block',
  quantity: 1,
  material: 'PETG',
  finish: '',
  density: 1.27,
  notes: [],
  tight: [],
  layers: [
    { profile: { outer, holes: [bore] }, from: 0, to: 5 },
    { profile: { outer, holes: [hexagon([10, 10], 10.4)] }, from: 5, to: 9 },
  ],
  holes: [{ id: 'bore', loop: bore, at: [10, 10], size: 7, purpose: 'M6 screw' }],
};

describe('fit coupon', () => {
  const openings = valueOf(openingsOf([block, { ...block, id: 'other', name: 'Other' }], 0.4));

  it('has a row for every different opening, its play taken off', () => {
    expect(openings.map(rowLabel)).toEqual(['6.6', '10']);
    expect(openings[0]?.uses).toEqual([
      { part: 'Block', purpose: 'M6 screw' },
      { part: 'Other', purpose: 'M6 screw' },
    ]);
    expect(openings[1]?.uses).toEqual([{ part: 'Block' }, { part: 'Other' }]);
  });

  it('adds a tenth of a millimetre to the width from column to column', () => {
    const [plate, ...raised] = valueOf(couponLayers(openings));
    const figures = raised.filter(({ to }) => to < 5);
    const widths = plate?.profile.holes.map((loop) => {
      const { min, max } = boundingBox(loop);
      return max[1] - min[1];
    });
    const wanted = [6.6, 10].flatMap((nominal) => COUPON_TENTHS.map((t) => nominal + t / 10));
    expect(widths).toHaveLength(wanted.length);
    widths?.forEach((width, i) => {
      expect(width).toBeCloseTo(wanted[i] ?? NaN, 9);
    });
    // 6, point, 6, 1, 0 and the columns 0 to 6: bars of a seven-bar display.
    expect(figures).toHaveLength(6 + 1 + 6 + 2 + 6 + (6 + 2 + 5 + 5 + 4 + 5 + 6));
  });

  it('has a pin over every column, as wide as the smallest round opening less its tenths', () => {
    const [plate, ...raised] = valueOf(couponLayers(openings));
    const pins = raised.flatMap(({ profile, from, to }) =>
      profile.outer.kind === 'circle' ? [{ ...profile.outer, from, to }] : [],
    );
    expect(pins).toHaveLength(COUPON_TENTHS.length);
    pins.forEach(({ radius, centre, from, to }, i) => {
      expect(2 * radius).toBeCloseTo(6.6 - (COUPON_TENTHS[i] ?? NaN) / 10, 9);
      expect([from, to]).toEqual([4, 10]);
      // Over the opening of its column.
      const hole = plate?.profile.holes[i];
      const box = hole ? boundingBox(hole) : undefined;
      expect(centre[0]).toBeCloseTo(((box?.min[0] ?? NaN) + (box?.max[0] ?? NaN)) / 2, 9);
    });
    const square = openings.filter(({ loop }) => loop.kind !== 'circle');
    expect(valueOf(couponLayers(square)).some(({ to }) => to > 5)).toBe(false);
  });

  it('is one sound solid with raised figures and pins', () => {
    const mesh = valueOf(meshOf(valueOf(couponLayers(openings))));
    const { sound, max } = audit(mesh);
    expect(sound).toBe(true);
    expect(max[2]).toBeCloseTo(10, 6);
  });
});
