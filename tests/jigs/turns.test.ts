import { describe, expect, it } from 'vitest';
import type { Fixture } from '../../src/family/index.ts';
import { setupData } from '../../src/make/setup-data.ts';
import { dot3, sub3, type Vec3 } from '../../src/geometry/vector.ts';
import { examplesOf, solved } from '../family/examples.ts';

// How far a screw is turned, read off the solids as they stand in the assembly: what the set-up
// sheet tells a maker to turn must bring the slide there. Pitch of the coarse M6: 1 mm (ISO 261).

const PITCH = 1;

/** Where the slide that a screw moves stands on what holds the screw, mm; growing as it opens. */
type Slid = (fixture: Fixture, setting: string) => number;

const standing = (fixture: Fixture, setting: string, name: string) => {
  const found = fixture.place(setting).find((one) => one.name === name);
  if (!found) throw new Error(`no ${name}`);
  return found.frame;
};

const alongBase: Slid = (fixture, setting) => {
  const [step, base] = ['step', 'base'].map((name) => standing(fixture, setting, name).origin);
  return dot3(sub3(step as Vec3, base as Vec3), [0, 1, 0]);
};

const outOfSole: Slid = (fixture, setting) => {
  const sole = standing(fixture, setting, 'sole');
  return -dot3(sub3(standing(fixture, setting, 'heel-screw').origin, sole.origin), sole.z);
};

/** Turns in words, as a sheet tells them: positive out. */
const signed = (told: string): number => {
  if (told === 'as it is') return 0;
  const [, turns, divisions, way] = /^(\d+) t (\d+) d (in|out)$/.exec(told) ?? [];
  return (Number(turns) + Number(divisions) / 50) * (way === 'out' ? 1 : -1);
};

describe.each([
  ['spine-rest', alongBase],
  ['edge-rest', alongBase],
  ['carriage', outOfSole],
] as const)('turns of a %s', (family, slid) => {
  it.each(examplesOf(family).map((example) => [example.file, example] as const))(
    'bring the slide from setting to setting, %s',
    (_, example) => {
      const fixture = solved(example);
      let moved = 0;
      fixture.settings.forEach((setting, i) => {
        const dial = setting.readings[0]?.dial;
        if (!dial) throw new Error(`no dial at ${setting.id}`);
        const before = fixture.settings[i - 1] ?? setting;
        const turns = (slid(fixture, setting.id) - slid(fixture, before.id)) / PITCH;
        moved = Math.max(moved, Math.abs(turns));
        expect(dial.turnsFromLast).toBeCloseTo(turns, 6);
        // On one belt the zero is one; the knob shows what is left of whole turns.
        if (before.belt === setting.belt && before.backing === setting.backing) {
          const last = before.readings[0]?.dial?.turnsFromZero ?? NaN;
          expect(dial.turnsFromZero - last).toBeCloseTo(turns, 6);
        }
        const shown = dial.division / 50;
        const off = dial.turnsFromZero - shown;
        expect(Math.abs(off - Math.round(off))).toBeLessThan(0.5 / 50 + 1e-9);
        expect(shown).toBeGreaterThanOrEqual(0);
        expect(shown).toBeLessThan(1);
      });
      expect(moved).toBeGreaterThan(0.05);
    },
  );

  it.each(examplesOf(family).map((example) => [example.file, example] as const))(
    'are told on the set-up sheet as far and the way they go, %s',
    (_, example) => {
      const fixture = solved(example);
      const { rows } = setupData(example.design, fixture, [], '').settings;
      const ways = new Set<number>();
      fixture.settings.forEach((setting, i) => {
        const before = fixture.settings[i - 1] ?? setting;
        const moved = slid(fixture, setting.id) - slid(fixture, before.id);
        // "1 t 12 d out" opens, away from the belt.
        const told = signed(rows[i]?.turns ?? '');
        expect(Math.abs(told - moved / PITCH)).toBeLessThan(0.5 / 50 + 1e-6);
        ways.add(Math.sign(told));
        // "3 t 7 d in (43)": from the zero, and what the knob then shows.
        const [, way = '', shown = ''] = /^(.*) \((\d+)\)$/.exec(rows[i]?.reading ?? '') ?? [];
        expect(
          Math.abs(signed(way) - (setting.readings[0]?.dial?.turnsFromZero ?? NaN)),
        ).toBeLessThan(0.5 / 50 + 1e-6);
        expect((((signed(way) * 50 - Number(shown)) % 50) + 50.5) % 50).toBeCloseTo(0.5, 6);
      });
      expect(ways.size).toBeGreaterThan(1);
    },
  );
});
