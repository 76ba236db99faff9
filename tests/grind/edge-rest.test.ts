import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hollowChord } from '../../src/grind/edge-rest/chord.ts';
import { centreAtLip, climbPerDepth, climbPerLip } from '../../src/grind/edge-rest/fixed-lip.ts';
import { edgeSagitta, lipRoom } from '../../src/grind/edge-rest/lip-room.ts';
import { edgeSeat, type Hollow } from '../../src/grind/edge-rest/seat.ts';
import { edgeRestSums } from '../../src/grind/edge-rest/sums.ts';
import { hollowWeb } from '../../src/grind/edge-rest/web.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const rad = Math.PI / 180;

/**
 * Stands a face at `lip`, tilted, beside the wheel and measures the bite by walking round the
 * wheel: shares nothing with the program. The limits are interpolated between two steps.
 */
const measure = ({ radius, drop, faceOffset }: Hollow, lip: number, tilt: number) => {
  const k = tilt * rad;
  let [depth, centre, lower, upper, room] = [-Infinity, 0, NaN, NaN, Infinity];
  let before: { into: number; up: number } | undefined;
  const n = 20_000;
  for (let i = 0; i <= n; i += 1) {
    const a = -Math.PI / 2 + (Math.PI * i) / n;
    const y = -radius + radius * Math.cos(a) - lip;
    const z = drop + radius * Math.sin(a);
    room = Math.min(room, Math.hypot(y, z));
    const up = -y * Math.sin(k) + z * Math.cos(k);
    const into = y * Math.cos(k) + z * Math.sin(k) + faceOffset;
    if (into > depth) [depth, centre] = [into, up];
    if (before !== undefined && before.into > 0 !== into > 0) {
      const crossing = up - (into / (into - before.into)) * (up - before.up);
      if (into > 0) lower = crossing;
      else upper = crossing;
    }
    before = { into, up };
  }
  return { depth, centre, lower, upper, room };
};

describe('an edge-down blade at a wheel', () => {
  it('is hollowed where and as deep as wanted, by walking round the wheel', () => {
    const hollow = fc.record({
      radius: between(40, 250),
      centre: between(18, 40),
      depth: between(0.05, 0.6),
      drop: between(-15, 30),
      faceOffset: fc.oneof(fc.constant(0), between(0, 1.5)),
    });
    fc.assert(
      fc.property(hollow, (given) => {
        const sums = edgeRestSums(given);
        fc.pre(sums.ok);
        if (!sums.ok) return;
        const { lip, tilt, lower, upper, room } = sums.value;
        const seen = measure(given, lip, tilt);
        // The walk takes steps of R pi / 2e4, at most 0.04 mm: its deepest point is that coarse, and
        // the depths over and under it by the square of that over 2 R.
        expect(Math.abs(seen.depth - given.depth)).toBeLessThan(2e-5);
        expect(Math.abs(seen.centre - given.centre)).toBeLessThan(0.04);
        expect(Math.abs(seen.lower - lower)).toBeLessThan(1e-3);
        expect(Math.abs(seen.upper - upper)).toBeLessThan(1e-3);
        // A step passes the nearest point by at most half its length.
        expect(seen.room).toBeGreaterThan(room - 1e-9);
        expect(seen.room).toBeLessThan(Math.hypot(room, 0.0203));
      }),
      { numRuns: 40, seed: 3, endOnFailure: true },
    );
  });

  it('leaves the room of the worked example: R 150, c 20, d 0.3', () => {
    const seat = edgeSeat({ radius: 150, centre: 20, depth: 0.3, drop: 20, faceOffset: 0 });
    expect(seat.room).toBeCloseTo(1.03, 3);
    const apart = 150 + seat.room;
    // At a fixed lip the centre climbs from 17.6 to 20.0 while the hollow deepens.
    expect(centreAtLip(150, apart, 0)).toBeCloseTo(17.6, 1);
    expect(centreAtLip(150, apart, 0.3)).toBeCloseTo(20, 9);
    expect(climbPerLip(150, seat.lip, 20)).toBeCloseTo(7.5, 1);
  });

  it('climbs at the rates its own seat moves', () => {
    const base = { radius: 150, centre: 20, depth: 0.3, drop: 25, faceOffset: 0.4 };
    const seat = edgeSeat(base);
    const apart = 150 + seat.room;
    const slope =
      (centreAtLip(150, apart, 0.301, 0.4) - centreAtLip(150, apart, 0.299, 0.4)) / 0.002;
    expect(climbPerDepth(150, 20, 0.3, 0.4)).toBeCloseTo(slope, 4);
    const moved =
      edgeSeat({ ...base, centre: 20.01 }).lip - edgeSeat({ ...base, centre: 19.99 }).lip;
    expect(climbPerLip(150, seat.lip, 20)).toBeCloseTo(0.02 / moved, 4);
  });

  it('refuses a hollow that would take the lip, naming why', () => {
    const result = edgeRestSums({ radius: 150, centre: 5, depth: 0.3, drop: 20, faceOffset: 0 });
    expect(result.ok).toBe(false);
    expect(result.issues[0]).toMatchObject({ code: 'hollow-at-lip', path: 'centre' });
    expect(result.issues[0]?.message).toMatch(/5 mm.*lip/);
  });
});

