import { existsSync, readFileSync } from 'node:fs';
import * as v from 'valibot';
import { afterAll, describe, expect, it } from 'vitest';
import { registry } from '../../jigs/registry.ts';
import { mendAll } from '../../src/adapt/mend-all.ts';
import { mendedSchema } from '../../src/adapt/output-schema.ts';
import { createWorkshop } from '../../src/check/workshop.ts';
import { withValue } from '../../src/core/path.ts';
import { checkDesign, openDesign } from '../../src/document/open.ts';
import { saveDesign } from '../../src/document/save.ts';
import type { Design } from '../../src/document/schema.ts';
import { checkFixture, solveDesign } from '../../src/make/engine.ts';
import { exampleBytes } from '../app/sample.ts';
import { valueOf } from '../family/examples.ts';
import { run, runJson, workshop } from '../cli/runner.ts';

const opened = openDesign(exampleBytes('kitchen-210'), registry);
if (!opened.ok) throw new Error('the worked design does not open');
const kitchen = opened.value;

/** The first blade of the worked design at another length, thickness and bevel. */
const blade = (name: string, length: number, thick: number, height: number) => {
  const [like] = kitchen.blades;
  if (like?.outline.kind !== 'dimensions') throw new Error('not by dimensions');
  const k = length / like.outline.length;
  const bevel = { kind: 'height', height } as const;
  const outline = Object.fromEntries(
    Object.entries(like.outline).map(([key, value]) => [
      key,
      typeof value === 'number' ? Number((value * k).toFixed(2)) : value,
    ]),
  ) as typeof like.outline;
  return {
    ...like,
    name,
    outline,
    thickness: [{ u: 0, t: thick }],
    bevels: { left: bevel, right: bevel },
  };
};

const family: Design = {
  ...kitchen,
  blades: [blade('Chef 240', 240, 2.6, 26), blade('Petty 120', 120, 2, 14)],
};
const kept = createWorkshop();

const failedOf = (design: Design): string[] =>
  valueOf(checkFixture(valueOf(solveDesign(design, registry, kept)), design.making, 'near'))
    .checks.filter(({ passed }) => !passed)
    .map(({ id }) => id);

const solved = (design: Design) => {
  const sound = checkDesign(design, registry);
  return sound.ok ? solveDesign(sound.value, registry, kept) : sound;
};
const codes = (design: Design): string[] => solved(design).issues.map(({ code }) => code);

const { at, put, clear } = workshop();
afterAll(clear);

