import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Blade } from '../../src/blade/schema.ts';
import { cureLine } from '../../src/virtual/cure/cure.ts';
import type { StripWish } from '../../src/virtual/cure/types.ts';
import { meshOf } from '../../src/model/solid.ts';
import { outerFor, setoffWith } from '../../src/virtual/cure/sum.ts';
import { grindVirtually } from '../../src/virtual/grind.ts';
import { edgeOf, grindLine } from '../../src/virtual/measure/line.ts';
import { toManifold } from '../model/manifold.ts';
import { BODY, bladeOf, passOf, type Measures } from './blades.ts';

const rad = Math.PI / 180;
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const wish: StripWish = {
  allowed: 0.5,
  least: 1,
  height: 6,
  stepRadius: 8,
  centred: false,
  tape: 0.2,
  bearing: 0.3,
  make: { kind: 'print', material: 'PETG', density: 1.27 },
};

/** A blade with the same bevel height wanted on both sides, following the height. */
const wishing = (measures: Measures, height: number): Blade => ({
  ...bladeOf({ ricasso: 0, ...measures }),
  bevels: { left: { kind: 'height', height }, right: { kind: 'height', height } },
  line: { follow: 'share', allowed: wish.allowed },
});

const taper = (length: number, from: number, to: number) => [
  { u: 0, t: from },
  { u: length, t: to },
];

/** Both sides on one belt, set for the wanted bevel a quarter along the blade. */
const cureOf = (blade: Blade, length: number, t: number, h: number, b: number, more = wish) => {
  const a = Math.atan2(t / 2 - 0.1, b);
  const setoff = (t / 2 + 0.1) * Math.cos(a) + h * Math.sin(a);
  const pass = (side: 'left' | 'right') => passOf(side, setoff, length, { overlap: 6 });
  return cureLine({
    virtual: {
      blade,
      passes: [pass('left'), pass('right')],
      start: { kind: 'bar' },
      resolution: { step: 1, rows: 24 },
    },
    wish: more,
    // One belt a side: none is steeper than the last.
    tilts: new Map(),
  });
};

describe('the sum of the strip', () => {
  it('brings the edge of a bar to the belt at its angle, as a turned section shows', () => {
    const bars = fc.record({
      t: between(1.5, 5),
      h: between(25, 70),
      e: between(0, 0.4),
      p: between(0.5, 4),
      bottom: between(0, 4),
      a: between(1, 6),
      lean: between(-1, 4),
    });
    fc.assert(
      fc.property(bars, ({ t, h, e, p, bottom, a, lean }) => {
        const place = {
          height: h,
          bottom,
          near: t / 2,
          edge: e,
          tilt: (a + lean) * rad,
          lean: lean * rad,
        };
        const s = setoffWith(place, t / 2 + p);
        expect(outerFor(place, s)).toBeCloseTo(t / 2 + p, 9);
        // Turn four corners (w, v), belt at negative w: spine down on z = 0, strip back to y = s.
        const [c, k] = [Math.cos(place.tilt), Math.sin(place.tilt)];
        const turn = ([w, v]: readonly [number, number]): [number, number] => [
          w * c - v * k,
          v * c + w * k,
        ];
        const low = Math.min(turn([-t / 2, 0])[1], turn([t / 2, 0])[1]);
        const [far] = turn([t / 2 + p, bottom]);
        const [ey, ez] = turn([-e, h]);
        const [y, z] = [ey + s - far, ez - low];
        // On the face that leans back by `lean` through the seat's origin.
        expect(y * Math.cos(place.lean) + z * Math.sin(place.lean)).toBeCloseTo(0, 9);
      }),
      { numRuns: 50, seed: 1 },
    );
  });

  it('is the simple one on a square platen with the strip at the spine', () => {
    const [s, a, h, t, e] = [7, 3.5 * rad, 50, 3, 0.2];
    const p = (s - h * Math.sin(a)) / Math.cos(a) - (t + e) / 2;
    const place = { height: h, bottom: 0, near: t / 2, edge: e / 2, tilt: a, lean: 0 };
    expect(outerFor(place, s) - t / 2).toBeCloseTo(p, 12);
  });
});

describe('a strip against a rounded step', () => {
  it('grinds a straight bar as the wide step does at the setoff its thickness asks for', () => {
    const blade = bladeOf({ ricasso: 0, length: 120 });
    const [a, p] = [3.5 * rad, 1.5];
    const narrow = { ...BODY, step: { kind: 'narrow' as const, radius: 8, at: -10 } };
    const pass = passOf('left', (1.6 + p) * Math.cos(a) + 50 * Math.sin(a), 120, { body: narrow });
    const strip = { us: [0, 130], out: [1.5 + p, 1.5 + p], bottom: 0 };
    const { finished, passes } = grindVirtually({
      blade,
      passes: [{ ...pass, holding: { ...pass.holding, strip } }],
      start: { kind: 'bar' },
      resolution: { step: 4, rows: 30 },
    });
    expect(passes[0]?.missed).toEqual([]);
    const [edge, line] = [edgeOf(finished, 'left'), grindLine(finished, 'left')];
    finished.us.forEach((u, i) => {
      if (u > 117) return;
      expect(Math.abs((edge[i] ?? 0) - 0.1)).toBeLessThan(1e-5);
      expect(Math.abs(50 - (line[i] ?? 0) - 1.4 / Math.tan(a))).toBeLessThan(0.005);
    });
  });
});

