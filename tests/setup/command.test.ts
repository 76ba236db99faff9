import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { registry } from '../../jigs/registry.ts';
import { budgetFile } from '../../src/cli/commands/budget.ts';
import { calibrateFile } from '../../src/cli/commands/calibrate.ts';
import { openDesign } from '../../src/document/open.ts';
import { solveDesign } from '../../src/make/engine.ts';
import { bar, grind } from '../grind/brute.ts';

const DESIGN = 'jigs/spine-rest/examples/hunting-115.jig.json';
const dir = mkdtempSync(join(tmpdir(), 'calibrate-'));
afterAll(() => rmSync(dir, { recursive: true }));

const put = (name: string, content: unknown): string => {
  const file = join(dir, name);
  writeFileSync(file, typeof content === 'string' ? content : JSON.stringify(content));
  return file;
};

/** Runs a command in this process and gives what it printed and its exit code. */
const printed = (command: () => number) => {
  const written: string[] = [];
  const write = process.stdout.write.bind(process.stdout);
  process.stdout.write = (chunk: string | Uint8Array): boolean => written.push(String(chunk)) > 0;
  try {
    return { code: command(), out: written };
  } finally {
    process.stdout.write = write;
  }
};

const run = (readings: string, { design = DESIGN, out = undefined as string | undefined } = {}) =>
  printed(() => calibrateFile(design, readings, out, true));

const answer = (result: ReturnType<typeof run>) =>
  JSON.parse(result.out.join('')) as {
    offset: number;
    interval: { low: number; high: number };
    corrected: { id: string; turnsFromZero: number; division: number }[];
    record: { offset: number; uncertainty: number; note: string };
    issues: { code: string; message: string; fix: string }[];
  };

const solved = (file: string) => {
  const opened = openDesign(readFileSync(file), registry);
  if (!opened.ok) throw new Error(opened.issues.map(({ message }) => message).join(' '));
  const fixture = solveDesign(opened.value, registry);
  if (!fixture.ok) throw new Error('not solved');
  return { design: opened.value, fixture: fixture.value };
};

const fresh = solved(DESIGN);

/** A bar ground by brute force with the step `hidden` mm farther out than the dial says. */
const readingsOf = (hidden: number) => {
  const { fixture, design } = fresh;
  const known = fixture.known?.settings[0];
  if (known?.set.kind !== 'spine-rest') throw new Error('not a spine rest');
  const { setoff } = known.set;
  const [T, H, r] = [4, 32, 0.4];
  const quantity = (value: number, uncertainty: number) => ({ value, uncertainty });
  return {
    format: 'platenwright-readings',
    schema: 1,
    kind: 'flat',
    setting: known.id,
    note: 'test bar',
    piece: { thickness: quantity(T, 0.005), height: quantity(H, 0.05), spineRadius: r },
    places: [0.3, 0.4, 0.5].map((e, i) => {
      const cut = grind(bar(T, H, r, 200), H, setoff + hidden, e, design.grinder.lean);
      return {
        label: `place ${i}`,
        edge: quantity(T / 2 + e, 0.01),
        bevelHeight: quantity(cut.bevelHeight, 0.1),
      };
    }),
  };
};

