import { is } from 'valibot';
import { describe, expect, it } from 'vitest';
import { registry } from '../../jigs/registry.ts';
import { solveDesign } from '../../src/make/engine.ts';
import { groundFolder } from '../../src/make/ground/files.ts';
import { groundBlades, groundPlaces } from '../../src/make/ground/ground.ts';
import { workOf } from '../../src/make/ground/work.ts';
import { fail } from '../../src/core/result.ts';
import { grindReport } from '../../src/make/ground/report.ts';
import { grindSchema } from '../../src/make/ground/schema.ts';
import { extractDesign } from '../../src/export/index.ts';
import { saveDesign } from '../../src/document/save.ts';
import { groundCards } from '../../src/worker/ground.ts';
import { examplesOf, valueOf } from '../family/examples.ts';

const grinding = ['spine-rest', 'edge-rest', 'carriage'].map((family) => {
  const [example] = examplesOf(family);
  if (example === undefined) throw new Error(`no example of ${family}`);
  return { family, ...example };
});

describe.each(grinding)('the blades of $file, ground virtually', ({ design }) => {
  const fixture = valueOf(solveDesign(design, registry));
  const ground = valueOf(groundBlades(design, fixture, { step: 2 }));

  it('has every blade and every setting, by the published schema', () => {
    const report = grindReport(design, ground);
    expect(is(grindSchema, JSON.parse(JSON.stringify(report)))).toBe(true);
    expect(report.blades.map(({ blade }) => blade)).toEqual(design.blades.map(({ name }) => name));
    for (const { passes } of report.blades)
      expect(passes.map(({ setting }) => setting)).toEqual(fixture.settings.map(({ id }) => id));
  });

  it('writes maps and places as files that carry the design', () => {
    const files = valueOf(groundFolder(design, ground));
    const table = files.find(({ path }) => path === 'ground.csv');
    const rows = Buffer.from(table?.bytes ?? [])
      .toString('utf8')
      .trim()
      .split('\r\n');
    const places = ground.reduce((sum, one) => sum + groundPlaces(one, 5).length, 0);
    expect(rows).toHaveLength(1 + places);
    const pictures = files.filter(({ path }) => path.endsWith('.svg'));
    expect(pictures.length).toBeGreaterThanOrEqual(design.blades.length);
    for (const { bytes } of pictures)
      expect(valueOf(extractDesign(bytes))).toBe(saveDesign(design));
  });
});

describe('a hollow, ground virtually', () => {
  it('is what the finished parts of an edge rest, measured as solids, say was ground', () => {
    const rest = grinding.find(({ family }) => family === 'edge-rest');
    if (rest === undefined) throw new Error('no example');
    const fixture = valueOf(solveDesign(rest.design, registry));
    const ground = valueOf(groundBlades(rest.design, fixture, { step: 2 }));
    // The measurement settles meshes on meshes and slices them: it shares no code with the grind.
    let compared = 0;
    for (const { blade, side, u, bevelHeight, certainty } of valueOf(fixture.measured())) {
      const one = ground.find((g) => g.blade.name === blade);
      const places = one?.report.model.find((line) => line.side === side)?.places ?? [];
      const near = places.find((p) => p.steers && Math.abs(p.u - u) < 0.01);
      if (near === undefined || certainty.kind === 'estimate') continue;
      compared += 1;
      // A hollow's limit is found within 0.06 mm on 40 rows; calipers measure along the face.
      const bound = (certainty.kind === 'bounded' ? certainty.by : 0) + 0.12;
      expect(Math.abs(near.ground - bevelHeight), `${blade} ${side} ${String(u)}`).toBeLessThan(
        bound,
      );
    }
    expect(compared).toBeGreaterThan(0);
  }, 60_000);
});

describe('what cannot be ground virtually', () => {
  it('is a blade that the design does not have, or a family that holds none', () => {
    const [spine] = grinding;
    if (spine === undefined) throw new Error('no example');
    const fixture = valueOf(solveDesign(spine.design, registry));
    const missing = groundBlades(spine.design, fixture, { blade: 'None' });
    expect(missing.ok ? [] : missing.issues.map(({ code }) => code)).toEqual(['blade-unknown']);
    const none = groundBlades(spine.design, { ...fixture, virtual: () => undefined });
    expect(none.ok ? [] : none.issues.map(({ code }) => code)).toContain('no-virtual');
  });

  it('is a strip for a family without a step, which says so', () => {
    const other = grinding.find(({ family }) => family === 'carriage');
    if (other === undefined) throw new Error('no example');
    const fixture = valueOf(solveDesign(other.design, registry));
    const [ground] = valueOf(groundBlades(other.design, fixture, { step: 4, cure: true }));
    expect(ground?.cure?.issues.map(({ code }) => code)).toEqual(['no-cure']);
  });
});

