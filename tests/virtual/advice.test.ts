import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Blade } from '../../src/blade/schema.ts';
import { planSpineRest } from '../../src/grind/spine-rest/plan.ts';
import type { SpineRestInput } from '../../src/grind/spine-rest/types.ts';
import { grinderPresets } from '../../src/grinder/presets/index.ts';
import { adviseStroke } from '../../src/virtual/advice.ts';
import { spineRestJob } from '../../src/virtual/from-plan.ts';
import { reportOf } from '../../src/virtual/report.ts';
import { BODY, bladeOf, type Measures } from './blades.ts';

const inputOf = (blade: Blade, tipOverlap: number): SpineRestInput => {
  const grinder = structuredClone(grinderPresets['platen-50']);
  if (grinder === undefined) throw new Error('no such preset');
  const [belt, backing] = [grinder.belts[0]?.id ?? '', grinder.backings[0]?.id ?? ''];
  return {
    blades: [blade],
    grinder,
    sequence: [
      { belt, backing, edge: 0.4, steeper: 0.3 },
      { belt, backing, edge: 0.2, steeper: 0 },
    ],
    parameters: {
      noseWidth: 2 * BODY.noseHalf,
      stackHeight: 12,
      plungeStop: 0,
      tipOverlap,
      friction: [0.2, 0.6],
      reserve: 0.1,
      screwPitch: 1,
      divisions: 50,
      settingTolerance: 0.05,
      aim: 'place',
    },
  };
};

const blade = (measures: Measures): Blade => ({
  ...bladeOf({ ricasso: 0, ...measures }),
  bevels: { left: { kind: 'height', height: 20 }, right: { kind: 'height', height: 20 } },
});

const taper = [
  { u: 0, t: 3 },
  { u: 150, t: 1.8 },
];

const ground = (input: SpineRestInput) => {
  const [first] = input.blades;
  const plan = planSpineRest(input);
  if (first === undefined || !plan.ok) throw new Error('plans');
  const { grind, model } = reportOf(spineRestJob(first, input, plan.value, BODY));
  return { done: grind, plan: plan.value, lines: model };
};

describe('the virtual grind beside the plan', () => {
  it('agrees with the section model on a straight bar, belt by belt', () => {
    const { done, plan, lines } = ground(inputOf(blade({ radius: 0.3 }), 6));
    expect(lines.map(({ side }) => side)).toEqual(['left', 'right']);
    for (const { places } of lines)
      for (const { off, standing, modelStanding, u } of places) {
        if (u > 149) continue;
        expect(Math.abs(off)).toBeLessThan(0.005);
        expect(Math.abs(standing - modelStanding)).toBeLessThan(0.005);
      }
    for (const { pass, volume } of done.passes) {
      const own = plan.settings.find(({ id }) => id === pass.id)?.blades[0]?.volume ?? 0;
      expect(Math.abs(volume - own)).toBeLessThan(0.01 * own + 1);
    }
  });

  it('agrees with it on a linear taper where places count, left standing included', () => {
    const { lines } = ground(inputOf(blade({ thickness: taper }), 6));
    for (const { worst } of lines) expect(Math.abs(worst?.off ?? 1)).toBeLessThan(0.02);
  });

  it('finds what the sections cannot know where a spine rolls over the nose', () => {
    const outline: Blade['outline'] = {
      kind: 'dimensions',
      length: 180,
      heelHeight: 50,
      bellyStart: 80,
      bellyHeight: 48,
      spineDropStart: 90,
      tipDrop: 10,
      spineSagitta: 0,
    };
    // A pitched blade's belt band leans across it: lines before the fall are already touched.
    const { lines } = ground(inputOf(blade({ outline }), 6));
    for (const { worst } of lines) {
      expect(Math.abs(worst?.off ?? 0)).toBeGreaterThan(0.05);
      expect(Math.abs(worst?.off ?? 9)).toBeLessThan(1.5);
    }
  });
});

describe('how far the plan says its lines can be trusted', () => {
  it('holds wherever a blade is ground as a whole', () => {
    const blades = fc.record({
      length: fc.integer({ min: 90, max: 220 }),
      height: fc.integer({ min: 26, max: 55 }),
      belly: fc.double({ min: 0.3, max: 0.7, noNaN: true }),
      fall: fc.double({ min: 0.35, max: 0.7, noNaN: true }),
      drop: fc.double({ min: 0, max: 0.15, noNaN: true }),
      thin: fc.double({ min: 0.6, max: 1, noNaN: true }),
    });
    let bounded = 0;
    fc.assert(
      fc.property(blades, ({ length, height, belly, fall, drop, thin }) => {
        const given: Blade = {
          ...bladeOf({
            ricasso: 0,
            thickness: [
              { u: 0, t: 3 },
              { u: length, t: 3 * thin },
            ],
            outline: {
              kind: 'dimensions',
              length,
              heelHeight: height,
              bellyStart: belly * length,
              bellyHeight: 0.97 * height,
              spineDropStart: fall * length,
              tipDrop: drop * height,
              spineSagitta: 0,
            },
          }),
          bevels: {
            left: { kind: 'height', height: 0.45 * height },
            right: { kind: 'height', height: 0.45 * height },
          },
        };
        const input = inputOf(given, 6);
        fc.pre(planSpineRest(input).ok);
        const { lines, plan } = ground(input);
        for (const { side, places } of lines) {
          const promised = plan.lines.find((line) => line.side === side)?.places ?? [];
          places.forEach(({ off, steers }, i) => {
            const certainty = promised[i]?.certainty;
            if (!steers || certainty?.kind === 'estimate') return;
            bounded += 1;
            const by = certainty?.kind === 'bounded' ? certainty.by : 0;
            // The grid's own error comes on top.
            expect(Math.abs(off)).toBeLessThan(by + 0.03);
          });
        }
      }),
      { numRuns: 8, seed: 12 },
    );
    expect(bounded).toBeGreaterThan(500);
  });
});

describe('the advice on the stroke', () => {
  it('sends the tip of a tapered blade off the belt', () => {
    const given = blade({ thickness: taper });
    const advice = adviseStroke(inputOf(given, 50), given, BODY);
    if (!advice.ok) throw new Error('plans');
    const { best, planned, candidates, sentence } = advice.value;
    // On the belt: 50 mm times half the taper's 1.2 / 150, on both sides.
    expect(Math.abs(planned.uneven - 0.4)).toBeLessThan(0.02);
    expect(best.tipOverlap).toBe(3);
    expect(best.uneven).toBeLessThan(0.05);
    expect(sentence).toContain('3 mm');
    const uneven = candidates.map((way) => way.uneven);
    expect([...uneven].sort((p, q) => p - q)).toEqual(uneven);
  });

  it('leaves a straight bar as it was planned', () => {
    const given = blade({});
    const advice = adviseStroke(inputOf(given, 8), given, BODY);
    if (!advice.ok) throw new Error('plans');
    expect(advice.value.best).toBe(advice.value.planned);
    expect(advice.value.best.twice).toBe(false);
  });
});
