import { existsSync, readFileSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';
import { text } from '../../src/text/index.ts';
import type { Design } from '../../src/document/schema.ts';
import { run, workshop } from './runner.ts';

const { at, put, clear } = workshop();
afterAll(clear);

const source = new URL('../../jigs/spine-rest/examples/kitchen-210.jig.json', import.meta.url);
const kitchen = JSON.parse(readFileSync(source, 'utf8')) as Design;

/**
 * A blade with a taper that asks for a strip. On the rounded step it yaws so far that its heel end
 * meets the base: a failed check of the strip, on a fixture whose own checks pass.
 */
const tapered = (): string => {
  const [first] = kitchen.blades;
  if (first === undefined) throw new Error('no blade');
  const thickness = [
    { u: 0, t: 3 },
    { u: 210, t: 2.2 },
  ];
  const design = {
    ...kitchen,
    sequence: kitchen.sequence.slice(-1),
    blades: [{ ...first, thickness, line: { ...first.line, allowed: 0.5 } }],
    fixture: {
      ...kitchen.fixture,
      parameters: { ...kitchen.fixture.parameters, leastBearing: 0.3 },
    },
  };
  return put('tapered.jig.json', JSON.stringify(design));
};

describe('a strip whose checks fail', () => {
  it('is told, and written only where that is accepted', async () => {
    const asked = ['grind', tapered(), '--cure', '--grid', '5', '--out', at('strip')];
    const refused = await run(...asked);
    expect(refused.code).toBe(1);
    expect(refused.out).toContain('FAIL');
    expect(refused.err).toContain('--accept-failing');
    expect(existsSync(at('strip'))).toBe(false);
    const accepted = await run(...asked, '--accept-failing');
    expect(accepted.code).toBe(1);
    for (const sheet of ['ground-1-1', 'step-rounded-1', 'line-strip-1'])
      expect(readFileSync(at(`strip/${sheet}.svg`), 'utf8')).toContain(text.make.failedHead.trim());
  });
});