describe('the chord of a hollow', () => {
  // Circle segments, published: "Circular Sections" (matheass.eu); the "Chord Math" sheet.
  it.each([
    [12.1875, 6, 21],
    [1.2732395, 0.096919589, 0.97449536],
    [167.7404, 6, 88.92433],
  ])('R %d, sagitta %d: chord %d', (radius, depth, chord) => {
    expect(hollowChord(radius, depth) / chord).toBeCloseTo(1, 6);
  });

  // Segments of circles for radius 1 (layout of the handbook table; values computed to 20 digits).
  it.each([
    [0.000038076936, 0.017453071],
    [0.0038053019, 0.17431149],
    [0.034074174, 0.51763809],
    [0.1339746, 1],
    [0.29289322, 1.4142136],
    [0.5, 1.7320508],
    [1, 2],
  ])('radius 1, height %d: chord %d', (height, chord) => {
    expect(hollowChord(1, height)).toBeCloseTo(chord, 7);
  });

  // Sagitta of a chord, computed to 20 digits; the parabola c^2 / 8 r is always less.
  it.each([
    [100, 50, 3.17541634],
    [125, 60, 3.653389],
    [450, 40, 0.44466414],
    [915, 50, 0.341593818],
    [1000, 100, 1.25078223],
    [25, 10, 0.505102572],
  ])('R %d, chord %d: sagitta %d', (radius, chord, sagitta) => {
    expect(hollowChord(radius, sagitta)).toBeCloseTo(chord, 5);
    expect((chord * chord) / (8 * radius)).toBeLessThan(sagitta);
  });
});

describe('lips and webs', () => {
  it('has less room at the top of a lip than at the edge', () => {
    const seat = edgeSeat({ radius: 150, centre: 20, depth: 0.3, drop: 20, faceOffset: 0 });
    expect(lipRoom(150, seat.lip, 20, 0)).toBeCloseTo(seat.room, 12);
    expect(lipRoom(150, seat.lip, 20, 4)).toBeLessThan(seat.room - 0.4);
  });

  it('shifts by 1.5 mm on an edge of radius 300 over lips at +/- 30', () => {
    expect(edgeSagitta(300, 30)).toBeCloseTo(1.5, 2);
    // Sagitta of a chord, computed to 20 digits: r 100, c 50.
    expect(edgeSagitta(100, 25)).toBeCloseTo(3.17541634, 8);
  });

  it('finds the thinnest web where a walk along the hollow finds it', () => {
    const hollow = fc.record({
      radius: between(40, 250),
      depth: between(0.05, 0.5),
      centre: between(15, 35),
      edge: between(0.05, 0.4),
      angle: between(0.5, 8),
    });
    fc.assert(
      fc.property(hollow, (given) => {
        const { radius, depth, centre, edge, angle } = given;
        const half = Math.acos((radius - depth) / radius);
        let least = Infinity;
        for (let i = 0; i <= 20_000; i += 1) {
          const a = -half + (2 * half * i) / 20_000;
          const along = centre + radius * Math.sin(a);
          const into = radius * Math.cos(a) - (radius - depth);
          const k = angle * rad;
          least = Math.min(least, edge + along * Math.sin(k) - into * Math.cos(k));
        }
        expect(hollowWeb(given)).toBeCloseTo(least, 5);
      }),
      { numRuns: 40, seed: 14, endOnFailure: true },
    );
  });
});
