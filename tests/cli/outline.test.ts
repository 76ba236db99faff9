import { readFileSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';
import { registry } from '../../jigs/registry.ts';
import { openDesign } from '../../src/document/open.ts';
import type { Design } from '../../src/document/schema.ts';
import type { Vec2 } from '../../src/geometry/vector.ts';
import { bladeOf, drawnOutline, dxfOfLines, sidesOf } from '../outline/files.ts';
import { run, runJson, workshop } from './runner.ts';

const { at, put, clear } = workshop();
afterAll(clear);

const START = 'jigs/spine-rest/examples/kitchen-210.jig.json';
const blade = bladeOf('spine-rest/examples/kitchen-210');
const designAt = (file: string): Design => {
  const opened = openDesign(readFileSync(file), registry);
  if (!opened.ok) throw new Error(JSON.stringify(opened.issues));
  return opened.value;
};
const length = blade.outline.kind === 'dimensions' ? blade.outline.length : NaN;
const whole = length + (blade.tang.kind === 'tang' ? blade.tang.length : NaN);
const dxf = put('drawn.dxf', dxfOfLines(sidesOf(drawnOutline(blade, 20, 1 / 25.4))));
/** The same with its edge waved by 0.5 mm, as no dimensions say it. */
const waved = put(
  'waved.dxf',
  dxfOfLines(
    sidesOf(
      drawnOutline(blade, 0, 1).map(([x, y]): Vec2 => [
        x,
        y + (y > 20 ? 0.5 * Math.sin(x / 12) : 0),
      ]),
    ),
    4,
  ),
);

describe('outline', () => {
  it('gives the first blade the drawn outline, and leaves the others and all else as they were', async () => {
    const out = at('taken.jig.json');
    const { code, value } = await runJson(
      ...['outline', dxf, '--length', String(whole), '--into', START, '--out', out],
    );
    expect(code).toBe(0);
    expect(value).toMatchObject({ plungeBy: 'step', taken: { outline: { kind: 'dimensions' } } });
    const [before, after] = [designAt(START), designAt(out)];
    const [first, ...others] = after.blades;
    expect(first?.outline.kind === 'dimensions' && first.outline.length).toBeCloseTo(length, 1);
    expect(others).toEqual(before.blades.slice(1));
    expect({ ...after, blades: [] }).toEqual({ ...before, blades: [] });
    expect((await run('outline', dxf, '--length', '300', '--into', START, '--out', out)).code).toBe(
      2,
    );
  });

  it('takes points where dimensions leave the drawn line by more than a tenth, or on request', async () => {
    const kindOf = async (file: string, ...more: string[]) => {
      const { code, value } = await runJson('outline', file, '--length', String(whole), ...more);
      expect(code).toBe(0);
      return value as { taken: { outline: { kind: string }; deviation: number } };
    };
    const near = await kindOf(dxf);
    expect([near.taken.outline.kind, near.taken.deviation < 0.1]).toEqual(['dimensions', true]);
    expect((await kindOf(dxf, '--points')).taken.outline.kind).toBe('curves');
    const far = await kindOf(waved);
    expect([far.taken.outline.kind, far.taken.deviation < 0.1]).toEqual(['curves', true]);
  });

  it('says what it needs: a length in its range, and where to write', async () => {
    const codes = async (...args: string[]) => {
      const { code, value } = await runJson('outline', dxf, ...args);
      return [code, (value['issues'] as { code: string; path: string }[]).map((one) => one.path)];
    };
    for (const wrong of ['4.9', '1000.1', '-5', '1e2', 'long'])
      expect(await codes('--length', wrong), wrong).toEqual([2, ['--length']]);
    expect(await codes('--length', '300', '--turn', '46')).toEqual([2, ['--turn']]);
    expect(await codes('--length', '300', '--into', START)).toEqual([2, ['--out']]);
  });
});
