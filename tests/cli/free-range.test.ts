import { afterAll, describe, expect, it, vi } from 'vitest';
import type { NumberRange } from '../../src/make/free-range/numbers.ts';
import { gaugeText } from '../robust/gauge.ts';
import { run, runJson, workshop } from './runner.ts';

// The template family is quick: the same command over a registry of that family alone.
vi.mock('../../jigs/registry.ts', async () => ({
  registry: (await import('../robust/gauge.ts')).gaugeRegistry,
}));

const { put, clear } = workshop();
afterAll(clear);

/** Follows a share of the height, so that the bevel wanders; `allowed` says how far it may. */
const wandering = (name: string, allowed: number): string =>
  put(
    name,
    gaugeText()
      .replaceAll('"follow":"edge"', '"follow":"share"')
      .replaceAll('"allowed":1.5', `"allowed":${String(allowed)}`),
  );

const ALLOWED = 'blades.0.line.allowed';
const ofFixture = (name: string): string => `fixture.parameters.${name}`;

interface Checked {
  readonly id: string;
  readonly found: number;
}

describe('the free range of a whole design', () => {
  it('ends where a check fails, at its own number, and a design on either side shows it', async () => {
    const file = wandering('wandering.jig.json', 10);
    const { code, value } = await runJson('check', file, '--range', '--only', ALLOWED);
    expect(code).toBe(0);
    const [range] = value.numbers as NumberRange[];
    const lines = (value.checks as Checked[]).filter(({ id }) => id.startsWith('line/Kitchen 210'));
    const needed = Math.max(...lines.map(({ found }) => found));
    expect(needed).toBeGreaterThan(1.5);
    if (!range) throw new Error('no range');
    const { down, tolerance } = range;
    expect(down.stop).toBe('check');
    expect(down.fails.some((id) => id.startsWith('line/Kitchen 210'))).toBe(true);
    expect(down.good).toBeGreaterThanOrEqual(needed);
    expect(down.bad).toBeLessThan(needed);
    expect(down.good - (down.bad ?? NaN)).toBeLessThanOrEqual(tolerance);
    // The check's number says where it fails: halving alone would try as many values again.
    expect(down.tried).toBeLessThanOrEqual(6);
    // Alone in its design, so that no other blade fails first.
    const one = (allowed: number): string =>
      put(
        'one.jig.json',
        gaugeText()
          .replaceAll('"follow":"edge"', '"follow":"share"')
          .replace('"allowed":1.5', `"allowed":${String(allowed)}`)
          .replace('"allowed":1.5', '"allowed":10'),
      );
    expect((await run('check', one(down.good))).code).toBe(0);
    expect((await run('check', one(down.bad ?? NaN))).code).toBe(1);
  });

  it('tells limits from refusals, for every number of the fixture', async () => {
    const good = put('good.jig.json', gaugeText());
    const { value } = await runJson('check', good, '--range');
    const ranges = new Map((value.numbers as NumberRange[]).map((one) => [one.path, one]));
    expect(ranges.get(ofFixture('height'))).toMatchObject({
      down: { good: 30, stop: 'limit' },
      up: { good: 120, stop: 'limit' },
    });
    // Sheets come in whole thicknesses, so that any other is refused.
    for (const end of ['down', 'up'] as const)
      expect(ranges.get(ofFixture('thickness'))?.[end]).toMatchObject({
        good: 4,
        stop: 'refused',
        fails: ['thickness-missing'],
      });
    const { out } = await run('check', good, '--range');
    expect(out).toContain('Gauge height 60 mm: down to 30 (end of its range); up to 120');
  });

  it('is not given for a design that fails as it stands', async () => {
    const { code, value } = await runJson('check', wandering('wrong.jig.json', 1.5), '--range');
    expect(code).toBe(1);
    expect(value.numbers).toBeUndefined();
  });
});
