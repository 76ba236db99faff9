import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { registry } from '../../jigs/registry.ts';
import { adapt } from '../../src/adapt/adapt.ts';
import { compare } from '../../src/adapt/compare.ts';
import { build, consequence } from '../../src/adapt/consequence.ts';
import { firstBuilt } from '../../src/adapt/give-way.ts';
import { differences } from '../../src/adapt/differences.ts';
import { keptValues } from '../../src/adapt/kept-values.ts';
import { ontoGrinder } from '../../src/adapt/onto-grinder.ts';
import { settingChanges, type SettingChange } from '../../src/adapt/setting-changes.ts';
import { settingRows } from '../../src/adapt/setting-rows.ts';
import { openDesign } from '../../src/document/open.ts';
import type { Design } from '../../src/document/schema.ts';
import { grinderPresets } from '../../src/grinder/presets/index.ts';
import type { Grinder } from '../../src/grinder/schema.ts';
import type { Part } from '../../src/model/part.ts';
import { text } from '../../src/text/index.ts';
import { valueOf } from '../family/examples.ts';
import { gaugeDesign, gaugeRegistry } from '../robust/gauge.ts';

const example = (family: string, name: string): Design => {
  const file = `jigs/${family}/examples/${name}.jig.json`;
  const design = openDesign(readFileSync(file), registry);
  if (!design.ok) throw new Error(JSON.stringify(design.issues));
  return design.value;
};

const kitchen = (): Design => example('spine-rest', 'kitchen-210');

const preset = (name: string): Grinder => {
  const grinder = grinderPresets[name];
  if (!grinder) throw new Error(name);
  return grinder;
};

