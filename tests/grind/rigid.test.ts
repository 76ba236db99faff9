import { describe, expect, it } from 'vitest';
import { placeAt } from '../../src/blade/place.ts';
import type { Blade } from '../../src/blade/schema.ts';
import { planSpineRest, type SpineRestPlan } from '../../src/grind/index.ts';
import { grinder, input, parameters, strip } from './samples.ts';

/**
 * Stands whole rigid blades on nose and step, in space and from points alone, and compares the
 * bevels they get with those of the section model: no further apart than the model's own bound.
 */
type V3 = readonly [number, number, number];
const rad = Math.PI / 180;

/** Turns a blade-frame direction (u, v, w) by tilt about x, then roll about y, then yaw about z. */
const turned = ([u, v, w]: V3, tilt: number, roll: number, yaw: number): V3 => {
  // Right side to the belt: the tip points to -x, the edge up and towards the belt.
  const [x0, y0, z0] = [
    -u,
    -v * Math.sin(tilt) + w * Math.cos(tilt),
    v * Math.cos(tilt) + w * Math.sin(tilt),
  ];
  const [x1, z1] = [
    x0 * Math.cos(roll) + z0 * Math.sin(roll),
    -x0 * Math.sin(roll) + z0 * Math.cos(roll),
  ];
  return [x1 * Math.cos(yaw) - y0 * Math.sin(yaw), x1 * Math.sin(yaw) + y0 * Math.cos(yaw), z1];
};

interface Rigid {
  /** Points along the near and the far spine corner that nose and step can meet. */
  readonly near: readonly V3[];
  readonly far: readonly V3[];
}

/** Puts the blade down at a tilt: both ends of the near corner on the seat, of the far on the step. */
const standing = ({ near, far }: Rigid, tilt: number, s: number) => {
  let [roll, yaw] = [0, 0];
  const first = <T>(list: readonly T[]): T => list[0] as T;
  const last = <T>(list: readonly T[]): T => list[list.length - 1] as T;
  const at = (p: V3): V3 => turned(p, tilt, roll, yaw);
  for (let i = 0; i < 60; i += 1) {
    const [a, b] = [at(first(near)), at(last(near))];
    roll += Math.atan((b[2] - a[2]) / (b[0] - a[0]));
    const [c, d] = [at(first(far)), at(last(far))];
    yaw -= Math.atan((d[1] - c[1]) / (d[0] - c[0]));
  }
  const low = Math.min(...near.map((p) => at(p)[2]), ...far.map((p) => at(p)[2]));
  const out = Math.max(...far.map((p) => at(p)[1]));
  return { at, dy: s - out, dz: -low };
};

/**
 * The face that the belt grinds in one section of the blade: the tilt at which that section's edge
 * is `edge` from the midplane, and the slope of the cut there.
 */
const faceOf = (
  blade: Rigid,
  section: { readonly foot: V3; readonly along: V3; readonly height: number },
  edge: number,
  s: number,
  lean: number,
): number => {
  const n = [0, Math.cos(lean * rad), Math.sin(lean * rad)] as const;
  const depth = (p: V3, { at, dy, dz }: ReturnType<typeof standing>): number => {
    const q = at(p);
    return (q[1] + dy) * n[1] + (q[2] + dz) * n[2];
  };
  const corner: V3 = [
    section.foot[0] + section.height * section.along[0],
    section.foot[1] + section.height * section.along[1],
    -edge,
  ];
  let [lo, hi] = [Math.max(1e-6, lean * rad), 0.6];
  for (let i = 0; i < 60; i += 1) {
    const q = (lo + hi) / 2;
    if (depth(corner, standing(blade, q, s)) > 0) lo = q;
    else hi = q;
  }
  const pose = standing(blade, (lo + hi) / 2, s);
  const origin = depth([0, 0, 0], pose);
  const perV = depth([section.along[0], section.along[1], 0], pose) - origin;
  const perW = depth([0, 0, 1], pose) - origin;
  return Math.atan(-perV / perW) / rad;
};

const planOf = (blade: Blade, lean: number): SpineRestPlan => {
  const result = planSpineRest(
    input({
      blades: [blade],
      grinder: grinder({ lean }),
      sequence: [{ belt: 'fine', backing: 'bare', edge: 0.2, steeper: 0 }],
      parameters: { ...parameters, noseWidth: 50 },
    }),
  );
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
};

/** The spine corners' points from u0 to u1. */
const corners = (blade: Blade, u0: number, u1: number, n: number): Rigid => {
  const us = Array.from({ length: n + 1 }, (_, i) => u0 + ((u1 - u0) * i) / n);
  const on = (sign: number) =>
    us.map((u): V3 => {
      const { spine, thickness } = placeAt(blade, u);
      return [u, spine[1], (sign * thickness) / 2];
    });
  return { near: on(-1), far: on(1) };
};

const compare = (blade: Blade, lean: number, rigidAt: (u: number) => Rigid): number => {
  const { lines, settings } = planOf(blade, lean);
  const setoff = settings.find(({ side }) => side === 'right')?.setoff ?? NaN;
  let compared = 0;
  const places = lines.find(({ side }) => side === 'right')?.places ?? [];
  for (const [i, place] of places.entries()) {
    const { u, certainty, leftStanding, thickness, bevelHeight, steers } = place;
    if (!steers || leftStanding !== 0 || i % 4 !== 0 || u < 26 || u > 124) continue;
    const { spine, slope, height } = placeAt(blade, u, 50);
    const along: V3 = [-Math.sin(slope * rad), Math.cos(slope * rad), 0];
    const angle = faceOf(
      rigidAt(u),
      { foot: [spine[0], spine[1], 0], along, height },
      0.1,
      setoff,
      lean,
    );
    const bevel = Math.min(height, (thickness / 2 - 0.1) / Math.tan(angle * rad));
    const bound = certainty.kind === 'bounded' ? certainty.by : 0;
    expect(Math.abs(bevel - bevelHeight)).toBeLessThan(bound + 1e-5);
    compared += 1;
  }
  return compared;
};

describe('the section model against whole rigid blades', () => {
  for (const lean of [0, 3]) {
    it(`is exact on a straight bar, lean ${lean}`, () => {
      const blade = strip();
      const whole = corners(blade, 0, 150, 1);
      expect(compare(blade, lean, () => whole)).toBeGreaterThan(5);
    });

    it(`keeps its bound on a tapered blade, which yaws on the step, lean ${lean}`, () => {
      const blade = strip({
        thickness: [
          { u: 0, t: 4 },
          { u: 150, t: 1.6 },
        ],
      });
      const whole = corners(blade, 0, 150, 1);
      expect(compare(blade, lean, () => whole)).toBeGreaterThan(5);
    });

    it(`keeps its bound on a hollow spine, which stands on the ends of the nose, lean ${lean}`, () => {
      const arc = strip({
        outline: {
          kind: 'dimensions',
          length: 150,
          heelHeight: 45,
          bellyStart: 140,
          bellyHeight: 45,
          spineDropStart: 145,
          tipDrop: 20,
          spineSagitta: -2,
        },
      });
      expect(compare(arc, lean, (u) => corners(arc, u - 25, u + 25, 2))).toBeGreaterThan(5);
    });
  }
});
