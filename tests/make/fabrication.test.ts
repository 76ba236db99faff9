import { describe, expect, it } from 'vitest';
import { registry } from '../../jigs/registry.ts';
import type { CheckResult } from '../../src/check/result.ts';
import { ok } from '../../src/core/result.ts';
import type { Fixture, Registry } from '../../src/family/index.ts';
import { circle, rectangle, slot } from '../../src/geometry/loop.ts';
import { checkFixture } from '../../src/make/engine.ts';
import { CHECKS_FAILED, makePackage } from '../../src/make/package.ts';
import type { Hole, Part, PlatePart, PrintPart } from '../../src/model/part.ts';
import { examplesOf, solved, valueOf } from '../family/examples.ts';

const [example] = examplesOf('spine-rest');
if (!example) throw new Error('the worked designs are missing');
const { design } = example;
const fixture = solved(example);

const passing: CheckResult = {
  id: 'x',
  label: 'x',
  kind: 'range',
  passed: true,
  unit: 'mm',
  found: 1,
  basis: '',
  message: '',
  fix: '',
};

const hole = (id: string, loop: Hole['loop'], at: Hole['at'], size: number): Hole => ({
  id,
  loop,
  at,
  size,
  purpose: 'test',
});

const base = {
  quantity: 1,
  material: 'Mild steel',
  finish: '',
  density: 7.85,
  notes: [],
  tight: [],
} as const;

const plateOf = (process: PlatePart['process'], holes: readonly Hole[]): PlatePart => ({
  ...base,
  kind: 'plate',
  id: 'bar',
  name: 'Bar',
  process,
  holes,
  engraving: [],
  layers: [
    {
      profile: { outer: rectangle([0, 0], [100, 50]), holes: holes.map(({ loop }) => loop) },
      from: 0,
      to: 6,
    },
  ],
});

/** The solved fixture, with the given parts alone and one check that passes. */
const withParts = (parts: readonly Part[]): Fixture => ({
  ...fixture,
  parts: () => ok(parts),
  checks: () => ok([passing]),
});

const failures = (parts: readonly Part[]): readonly CheckResult[] =>
  valueOf(checkFixture(withParts(parts), design.making)).checks.filter(({ passed }) => !passed);

const registryOf = (parts: readonly Part[]): Registry => {
  const family = registry.families[design.fixture.family];
  if (!family) throw new Error('the family is missing');
  return { families: { [family.id]: { ...family, solve: () => ok(withParts(parts)) } } };
};

const small = hole('a', circle([50, 25], 1.25), [50, 25], 2.5);
const thread = hole('b', circle([50, 25], 2.5), [50, 25], 5);

describe('what a process cannot make', () => {
  it('fails as a check with feature, value, limit and process', () => {
    const [failed, ...more] = failures([plateOf('laser', [small])]);
    expect(more).toEqual([]);
    expect(failed).toMatchObject({ kind: 'fabrication', found: 2.5, atLeast: 3 });
    expect(failed?.message).toBe(
      'The diameter of hole "a" of Bar is 2.5 mm; laser cutting needs at least 3 mm.',
    );
    expect(failed?.fix).not.toBe('');
  });

  it('depends on the process that is chosen', () => {
    const slit: Hole = {
      ...hole('s', slot([40, 25], [60, 25], 3.2), [50, 25], 3.2),
      slotLength: 23.2,
    };
    const found = (process: PlatePart['process']): number =>
      failures([plateOf(process, [slit])]).length;
    // 6 mm sheet, least slot: laser 3, water jet 2, plasma 4, saw and drill 3 mm.
    expect((['laser', 'waterjet', 'plasma', 'saw-drill'] as const).map(found)).toEqual([
      0, 0, 1, 0,
    ]);
  });

  it('holds for prints, by the nozzle', () => {
    const wall = hole('w', circle([4, 25], 3.5), [4, 25], 7);
    const print: PrintPart = {
      ...base,
      kind: 'print',
      id: 'block',
      name: 'Block',
      holes: [wall],
      layers: [
        { profile: { outer: rectangle([0, 0], [100, 50]), holes: [wall.loop] }, from: 0, to: 6 },
      ],
    };
    const [failed] = failures([print]);
    expect(failed).toMatchObject({ found: 0.5, atLeast: 2 * design.making.prints.nozzle });
    expect(failed?.message).toContain('printing with a nozzle of 0.4 mm');
  });

  it('comes as advice where it can be made but makes trouble', () => {
    // A 5 mm hole in 8 mm sheet: 0.5 t can be lasered, 0.7 t is advised.
    const thick = plateOf('laser', [thread]);
    const plate = { ...thick, layers: thick.layers.map((layer) => ({ ...layer, to: 8 })) };
    const checked = checkFixture(withParts([plate]), design.making);
    expect(valueOf(checked).checks).toEqual([passing]);
    expect(checked.issues).toMatchObject([{ code: 'feature-small', severity: 'warning' }]);
    expect(checked.issues[0]?.message).toBe(
      'The diameter of hole "b" of Bar is 5 mm; 5.6 mm or more is advised for laser cutting.',
    );
  });

  it('blocks the package, like any failed check', async () => {
    const made = await makePackage(design, {
      registry: registryOf([plateOf('laser', [small])]),
      fonts: { regular: new Uint8Array(), bold: new Uint8Array() },
      acceptFailing: false,
    });
    expect(made).toMatchObject({ ok: false, issues: [{ code: CHECKS_FAILED, severity: 'error' }] });
    expect(made.issues[0]?.message).toContain('laser cutting needs at least 3 mm');
  });
});
