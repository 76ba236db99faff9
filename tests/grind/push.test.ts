import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bearing, ground } from '../../src/grind/section/ground.ts';
import { barSection, flipped } from '../../src/grind/section/section.ts';
import { pressureCentre } from '../../src/grind/spine-rest/pressure.ts';
import {
  contactOf,
  holdOn,
  pushFor,
  seatForce,
  stepForce,
} from '../../src/grind/spine-rest/push.ts';
import { pushWindow } from '../../src/grind/spine-rest/hold-place.ts';
import { inSeat } from '../../src/grind/in-seat.ts';
import { settle } from '../../src/grind/spine-rest/settle.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const rad = Math.PI / 180;

/** Solves three equations in three unknowns by Cramer's rule. */
const solve3 = (m: readonly number[][], r: readonly number[]): number[] => {
  const det = (a: readonly number[][]): number =>
    (a[0]?.[0] ?? 0) * ((a[1]?.[1] ?? 0) * (a[2]?.[2] ?? 0) - (a[1]?.[2] ?? 0) * (a[2]?.[1] ?? 0)) -
    (a[0]?.[1] ?? 0) * ((a[1]?.[0] ?? 0) * (a[2]?.[2] ?? 0) - (a[1]?.[2] ?? 0) * (a[2]?.[0] ?? 0)) +
    (a[0]?.[2] ?? 0) * ((a[1]?.[0] ?? 0) * (a[2]?.[1] ?? 0) - (a[1]?.[1] ?? 0) * (a[2]?.[0] ?? 0));
  const whole = det(m);
  return [0, 1, 2].map(
    (k) => det(m.map((row, i) => row.map((x, j) => (j === k ? (r[i] ?? 0) : x)))) / whole,
  );
};

type P = readonly [number, number];

/**
 * Balances a blade between belt, push, step and seat with the contact cut into many strips, each
 * worn as fast as it is far from the meeting point of the normals at seat and step. Gives the
 * forces of step and seat for a push of 1 square to the belt at `height` along it.
 */
const balance = (
  ends: readonly [P, P],
  seat: P,
  step: P,
  lean: number,
  friction: number,
  height: number,
): { step: number; seat: number } => {
  const t = lean * rad;
  const out: P = [Math.cos(t), Math.sin(t)];
  const down: P = [Math.sin(t), -Math.cos(t)];
  const centre: P = [seat[0], step[1]];
  const n = 20_000;
  const strips = Array.from({ length: n }, (_, i) => {
    const x = (i + 0.5) / n;
    const at: P = [
      ends[0][0] + x * (ends[1][0] - ends[0][0]),
      ends[0][1] + x * (ends[1][1] - ends[0][1]),
    ];
    // Speed of the turning section along the belt's normal, per unit of turning.
    const speed = Math.max(
      0,
      -(at[0] - centre[0]) * Math.sin(t) + (at[1] - centre[1]) * Math.cos(t),
    );
    return { at, speed };
  });
  const total = strips.reduce((sum, { speed }) => sum + speed, 0);
  const moment = (at: P, f: P): number => at[0] * f[1] - at[1] * f[0];
  let [fy, fz, m] = [0, 0, 0];
  for (const { at, speed } of strips) {
    const share = speed / total;
    const f: P = [share * (out[0] + friction * down[0]), share * (out[1] + friction * down[1])];
    [fy, fz, m] = [fy + f[0], fz + f[1], m + moment(at, f)];
  }
  const pushAt: P = [-height * Math.sin(t), height * Math.cos(t)];
  const push: P = [-out[0], -out[1]];
  // Unknowns: belt force, step (along -y), seat (along z).
  const [, s, v] = solve3(
    [
      [fy, -1, 0],
      [fz, 0, 1],
      [m, moment(step, [-1, 0]), moment(seat, [0, 1])],
    ],
    [-push[0], -push[1], -moment(pushAt, push)],
  );
  return { step: s ?? NaN, seat: v ?? NaN };
};

const situation = fc.record({
  thickness: between(1.5, 6),
  height: between(20, 70),
  rounding: fc.oneof(fc.constant(0), between(0.05, 0.6)),
  lean: fc.oneof(fc.constant(0), between(-2, 6)),
  edge: between(0.05, 0.3),
  angle: between(1, 7),
  friction: between(0.2, 0.6),
  share: between(0.5, 0.99),
  turned: fc.boolean(),
});