describe('differences in words', () => {
  it('are none between a design and itself', () => {
    expect(differences(kitchen(), kitchen(), registry)).toEqual([]);
  });

  it('name what, from and to, entries by their name', () => {
    const from = kitchen();
    const [first, ...rest] = from.blades;
    if (!first) throw new Error('no blade');
    const to: Design = {
      ...from,
      blades: [...rest, { ...first, thickness: [{ u: 0, t: 2.5 }] }],
      fixture: { ...from.fixture, parameters: { ...from.fixture.parameters, noseGap: 1.2 } },
    };
    expect(differences(from, to, registry)).toEqual([
      {
        path: 'blades.Kitchen 210.thickness.1.t',
        area: 'blades.Kitchen 210',
        areaLabel: 'Blades Kitchen 210',
        label: expect.stringContaining('Kitchen 210') as string,
        from: '3 mm',
        to: '2.5 mm',
      },
      {
        path: 'fixture.parameters.noseGap',
        area: 'fixture.parameters.noseGap',
        areaLabel: 'Fixture, Gap at the belt',
        label: 'Fixture, Gap at the belt',
        from: '1 mm',
        to: '1.2 mm',
      },
    ]);
  });

  it('are said as a person says them: choices by their words, what is new or gone by what it is', () => {
    const from = kitchen();
    const to: Design = {
      ...from,
      notes: 'x'.repeat(100),
      blades: from.blades.slice(0, 1).map((blade) => ({
        ...blade,
        bevels: { ...blade.bevels, right: { kind: 'none' } },
      })),
      sequence: from.sequence.slice(1),
      making: { ...from.making, plates: { ...from.making.plates, process: 'plasma' } },
      grinder: {
        ...from.grinder,
        wheels: from.grinder.wheels.map((wheel) => ({ ...wheel, centre: [1, 2] })),
      },
    };
    const said = differences(from, to, registry)
      .filter(({ path }) => !/wheels\.(?!lower)|sequence\.[1-3]/.test(path))
      .map(({ label, from: a, to: b }) => text.adapt.difference(label, a, b));
    expect(said).toEqual([
      expect.stringMatching(/^Notes: The workshop .*… -> x{59}…$/),
      'Blades Kitchen 210, Right bevel: By its height -> Not ground',
      'Blades Kitchen 180: left out',
      'Grinder, Wheels lower, Centre of the wheel: -26, -75 mm -> 1, 2 mm',
      'Making, plates, Cutting process: Laser cut -> Plasma cut',
      'Sequence 4, Belt of the pass: P220 -> P400',
      'Sequence 4, Backing of the pass: bare -> leather',
      'Sequence 4, Stop at edge thickness: 0.23 mm -> 0.2 mm',
      'Sequence 4, Steeper by: 0.1 deg -> 0 deg',
      'Sequence 5: left out; it was Belt of the pass P400, Backing of the pass leather, Stop at edge thickness 0.2 mm, Steeper by 0 deg',
    ]);
    expect(said.join()).not.toMatch(/undefined|null|there/);
  });

  it('see a change among boxes that bear one name, which only blades may not', () => {
    const from = kitchen();
    const [box] = from.grinder.keepOuts;
    if (!box) throw new Error('no box');
    const boxes = (top: number): Design => ({
      ...from,
      grinder: { ...from.grinder, keepOuts: [{ ...box, max: [60, -12, top] }, box] },
    });
    expect(differences(boxes(150), boxes(151), registry).map(({ path }) => path)).toEqual([
      'grinder.keepOuts.1.max',
    ]);
  });

  it('of settings tell a stop at another edge, and an angle, as what is set', () => {
    const [setting] = valueOf(build(gaugeDesign(), gaugeRegistry)).fixture.settings;
    if (!setting) throw new Error('no setting');
    const other = { ...setting, edgeStop: setting.edgeStop + 0.1, angle: setting.angle + 1 };
    expect(
      settingChanges([setting], [other]).map(({ key, unit, from, to }) => [key, unit, from, to]),
    ).toEqual([
      ['edgeStop', 'mm', setting.edgeStop, other.edgeStop],
      ['angle', 'deg', setting.angle, other.angle],
    ]);
    expect(settingChanges([setting], [setting])).toEqual([]);
  });

  it('tell both sides of a belt as one where they are alike, and what is no longer ground once', () => {
    const change = (over: Partial<SettingChange>): SettingChange => ({
      setting: '1-left',
      step: 1,
      side: 'left',
      belt: 'P60',
      nth: 1,
      state: 'changed',
      key: 'step',
      label: 'Step to belt',
      unit: 'mm',
      from: 4,
      to: 5,
      ...over,
    });
    const gone = { belt: 'P400', state: 'gone', to: null } as const;
    const rows = settingRows([
      change({}),
      change({ key: 'stop', from: 1, to: null }),
      change({ side: 'right' }),
      change({ side: 'right', key: 'stop', from: 2, to: null }),
      change({ nth: 2, state: 'new', from: null }),
      // Ids are numbers of steps: what is gone may have had one that another setting has now.
      change({ ...gone, from: 7 }),
      change({ ...gone, key: 'stop', from: 8 }),
      change({ ...gone, side: 'right', from: 9 }),
    ]);
    expect(rows.map(({ who, label, from, to, gone: g }) => [who, label, from, to, g])).toEqual([
      ['P60 both sides', 'Step to belt', 4, 5, false],
      ['P60 left', 'Step to belt', 1, null, false],
      ['P60 right', 'Step to belt', 2, null, false],
      ['P60 left, setting 2', 'Step to belt', null, 5, false],
      ['P400 both sides', 'Step to belt', 7, null, true],
    ]);
    expect(new Set(rows.map(({ key }) => key)).size).toBe(rows.length);
  });

  it('tell what each means for settings and parts', () => {
    const from = gaugeDesign();
    const parameters = { ...from.fixture.parameters, height: 70 };
    const to: Design = {
      ...from,
      name: 'Taller gauges',
      grinder: { ...from.grinder, lean: 1 },
      fixture: { ...from.fixture, parameters },
    };
    const { areas, consequence: all } = compare(from, to, gaugeRegistry);
    const of = (area: string) => areas.find((one) => one.area === area)?.consequence;
    expect(of('name')).toEqual({ settings: [], parts: [], purchases: [] });
    expect(of('fixture.parameters.height')?.settings).toEqual([]);
    expect(of('fixture.parameters.height')?.parts.map((part) => part.change)).toEqual([
      'remake',
      'remake',
    ]);
    // The platen leans by one degree more, and so does every blade.
    const tilts = of('grinder.lean')?.settings ?? [];
    expect(tilts).toHaveLength(4);
    for (const { from: was, to: is } of tilts) expect((is ?? 0) - (was ?? 0)).toBeCloseTo(1, 9);
    expect(all?.settings).toEqual(tilts);
  });
});