describe('the maps on the screen', () => {
  it('show the blade as it comes and after every pass, and say why there is no strip', () => {
    const given = grinding.find(({ family }) => family === 'carriage');
    if (given === undefined) throw new Error('no example');
    const fixture = valueOf(solveDesign(given.design, registry));
    const shares: number[] = [];
    const [card] = valueOf(groundCards(given.design, fixture, (share) => shares.push(share))) ?? [];
    // Told after every pass.
    expect(shares).toHaveLength(fixture.settings.length);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(shares.at(-1)).toBeLessThanOrEqual(1);
    expect(card?.frames).toHaveLength(1 + fixture.settings.length);
    expect(new Set(card?.frames.map(({ label }) => label)).size).toBe(card?.frames.length);
    expect(card?.cured).toBeNull();
    expect(card?.cureIssues.map(({ code }) => code)).toEqual(['no-cure']);
    // It crosses to the page as plain data.
    expect(structuredClone(card)).toEqual(card);
  });
});

describe('the strip of a tapered blade', () => {
  it('is told beside the line that all belts leave on a straight step', () => {
    // The fact rests on the last belts alone, the line on the grind by every belt of the plan.
    const tapered = examplesOf('spine-rest').find(({ file }) => file.startsWith('tapered'));
    if (tapered === undefined) throw new Error('no example');
    const fixture = valueOf(solveDesign(tapered.design, registry));
    const [card] = valueOf(groundCards(tapered.design, fixture)) ?? [];
    expect(card?.lines.map(({ side }) => side)).toEqual(['left', 'right']);
    for (const { side, value } of card?.lines ?? []) {
      const fact = card?.cured?.facts.find(({ key }) => key === `strip-without-${side}`);
      expect(fact?.value).toBeCloseTo(Math.abs(value), 6);
      expect(fact?.value).toBeGreaterThan(3);
    }
  });

  it('brings the line within the wish, is one print for both sides and a file of its own', () => {
    const kitchen = examplesOf('spine-rest').find(({ file }) => file.startsWith('kitchen-210'));
    const first = kitchen?.design.blades[0];
    if (kitchen === undefined || first === undefined) throw new Error('no example');
    const thickness = [
      { u: 0, t: 3 },
      { u: 210, t: 2.2 },
    ];
    const line = { ...first.line, allowed: 0.5 };
    // The spine of a thin tip comes nearer to the belt than this rest's bearing allows as it is.
    const parameters = { ...kitchen.design.fixture.parameters, leastBearing: 0.3 };
    const design = {
      ...kitchen.design,
      // Two settings are enough to meet every pair of solids.
      sequence: kitchen.design.sequence.slice(-1),
      blades: [{ ...first, thickness, line }],
      fixture: { ...kitchen.design.fixture, parameters },
    };
    const fixture = valueOf(solveDesign(design, registry));
    const order = fixture.virtual?.(first.name);
    if (order === undefined) throw new Error('no virtual grind');
    const turned = valueOf(workOf(order).yaw?.({ step: 4, rows: 24 }) ?? fail());
    // Half of 0.8 over 210, and what it is over the width of the step.
    expect(turned.half).toBeCloseTo((Math.atan(0.4 / 210) * 180) / Math.PI, 4);
    expect(turned.over.rise).toBeCloseTo((turned.over.width * 0.4) / 210, 4);
    const ground = valueOf(groundBlades(design, fixture, { step: 2, cure: true, kit: true }));
    const [blade] = grindReport(design, ground).blades;
    expect(is(grindSchema, JSON.parse(JSON.stringify(grindReport(design, ground))))).toBe(true);
    expect(blade?.cure?.oneForBoth).toBe(true);
    expect(blade?.cure?.settings.map(({ setting }) => setting)).toEqual(
      fixture.settings.map(({ id }) => id),
    );
    for (const side of blade?.cure?.sides ?? []) {
      // Half the taper over the blade tips the bevel by millimetres; the wish is half of one.
      expect(side.without).toBeGreaterThan(2);
      expect(side.with).toBeLessThan(0.5);
      expect(Math.min(...side.profile.map((at) => at.thickness))).toBeGreaterThan(1);
    }
    const kit = blade?.cure?.kit;
    expect(kit?.parts).toEqual(['step-rounded', 'line-strip']);
    expect(kit?.settings).toHaveLength(fixture.settings.length);
    const of = (id: string) => kit?.checks.find((check) => check.id === id);
    for (const side of ['left', 'right']) {
      // The virtual grind settles height fields, the check measures lofted and cut solids: spine on
      // nose, strip on rounded step, nothing of the one shared with the other.
      expect(of(`strip/contact/blade/nose/${side}`)?.passed).toBe(true);
      expect(of(`strip/contact/strip/step/${side}`)?.passed).toBe(true);
      expect(of(`strip/clearance/strip/belt/${side}`)?.passed).toBe(true);
      expect(of(`strip/line/${side}`)?.found).toBeLessThan(0.5);
    }
    const files = valueOf(groundFolder(design, ground)).map(({ path }) => path);
    expect(files.some((path) => /step-rounded.*\.dxf$/.test(path))).toBe(true);
    expect(files.filter((path) => path.endsWith('.stl'))).toHaveLength(1);
    expect(files.some((path) => path.startsWith('line-strip'))).toBe(true);
  });
});
