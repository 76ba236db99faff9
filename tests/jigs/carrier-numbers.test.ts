import { describe, expect, it } from 'vitest';
import { screwLength } from '../../jigs/backing-carrier/place.ts';
import { boltReach, slotsOf } from '../../jigs/backing-carrier/slots.ts';
import { withValue } from '../../src/core/path.ts';
import { examplesOf, solved } from '../family/examples.ts';

const radius = examplesOf('backing-carrier').find(({ file }) => file.startsWith('radius'));
if (!radius) throw new Error('no example');

type Values = Parameters<typeof screwLength>[0];

describe('a blade on a round backing', () => {
  const tilt = (contact: number): number => {
    const design = withValue(radius.design, 'fixture.parameters.contact', contact);
    const { settings } = solved({ ...radius, design });
    return settings[0]?.readings.find(({ key }) => key === 'tilt')?.value ?? NaN;
  };

  // The face of a radius R falls back from its middle, where it stands upright: at h above it by
  // asin(h / R), and a blade laid against it there leans back as much more.
  it('leans more above the middle of the face and less below it, by the slope of the face', () => {
    const middle = Number(radius.design.fixture.parameters.contact);
    for (const h of [-15, 10, 15]) {
      const slope = (Math.asin(h / 1200) * 180) / Math.PI;
      // Belt and sheet lie over the radius: some millimetres of 1200.
      expect(Math.abs(tilt(middle + h) - tilt(middle) - slope), String(h)).toBeLessThan(0.02);
    }
  });
});

describe('screws of a carrier', () => {
  // ISO 4026 set screws M5: ... 6, 8, 10, 12, 16, 20 mm (from memory).
  it.each([
    [2, 6, 6],
    [3, 6, 8],
    [6, 6, 10],
    [9, 6, 16],
    [4, 3, 8],
  ])('over a gap of %s mm in a cheek of %s mm are %s mm long', (gap, cheek, length) => {
    expect(screwLength({ cheek } as Values, gap)).toBe(length);
  });

  // ISO 4032: nuts M6 5.2 and M8 6.8 mm high.
  it.each([
    ['M6', 5.2],
    ['M8', 6.8],
  ])('of a platen reach through an %s nut and end inside its slot', (boltThread, height) => {
    const v = { ...radius.design.fixture.parameters, boltThread, plate: 6 } as unknown as Values;
    const back = -20;
    const slots = slotsOf(v, back, 5);
    const reach = boltReach(slots, back);
    expect(reach.least).toBeCloseTo(reach.web + height, 9);
    expect(reach.most).toBeLessThan(slots.end - back);
    expect(reach.most).toBeGreaterThan(reach.least);
  });
});