describe('another grinder', () => {
  it('keeps what does not touch the rest: only base, bars and their screws are new', () => {
    const from = kitchen();
    const { design, notes } = ontoGrinder(from, preset('arm-50'));
    expect(notes).toEqual([]);
    const [before, after] = [build(from, registry), build(design, registry)];
    if (!before.ok || !after.ok) throw new Error(JSON.stringify(after.issues));
    const { parts, settings, purchases } = consequence(before.value, after.value);
    expect(settings).toEqual([]);
    const changed = parts.filter(({ change }) => change !== 'unchanged');
    expect(changed.map(({ part, change }) => `${part} ${change}`)).toEqual([
      'base remake',
      'clamp-bar new',
    ]);
    expect(parts.length).toBeGreaterThan(8);
    // Bars at the rest's four corners: their screws are bought, those of the slots are left over.
    const bought = (all: readonly Part[]) => {
      const hardware = all.filter((part) => part.kind === 'hardware');
      return (name: string) =>
        hardware
          .filter(({ designation }) => designation === name)
          .reduce((sum, { quantity }) => sum + quantity, 0);
    };
    const [have, need] = [bought(before.value.parts), bought(after.value.parts)];
    expect(purchases.length).toBeGreaterThan(0);
    for (const one of purchases)
      expect([one.have, one.need]).toEqual([have(one.designation), need(one.designation)]);
  });

  it('sets a number of the fixture that cannot stay, and says so; blades are left as they are', () => {
    const from = kitchen();
    const leaning: Grinder = { ...from.grinder, name: 'Leaning', lean: 4 };
    const before = build(from, registry);
    if (!before.ok) throw new Error('no fixture');
    const onto = (design: Design) => firstBuilt({ design, notes: [] }, before.value, registry);
    // 0.4 mm running clearance, 0.5 mm flutter and splice, and 6 sin 4 deg that the plate leans over.
    const least = 0.9 + 6 * Math.sin((4 * Math.PI) / 180);
    const found = onto({ ...from, grinder: leaning });
    if (!found.ok) throw new Error(found.issues[0]?.message);
    const gap = Number(found.value.design.fixture.parameters['noseGap']);
    expect(gap).toBeGreaterThan(least);
    expect(gap).toBeLessThan(least + 0.05);
    expect(found.value.notes.map(({ message }) => message).join()).toContain(
      'Gap at the belt: 1 mm',
    );
    expect(found.value.design.blades).toEqual(from.blades);

    // Where the blades would have to be other ones the refusal stands.
    const bevel = { kind: 'height', height: 30 } as const;
    const blades = from.blades.map((one) => ({ ...one, bevels: { left: bevel, right: bevel } }));
    const refused = onto({ ...from, blades, grinder: leaning });
    expect(refused.issues.map(({ code }) => code)).toContain('nose-at-belt');
  });

  it('exchanges belts for the nearest grit and leaves a calibration behind, and says so', () => {
    const calibration = { offset: 0.1, uncertainty: 0.02, note: '' };
    const from = kitchen();
    const calibrated = { ...from, fixture: { ...from.fixture, calibration } } as Design;
    const { design, notes } = ontoGrinder(calibrated, preset('platen-25'));
    expect(design.sequence.map(({ belt }) => belt)).toEqual(['P60', 'P60', 'P120', 'P240', 'P400']);
    expect(design.sequence.every(({ backing }) => backing === 'bare')).toBe(true);
    expect(design.fixture.calibration).toBeUndefined();
    expect(notes.map(({ path }) => path)).toEqual([
      'sequence.0.belt',
      'sequence.3.belt',
      'sequence.4.backing',
      'fixture.calibration',
    ]);
  });

  it('takes the grit whose grains are nearest, not the nearest number', () => {
    const from = kitchen();
    const [first] = from.grinder.belts;
    if (!first) throw new Error('no belt');
    const belt = (grit: number) => ({ ...first, id: `own-${String(grit)}`, grit });
    const own = {
      ...from,
      grinder: { ...from.grinder, belts: [belt(100)] },
      sequence: from.sequence.map((pass) => ({ ...pass, belt: 'own-100' })),
    };
    // Median grains of P60, P100 and P150: 269, 162 and 100 micrometres (ISO 6344, from memory).
    const to = { ...from.grinder, belts: [belt(60), belt(150)] };
    expect(ontoGrinder(own, to).design.sequence[0]?.belt).toBe('own-150');
  });

  const carrier = (name: string): Design => {
    const opened = openDesign(
      readFileSync(`jigs/backing-carrier/examples/${name}.jig.json`),
      registry,
    );
    if (!opened.ok) throw new Error(name);
    return opened.value;
  };
  const kept = (design: Design, grinder: Grinder): string[] =>
    keptValues(design.grinder, { ...design, grinder }, registry).map(({ path }) =>
      path.replace('fixture.parameters.', ''),
    );

  it('warns of each value that is kept and describes the old machine, and of no other', () => {
    const other = preset('platen-75');
    const [over, instead, radius] = ['leather-finish', 'leather-instead', 'radius-1200'].map(
      carrier,
    );
    if (!over || !instead || !radius) throw new Error('no design');
    expect(kept(over, other)).toEqual(['tension', 'platenThickness', 'takeUp']);
    const bolts = ['boltThread', 'boltLow', 'boltHigh'];
    expect(kept(instead, other)).toEqual(['tension', 'platenThickness', ...bolts, 'takeUp']);
    // The tension is of account on a soft face only.
    expect(kept(radius, other)).toEqual(['platenThickness', 'takeUp']);
    expect(kept(kitchen(), other)).toEqual([]);
    // New belts are no new machine.
    const belts = instead.grinder.belts.map((belt) => ({
      ...belt,
      thickness: belt.thickness + 0.1,
    }));
    expect(kept(instead, { ...instead.grinder, belts })).toEqual([]);
    for (const issue of keptValues(instead.grinder, { ...instead, grinder: other }, registry)) {
      expect(issue).toMatchObject({ code: 'describes-machine', severity: 'warning' });
      expect(issue.message).toContain(other.name);
      expect(issue.fix).toMatch(/measure|pull/i);
    }
  });

  it('reports in full before anything is changed, and changes no input', () => {
    const from = gaugeDesign();
    const copy = structuredClone(from);
    const leaning = { ...preset('platen-75'), lean: 2 };
    const adapted = adapt(from, { grinder: leaning }, gaugeRegistry);
    expect(from).toEqual(copy);
    if (!adapted.ok) throw new Error(JSON.stringify(adapted.issues));
    const { design, adaptation } = adapted.value;
    expect(design.revision).toBe(from.revision + 1);
    expect(design.grinder).toEqual(leaning);
    expect(adaptation).toMatchObject({ passed: true, failed: [], grinder: leaning.name });
    expect(adaptation.checks).toBeGreaterThan(8);
    expect(adaptation.parts.map(({ change }) => change)).toEqual(['remake', 'remake']);
  });

  it('takes the blades of another design, with their edges where ours do not suit', () => {
    const from = gaugeDesign();
    const other: Design = {
      ...from,
      blades: from.blades.slice(0, 1).map((blade) => ({
        ...blade,
        name: 'Thick',
        edge: { ...blade.edge, wanted: 0.4 },
      })),
      sequence: [{ belt: 'P60', backing: 'bare', edge: 0.4, steeper: 0 }],
    };
    const adapted = adapt(from, { blades: other }, gaugeRegistry);
    if (!adapted.ok) throw new Error(JSON.stringify(adapted.issues));
    expect(adapted.value.design.blades).toEqual(other.blades);
    expect(adapted.value.design.sequence.map(({ edge }) => edge)).toEqual([0.4]);
    expect(adapted.value.adaptation.notes.map(({ path }) => path)).toEqual(['sequence']);
  });
});