describe('the push on a blade on its rest', () => {
  it('gives step and seat the forces of a discretised balance', () => {
    fc.assert(
      fc.property(situation, (given) => {
        const { thickness, height, rounding, lean, edge, angle, friction, share, turned } = given;
        fc.pre(angle + lean > 0.5);
        const bar = barSection(thickness, height, (rounding * thickness) / 2);
        const section = turned ? flipped(ground(bar, { edge, angle: angle + 0.3 })) : bar;
        const face = { edge, angle };
        const seating = settle(section, face, lean);
        const contact = contactOf(section, face, seating);
        const ends = bearing(section, face)?.map((p) => inSeat(seating.origin, seating.tilt, p));
        const [low, high] = [ends?.[0], ends?.[1]];
        if (contact === undefined || low === undefined || high === undefined) return;
        const hold = holdOn(seating, contact);
        const push = share * contact[1];
        const forces = balance([low, high], seating.seat, seating.step, lean, friction, push);
        expect(stepForce(hold, push, friction)).toBeCloseTo(forces.step, 5);
        expect(seatForce(hold, push, friction)).toBeCloseTo(forces.seat, 5);
        const wanted = pushFor(hold, 0.1, friction);
        const at = balance([low, high], seating.seat, seating.step, lean, friction, wanted);
        expect(at.step).toBeCloseTo(0.1, 5);
      }),
      { numRuns: 40, seed: 12, endOnFailure: true },
    );
  });

  it('holds over its whole window at every friction, and just so at the lower end', () => {
    for (const lean of [0, 4])
      for (const [least, most] of [
        [0.2, 0.6],
        [-0.6, -0.2],
      ] as const) {
        const section = barSection(3, 50);
        const face = { edge: 0.1, angle: 3.5 };
        const seating = settle(section, face, lean);
        const pushing = { friction: [least, most], reserve: 0.1, share: 0.9 } as const;
        const window = pushWindow(section, face, seating, pushing);
        const hold = holdOn(seating, contactOf(section, face, seating) ?? [NaN, NaN]);
        // Every force of the balance is monotone in friction, but is looked at in between all the same.
        const frictions = Array.from({ length: 9 }, (_, i) => least + ((most - least) * i) / 8);
        const steps = (height: number) => frictions.map((m) => stepForce(hold, height, m));
        expect(window.to).toBeGreaterThan(window.from);
        expect(Math.min(...steps(window.from))).toBeCloseTo(0.1, 9);
        const told = steps(0.9 * window.to);
        expect(window.stepForceMin).toBeCloseTo(Math.min(...told), 9);
        expect(window.stepForceMax).toBeCloseTo(Math.max(...told), 9);
        const seats = frictions.map((m) => seatForce(hold, 0.9 * window.to, m));
        expect(window.seatForceMin).toBeCloseTo(Math.min(...seats), 9);
      }
  });

  it('meets the worked example: resultant at 39.6 mm, and nothing on the step from mid-height', () => {
    const section = barSection(3, 50);
    const face = { edge: 0.1, angle: 3.5 };
    const seating = settle(section, face, 0);
    const [low, high] = contactOf(section, face, seating) ?? [NaN, NaN];
    // (2/3)(z2^3 - z1^3) / (z2^2 - z1^2), by hand with z1 = 27.05 and z2 = 49.91.
    expect(pressureCentre(27.05, 49.91, 0)).toBeCloseTo(39.6, 1);
    // That leaves out how much the near corner lifts the contact, (T/2) sin a = 0.09 mm.
    expect(Math.abs(pressureCentre(low, high, 0) - 39.6)).toBeLessThan(0.1);
    const hold = holdOn(seating, [low, high]);
    expect(hold.centre / 50).toBeCloseTo(0.79, 2);
    for (const friction of [0.2, 0.4, 0.6]) {
      expect(stepForce(hold, 25, friction)).toBeLessThan(0);
      expect(pushFor(hold, 0, friction)).toBeCloseTo(hold.centre - friction * seating.seat[0], 9);
    }
  });
});