describe('calibrate', () => {
  it('finds a hidden offset, writes the design, and the dial readings of that design allow for it', () => {
    const hidden = 0.2;
    const out = join(dir, 'updated.jig.json');
    const result = run(put('good.json', readingsOf(hidden)), { out });
    expect(result.code).toBe(0);
    const { offset, interval, corrected, record } = answer(result);
    // The dial is read in whole divisions of 0.02 mm, so the bar above stood up to 0.01 off.
    expect(Math.abs(offset - hidden)).toBeLessThan(0.011);
    expect(interval.low).toBeLessThan(hidden);
    expect(interval.high).toBeGreaterThan(hidden);
    const before = fresh;
    const after = solved(out);
    expect(after.design.fixture.calibration).toEqual(record);
    expect(after.design.revision).toBe(before.design.revision + 1);
    after.fixture.settings.forEach((setting, i) => {
      const dial = setting.readings[0]?.dial;
      const was = before.fixture.settings[i]?.readings[0]?.dial;
      expect(dial?.turnsFromZero).toBeCloseTo((was?.turnsFromZero ?? NaN) - offset, 9);
      expect(dial?.division).toBe(corrected[i]?.division);
      expect(setting.readings[0]?.value).toBe(before.fixture.settings[i]?.readings[0]?.value);
      expect(setting.notes.join(' ')).toContain('test bar');
    });
    // Ground again with the corrected dial, the bar has no offset left but the rounding.
    const again = answer(run(put('again.json', readingsOf(0)), { design: out }));
    expect(Math.abs(again.offset)).toBeLessThan(0.011);
    expect(again.record.offset).toBeCloseTo(record.offset + again.offset, 12);
  });

  it('takes the worked readings of the hunting blade', () => {
    // Made by brute-force grinding with the step 0.17 mm out, then read to hundredths with errors.
    const { code, out } = run('jigs/spine-rest/examples/hunting-115.readings.json');
    expect(code).toBe(0);
    const { interval } = answer({ code, out });
    expect(interval.low).toBeLessThan(0.17);
    expect(interval.high).toBeGreaterThan(0.17);
  });

  it('never overwrites, and answers bad input with 2 and a mend', () => {
    const given = readingsOf(0.1);
    const good = put('good.json', given);
    const taken = put('taken.jig.json', 'keep me');
    const refused = [
      run(good, { out: taken }),
      run(good, { out: join(dir, 'no', 'such', 'folder.jig.json') }),
      run(good, { design: join(dir, 'missing.jig.json') }),
      run(join(dir, 'missing.json')),
      run(put('broken.json', '{')),
      run(put('list.json', [])),
      run(put('other.json', { format: 'platenwright-design', schema: 1 })),
      run(put('newer.json', { ...given, schema: 2 })),
      run(put('huge.json', ' '.repeat(70000))),
      run(put('setting.json', { ...given, setting: '77-left' })),
    ];
    for (const result of refused) {
      expect(result.code).toBe(2);
      const { issues } = answer(result);
      expect(issues.length).toBeGreaterThan(0);
      for (const { message, fix } of issues) expect(message && fix).toBeTruthy();
    }
    expect(readFileSync(taken, 'utf8')).toBe('keep me');
    expect(existsSync(join(dir, 'no'))).toBe(false);
  });
});

describe('budget', () => {
  const draw = (draws?: string, seed?: string) => {
    const { code, out } = printed(() => budgetFile(DESIGN, draws, seed, true));
    return { code, value: JSON.parse(out.join('')) as Drawn };
  };
  interface Drawn {
    readonly draws: number;
    readonly outputs: readonly {
      readonly key: string;
      readonly nominal: number;
      readonly simulated: { readonly low: number; readonly high: number };
      readonly effects: readonly { readonly source: string }[];
    }[];
    readonly issues: readonly { readonly path: string; readonly fix: string }[];
  }

  it('starts from the last setting of the plan and repeats for a seed', () => {
    const { code, value } = draw('300', '9');
    expect(code).toBe(0);
    expect(value.draws).toBe(300);
    const [angle, height, edge] = value.outputs;
    const last = fresh.fixture.settings.at(-1);
    // The plan's angle at the bevel place; the plan's places lie a few mm apart.
    expect(Math.abs((angle?.nominal ?? NaN) - (last?.angle ?? NaN))).toBeLessThan(0.02);
    expect(edge?.nominal).toBeCloseTo(last?.edgeStop ?? NaN, 6);
    expect(height?.simulated.low).toBeLessThan(height?.nominal ?? NaN);
    for (const { effects } of value.outputs)
      for (const { source } of effects) expect(source).toBeTruthy();
    expect(draw('300', '9').value).toEqual(value);
    expect(draw('300', '10').value).not.toEqual(value);
  });

  it('answers draws and seeds that mean nothing with 2 and a mend', () => {
    for (const [draws, seed] of [['10'], ['many'], [''], ['-5'], ['300', '0'], ['300', '1.5']]) {
      const { code, value } = draw(draws, seed);
      expect(code).toBe(2);
      expect(value.issues[0]?.fix).toBeTruthy();
      expect(value.issues[0]?.path).toBe(seed === undefined ? '--draws' : '--seed');
    }
  });
});