describe('all values that are named as mends', () => {
  it('mend a family of unlike blades in one go, and tell what no value mends', async () => {
    expect(codes(family)).toContain('no-bearing');
    const mended = mendAll(family, registry, kept);
    if (!mended.ok) throw new Error(mended.issues[0]?.message);
    const { design, differences, failed } = mended.value;
    expect(codes(design)).not.toContain('no-bearing');
    expect(codes(design)).not.toContain('off-line');
    expect(differences.length).toBeGreaterThan(3);
    // What a maker allows, and what is cautious, stays as they set it.
    const plainly = (one: Design) => [one.blades.map(({ line }) => line.allowed), one.grinder];
    expect(plainly(design)).toEqual(plainly(family));
    // Whatever still fails is told once more, and nothing is written.
    const again = valueOf(mendAll(design, registry, kept));
    const ids = (checks: typeof failed): string[] => checks.map(({ id }) => id);
    expect(ids(failed).length).toBeGreaterThan(0);
    expect([again.differences, ids(again.failed)]).toEqual([[], ids(failed)]);
    const file = put('unlike.jig.json', saveDesign(design));
    const told = await run('mend', file, '--out', at('again.jig.json'));
    expect(told.code).toBe(1);
    expect(told.out).toContain(failed[0]?.label);
    expect(existsSync(at('again.jig.json'))).toBe(false);
    // The worked design asks for nothing.
    const { issues } = mendAll(kitchen, registry, kept);
    expect(issues.map(({ code }) => code)).toContain('nothing-to-mend');
  }, 30_000);

  it('find the sheet with which every joint has a screw, and say so where there is none', () => {
    const sheets = (thicknesses: readonly number[]): Design =>
      withValue(kitchen, 'making.plates.thicknesses', thicknesses);
    // Of 6 and 10 mm the one is as near to 8 as the other, but in 6 mm no M6 screw of the table of
    // ISO 4762 (12, 16 mm) ends between 12.6 and 13.8 mm.
    const mended = mendAll(sheets([4, 6, 10, 12]), registry, kept);
    if (!mended.ok) throw new Error(mended.issues[0]?.message);
    expect(mended.value.design.fixture.parameters['base']).toBe(10);
    const thin = solved(sheets([3, 5])).issues.find(({ path }) => path.endsWith('.base'));
    expect(thin?.mend).toBeUndefined();
    expect(thin?.fix).toContain('from 6 to 12 mm');
  });

  it('change nothing where no value mends what is wrong', () => {
    const [only] = family.blades;
    const full = { kind: 'full' } as const;
    const design = {
      ...family,
      blades: only ? [{ ...only, bevels: { left: full, right: full } }] : [],
    };
    const mended = mendAll(design, registry, kept);
    expect(mended.ok).toBe(false);
    expect(mended.issues.map(({ code }) => code)).toContain('no-bearing');
  });

  it('are found by trying where a failed check leads to a parameter but names no value', () => {
    const narrow = [
      ['grinder.belt.width', 30],
      ['grinder.platen.width', 30],
    ] as const;
    const hunting = narrow.reduce(
      (design, [path, value]) => withValue(design, path, value),
      valueOf(openDesign(exampleBytes('hunting-115'), registry)),
    );
    expect(failedOf(hunting)).toEqual(['clearance/collar/guards']);
    const mended = valueOf(mendAll(hunting, registry, kept));
    expect(mended.differences.map(({ path }) => path)).toEqual(['fixture.parameters.wing']);
    expect(failedOf(mended.design)).toEqual([]);
  });

  it('make a pass less steep whose narrow bevel asks for a pad too near to the edge', () => {
    const [first] = kitchen.blades;
    const heights = [
      ['blades.0.outline.heelHeight', 80],
      ['blades.0.outline.bellyHeight', 78.4],
    ] as const;
    const high = heights.reduce(
      (design, [path, value]) => withValue(design, path, value),
      withValue({ ...kitchen, blades: first ? [first] : [] }, 'blades.0.line.allowed', 15),
    );
    expect(failedOf(high)).toContain('force/push/low');
    const mended = valueOf(mendAll(high, registry, kept));
    expect(mended.design.sequence[0]?.steeper).toBeLessThan(kitchen.sequence[0]?.steeper ?? 0);
    expect(failedOf(mended.design)).toEqual([]);
  });

  it('bring a blade on its strip to bear: a lower bevel first, then a nearer nose', () => {
    const file = 'jigs/spine-rest/examples/tapered-210.jig.json';
    const tapered = valueOf(openDesign(readFileSync(file), registry));
    const high = withValue(tapered, 'blades.0.bevels.left.height', 28.75);
    expect(codes(high)).toContain('strip-bearing');
    expect(valueOf(mendAll(high, registry, kept)).failed).toEqual([]);
  });

  it('give a push block room before the screws that lock its plate', () => {
    const short = withValue(kitchen, 'fixture.parameters.guideLength', 37.5);
    expect(failedOf(short)).toContain('inside/push-block/lock-screw-1-washer-1');
    const mended = valueOf(mendAll(short, registry, kept));
    expect(mended.failed).toEqual([]);
    expect(mended.differences.map(({ path }) => path)).toEqual(['fixture.parameters.guideLength']);
  });

  it('are told and written by the command line', async () => {
    const file = put(
      'near.jig.json',
      saveDesign(withValue(kitchen, 'fixture.parameters.noseGap', 0.5)),
    );
    const { code, value } = await runJson('mend', file, '--out', at('mended.jig.json'));
    expect(code).toBe(0);
    expect(v.is(mendedSchema, value)).toBe(true);
    expect(value['differences']).toHaveLength(1);
    expect(value['failed']).toEqual([]);
    expect(openDesign(readFileSync(at('mended.jig.json')), registry).ok).toBe(true);

    // What is left is told as well: no line is allowed more than the maker did.
    const tight = put(
      'tight.jig.json',
      readFileSync(file, 'utf8').replaceAll(/"allowed": [\d.]+/g, '"allowed": 0.1'),
    );
    const left = await runJson('mend', tight);
    expect(left.code).toBe(1);
    expect(JSON.stringify(left.value['failed'])).toContain('range/line/0/left');
  });

  it('reach a file whose values contradict each other, as a hand may write it', async () => {
    const file = put(
      'contradicts.jig.json',
      saveDesign(withValue(kitchen, 'blades.0.outline.bellyStart', 300)),
    );
    expect(openDesign(readFileSync(file), registry).ok).toBe(false);
    const { code } = await runJson('mend', file, '--out', at('sound.jig.json'));
    expect(code).toBe(0);
    expect(openDesign(readFileSync(at('sound.jig.json')), registry).ok).toBe(true);
  });
});

