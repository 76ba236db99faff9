import { XMLValidator } from 'fast-xml-parser';
import { readFileSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';
import { run, runJson, workshop } from './runner.ts';

const { at, clear } = workshop();
afterAll(clear);

const file = 'jigs/carriage/examples/sheepsfoot-95.jig.json';

describe('reach', () => {
  it('draws what it tables, and never over a file', async () => {
    const picture = at('reach.svg');
    const { code, out } = await run('reach', file, '--svg', picture);
    expect(code).toBe(0);
    expect(out).toContain(picture);
    const drawn = readFileSync(picture, 'utf8');
    expect(XMLValidator.validate(drawn)).toBe(true);
    const cells = out.match(/\d+(?:\.\d+)?-\d+(?:\.\d+)?/g) ?? [];
    expect(cells.length).toBeGreaterThan(5);
    for (const cell of new Set(cells)) expect(drawn).toContain(`>${cell}</text>`);
    const again = await runJson('reach', file, '--svg', picture);
    expect(again.code).toBe(2);
    expect(again.value).toMatchObject({ issues: [{ code: 'output-exists', path: '--svg' }] });
    expect(readFileSync(picture, 'utf8')).toBe(drawn);
  });

  it('says why a fixture that holds no blade has none', async () => {
    const carrier = 'jigs/backing-carrier/examples/radius-1200.jig.json';
    const { code, value } = await runJson('reach', carrier);
    expect(code).toBe(2);
    expect(value).toMatchObject({ issues: [{ code: 'reach-unknown', path: 'fixture.family' }] });
    expect(JSON.stringify(value)).toMatch(/holds no blade/);
  });
});