describe('the cure', () => {
  it('flattens the line of a blade tapered from 3 to 1.5, and both sides with one strip', () => {
    const cure = cureOf(wishing({ thickness: taper(150, 3, 1.5) }, 20), 150, 2.625, 50, 20);
    if (!cure.ok) throw new Error(cure.issues.map((issue) => issue.message).join(' '));
    const { sides, oneForBoth, facts } = cure.value;
    expect(oneForBoth).toBe(true);
    expect(sides.map(({ side }) => side)).toEqual(['left', 'right']);
    for (const side of sides) {
      expect(side.without).toBeGreaterThan(5);
      expect(side.with).toBeLessThan(wish.allowed);
      const thinnest = Math.min(...side.profile.map(({ thickness }) => thickness));
      expect(thinnest).toBeGreaterThan(wish.least + wish.tape - 1e-9);
      // The part is the strip: its solid's volume is the profile's area times its height.
      const { layers } = side.part;
      const made = meshOf(layers);
      if (!made.ok) throw new Error('strip does not mesh');
      const { profile } = side;
      const area = profile.slice(1).reduce((sum, { u, thickness }, k) => {
        const before = profile[k];
        return before
          ? sum + ((thickness + before.thickness - 2 * wish.tape) / 2) * (u - before.u)
          : sum;
      }, 0);
      expect(toManifold(made.value).volume() / (area * wish.height)).toBeCloseTo(1, 4);
    }
    expect(new Set(facts.map(({ key }) => key)).size).toBe(facts.length);
    for (const { value } of facts) expect(Number.isFinite(value)).toBe(true);
  });

  it('holds random tapered blades within what is allowed, or says why not', () => {
    const blades = fc.record({
      length: between(100, 220),
      h: between(32, 55),
      t: between(2.2, 4),
      share: between(0.45, 0.95),
      bevel: between(0.35, 0.5),
      belly: between(0.3, 0.8),
      fall: between(0, 0.1),
      drop: between(0, 4),
    });
    const seen = { held: 0, refused: 0 };
    fc.assert(
      fc.property(blades, ({ length, h, t, share, bevel, belly, fall, drop }) => {
        const blade = wishing(
          {
            thickness: taper(length, t, t * share),
            outline: {
              kind: 'dimensions',
              length,
              heelHeight: h,
              bellyStart: belly * length,
              bellyHeight: h * (1 - fall),
              spineDropStart: 0.6 * length,
              tipDrop: drop,
              spineSagitta: 0,
            },
          },
          bevel * h,
        );
        const at = t * (1 - ((1 - share) * belly) / 2);
        const cure = cureOf(blade, length, at, h, bevel * h);
        if (cure.ok) {
          seen.held += 1;
          for (const { lines } of cure.value.sides)
            for (const { deviation, steers } of lines)
              if (steers) expect(Math.abs(deviation)).toBeLessThanOrEqual(wish.allowed);
        } else {
          seen.refused += 1;
          for (const { code, message, fix } of cure.issues) {
            expect(code).toMatch(/^strip-/);
            expect(message).toMatch(/\d/);
            expect(fix.length).toBeGreaterThan(10);
          }
        }
      }),
      { numRuns: 8, seed: 11 },
    );
    expect(seen.held).toBeGreaterThan(seen.refused);
  });

  it('refuses where the far bevel leaves no flat, and where the spine falls below the step', () => {
    const full = wishing({ thickness: taper(150, 3, 1.5) }, 49);
    const codes = (result: ReturnType<typeof cureOf>): string[] =>
      result.ok ? [] : result.issues.map(({ code }) => code);
    expect(codes(cureOf(full, 150, 2.625, 50, 49))).toContain('strip-flank');
    const falling = wishing(
      {
        thickness: taper(180, 3, 1.5),
        outline: {
          kind: 'dimensions',
          length: 180,
          heelHeight: 50,
          bellyStart: 90,
          bellyHeight: 48,
          spineDropStart: 60,
          tipDrop: 22,
          spineSagitta: 0,
        },
      },
      18,
    );
    expect(codes(cureOf(falling, 180, 2.625, 50, 18))).toContain('strip-contact');
  });

  it('refuses a line that asks the belt for two tilts at once', () => {
    // A recurve of 3 mm in 40: the belt bridges it, whatever the strip.
    const edge = Array.from({ length: 31 }, (_, i): [number, number] => {
      const share = Math.min(1, Math.max(0, (5 * i - 50) / 40));
      return [5 * i, 50 - 3 * Math.sin(Math.PI * share) ** 2];
    });
    const spine = Array.from({ length: 16 }, (_, i): [number, number] => [10 * i, 0]);
    const blade = wishing({ outline: { kind: 'curves', spine, edge } }, 20);
    const cure = cureOf(blade, 150, 3, 50, 20, { ...wish, allowed: 0.2 });
    expect(cure.ok).toBe(false);
    if (!cure.ok) expect(cure.issues.map(({ code }) => code)).toContain('strip-line');
  });
});