describe('an edge that all blades want otherwise than the passes lead to', () => {
  // A chopper of its own, its edge a millimetre as heat treated and half of that when it is ground.
  const [stock] = kitchen.blades;
  if (!stock) throw new Error('a blade');
  const chopper: Design = {
    ...kitchen,
    blades: [
      {
        ...stock,
        name: 'Chopper 150',
        outline: {
          kind: 'dimensions',
          length: 150,
          heelHeight: 85,
          bellyStart: 60,
          bellyHeight: 83,
          spineDropStart: 140,
          tipDrop: 3,
          spineSagitta: 0,
        },
        thickness: [{ u: 0, t: 5 }],
        spineRadius: 0.5,
        tang: { kind: 'tang', length: 110, height: 22, thickness: 5, drop: 10 },
        edge: { asHeatTreated: 1, wanted: 0.5, shareLeft: 0.5 },
        bevels: { left: { kind: 'height', height: 30 }, right: { kind: 'height', height: 30 } },
      },
    ],
    sequence: kitchen.sequence.map((pass, i) => (i === 0 ? { ...pass, steeper: 0.6 } : pass)),
  };

  it('gives every pass as much to grind, and takes back what later passes are steeper by, too', () => {
    const mended = valueOf(mendAll(chopper, registry, kept));
    // Five passes from 1 mm to 0.5 mm, by hand: a fifth of what is ground away each.
    const stops = mended.design.sequence.map(({ edge }) => Number(edge.toFixed(2)));
    expect(stops).toEqual([0.9, 0.8, 0.7, 0.6, 0.5]);
    const steeper = mended.design.sequence.map((pass) => pass.steeper);
    expect(steeper).toEqual([...steeper].sort((a, b) => b - a));
    expect(mended.design.sequence[1]?.steeper).toBeLessThan(chopper.sequence[1]?.steeper ?? 0);
    expect(mended.failed).toEqual([]);
  });
});

describe('a blade that one setting cannot serve as it is asked for', () => {
  it('follows something else, where only solving tells that the line then stays within', () => {
    const bent = blade('Curved 160', 160, 3, 14);
    const design: Design = {
      ...kitchen,
      blades: [
        {
          ...bent,
          outline: {
            kind: 'dimensions',
            length: 160,
            heelHeight: 35,
            bellyStart: 20,
            bellyHeight: 34,
            spineDropStart: 30,
            tipDrop: 27,
            spineSagitta: 18,
          },
          line: { follow: 'edge', allowed: 3 },
        },
      ],
    };
    const lines = (of: Design) => failedOf(of).filter((id) => id.startsWith('range/line/'));
    const off = solved(design).issues.filter(({ code }) => code === 'off-line');
    expect([off.length, off.filter(({ mend }) => mend).length]).toEqual([2, 0]);
    expect(lines(design)).toHaveLength(2);
    const mended = valueOf(mendAll(design, registry, kept));
    expect(mended.design.blades[0]?.line).toEqual({ follow: 'share', allowed: 3 });
    expect(lines(mended.design)).toEqual([]);
  });

  it('is served at the bevel height that the setting gives it, the setting hardly moved', () => {
    const others = [blade('Slicer 270', 270, 3, 23), blade('Petty 120', 120, 3, 23)];
    const design = { ...kitchen, blades: [...kitchen.blades, ...others] };
    const off = solved(design).issues.filter(({ code }) => code === 'off-line');
    expect(off.length).toBeGreaterThan(2);
    const mended = off.reduce(
      (next, { mend }) => (mend ? withValue(next, mend.path, mend.value) : next),
      design,
    );
    expect(codes(mended)).not.toContain('off-line');
    const [before = NaN, after = NaN] = [design, mended].map((one) => {
      const fixture = solved(one);
      return fixture.ok ? fixture.value.settings.at(-1)?.angle : NaN;
    });
    expect(Math.abs(after - before)).toBeLessThan(0.1);
  });
});
