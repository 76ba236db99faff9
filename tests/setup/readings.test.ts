import { describe, expect, it } from 'vitest';
import { checkFields } from '../../src/schema/check.ts';
import { calibrate } from '../../src/setup/calibration/calibrate.ts';
import type { KnownFixture } from '../../src/setup/calibration/known.ts';
import { readingsSchema, type Readings } from '../../src/setup/readings/schema.ts';

const rad = Math.PI / 180;
const q = (value: number, uncertainty = 0.01) => ({ value, uncertainty });

const flat = (over: object = {}) => ({
  format: 'platenwright-readings',
  schema: 1,
  kind: 'flat',
  setting: '2-left',
  piece: { thickness: q(4), height: q(30, 0.1) },
  edges: 'centreline',
  places: [0.2, 0.3, 0.4].map((e, i) => ({
    label: `place ${i}`,
    edge: q(e),
    bevelHeight: q((2 - e) / Math.tan(8.25 * rad), 0.1),
  })),
  ...over,
});

const hollow = (over: object = {}) => ({
  format: 'platenwright-readings',
  schema: 1,
  kind: 'hollow',
  setting: 'a',
  places: [{ label: 'middle', depth: q(0.3), upper: q(29, 0.2) }],
  ...over,
});

const dial = { turnsFromZero: 4, perTurn: 0.57, divisions: 50 };
const carriage: KnownFixture = {
  unit: 'deg',
  settingTolerance: 0.1,
  settings: [
    { id: '1-left', set: { kind: 'carriage', angle: 8.5 }, dial: { ...dial, turnsFromZero: 5 } },
    { id: '2-left', set: { kind: 'carriage', angle: 8 }, dial },
  ],
};
const edgeRest: KnownFixture = {
  unit: 'mm',
  settingTolerance: 0.05,
  settings: [
    {
      id: 'a',
      set: { kind: 'edge-rest', radius: 150, lip: 1.03, drop: 0 },
      dial: { turnsFromZero: 1, perTurn: 1, divisions: 50 },
    },
  ],
};

const read = (data: object): Readings => {
  const result = checkFields(readingsSchema, data);
  if (!result.ok) throw new Error(result.issues.map(({ message }) => message).join(' '));
  return result.value;
};

describe('calibration from a readings file', () => {
  it('finds the offset of a carriage in degrees and corrects every setting', () => {
    const result = calibrate(carriage, read(flat()));
    expect(result.ok).toBe(true);
    if (!result.ok) return;
    expect(result.value.unit).toBe('deg');
    expect(result.value.offset).toBeCloseTo(0.25, 6);
    const [first, second] = result.value.corrected;
    expect(first?.turnsFromZero).toBeCloseTo(5 - 0.25 / 0.57, 6);
    expect(second?.turnsFromZero).toBeCloseTo(4 - 0.25 / 0.57, 6);
    expect(second?.division).toBe(28);
  });

  it('adds to what the design allowed for, and counts the rounding of the dial read', () => {
    const stored = 0.1;
    const result = calibrate(carriage, read(flat()), stored);
    if (!result.ok) throw new Error('refused');
    // With 0.1 allowed for, the dial was read at 4 - 0.1/0.57 = 3.8246 turns, rounded to 3.82.
    const rounding = (3.82 - (4 - stored / 0.57)) * 0.57;
    expect(result.value.offset).toBeCloseTo(0.25 - rounding, 6);
    expect(result.value.totalOffset).toBeCloseTo(0.35 - rounding, 6);
  });

  it('finds the offset of a lip from one limit of a hollow', () => {
    const result = calibrate(edgeRest, read(hollow()));
    if (!result.ok) throw new Error('refused');
    // By hand: half the chord, then the lip from centre and depth.
    const half = Math.sqrt(2 * 150 * 0.3 - 0.09);
    const lip = Math.hypot(149.7, 29 - half) - 150;
    expect(result.value.offset).toBeCloseTo(lip - 1.03, 6);
    expect(result.issues.map(({ code }) => code)).toEqual(['no-spare-reading']);
  });
});

describe('bad readings', () => {
  const codes = (known: KnownFixture, data: object): string[] => {
    const fields = checkFields(readingsSchema, data);
    if (!fields.ok) return fields.issues.map(({ path, code }) => `${path} ${code}`);
    const result = calibrate(known, fields.value);
    for (const { message, fix } of result.issues) {
      expect(message.length).toBeGreaterThan(20);
      expect(fix.length).toBeGreaterThan(10);
    }
    return result.ok ? [] : result.issues.map(({ path, code }) => `${path} ${code}`);
  };
  const place = { label: 'x', edge: q(0.2), bevelHeight: q(12, 0.1) };

  it('are refused by field', () => {
    expect(codes(carriage, flat({ setting: undefined }))).toEqual(['setting missing']);
    expect(codes(carriage, flat({ kind: 'round' }))).toEqual(['kind unknown-kind']);
    expect(codes(carriage, flat({ places: [] }))).toEqual(['places wrong-length']);
    const bad = (edge: object) => flat({ places: [{ ...place, edge }] });
    expect(codes(carriage, bad({ value: 0.2 }))).toEqual(['places.0.edge.uncertainty missing']);
    expect(codes(carriage, bad(q(0.2, 0)))).toEqual(['places.0.edge.uncertainty out-of-range']);
    expect(codes(carriage, bad(q(1e9)))).toEqual(['places.0.edge.value out-of-range']);
    expect(codes(carriage, bad({ value: 'thin', uncertainty: 0.1 }))).toEqual([
      'places.0.edge.value wrong-type',
    ]);
  });

  it('are refused where they contradict the piece or each other', () => {
    const places = (...all: object[]) => flat({ places: all });
    expect(codes(carriage, places(place, place))).toEqual(['places.1.label same-label']);
    expect(codes(carriage, places({ ...place, edge: q(2.5) }))).toEqual([
      'places.0.edge edge-off-piece',
    ]);
    expect(codes(carriage, { ...places(place), edges: 'across' })).toEqual([
      'places.0.edge edge-off-piece',
    ]);
    expect(codes(carriage, places({ ...place, bevelHeight: q(31) }))).toEqual([
      'places.0.bevelHeight bevel-off-piece',
    ]);
    expect(
      codes(carriage, flat({ piece: { thickness: q(4), height: q(30), spineRadius: 3 } })),
    ).toEqual(['piece.spineRadius radius-too-large']);
    const limits = { label: 'x', depth: q(0.3), lower: q(30), upper: q(20) };
    expect(codes(edgeRest, hollow({ places: [limits] }))).toEqual([
      'places.0.lower limits-crossed',
    ]);
  });

  it('are refused where they do not belong to the fixture or fix nothing', () => {
    expect(codes(carriage, flat({ setting: '9-left' }))).toEqual(['setting unknown-setting']);
    expect(codes(carriage, hollow({ setting: '2-left' }))).toEqual(['kind wrong-kind']);
    expect(codes(edgeRest, flat({ setting: 'a' }))).toEqual(['kind wrong-kind']);
    expect(codes(carriage, flat({ places: [{ label: 'x', edge: q(0.2) }] }))).toEqual([
      'places undetermined',
    ]);
    expect(codes(edgeRest, hollow({ places: [{ label: 'x', depth: q(0.3) }] }))).toEqual([
      'places undetermined',
    ]);
    expect(codes(edgeRest, hollow({ faceOffset: 12 }))).toEqual(['places out-of-reach']);
  });
});
