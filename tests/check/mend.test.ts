import { describe, expect, it } from 'vitest';
import { readFileSync } from 'node:fs';
import { registry } from '../../jigs/registry.ts';
import { mendOf } from '../../src/check/mend.ts';
import type { CheckResult } from '../../src/check/result.ts';
import { withValue } from '../../src/core/path.ts';
import { checkDesign, openDesign } from '../../src/document/open.ts';

const opened = openDesign(readFileSync('jigs/spine-rest/examples/kitchen-210.jig.json'), registry);
if (!opened.ok) throw new Error('the example does not open');
const design = opened.value;

describe('a mend', () => {
  it.each([
    ['blades.0.edge.asHeatTreated', 9],
    ['blades.0.edge.wanted', 1.9],
    ['blades.0.spineRadius', 2.7],
    ['blades.0.bevels.left.height', 119],
    ['blades.0.thickness.0.u', 480],
  ])('of %s = %d clears the issue it stands on', (path, value) => {
    const wrong = withValue(design, path, value);
    const issues = checkDesign(wrong, registry).issues.filter((issue) => issue.path === path);
    const mends = issues.filter(({ mend }) => mend);
    expect(mends.length).toBeGreaterThan(0);
    // Two may stand on one value: each clears its own.
    for (const { code, mend } of mends) {
      if (mend === undefined) continue;
      const mended = checkDesign(withValue(wrong, mend.path, mend.value), registry);
      expect(mended.issues.filter((one) => one.path === path && one.code === code)).toEqual([]);
    }
  });

  const check: CheckResult = {
    id: 'x',
    label: 'x',
    kind: 'range',
    passed: false,
    unit: 'mm',
    found: 1,
    atLeast: 1.234,
    basis: '',
    message: '',
    fix: '',
    parameter: 'fixture.parameters.noseGap',
  };
  const at = (noseGap: number) => withValue(design, 'fixture.parameters.noseGap', noseGap);

  it('of a check is the limit, rounded to the side that holds', () => {
    expect(mendOf(at(1), check)?.value).toBe(1.24);
    expect(mendOf(at(2), { ...check, found: 2, atLeast: 0, atMost: 1.567 })?.value).toBe(1.56);
  });

  it('is offered only where the numbers alone say it', () => {
    expect(mendOf(at(1), { ...check, passed: true })).toBeUndefined();
    expect(mendOf(at(1), { ...check, found: null })).toBeUndefined();
    // What was found is not the parameter's own value: more than one number is at play.
    expect(mendOf(at(1.5), check)).toBeUndefined();
    // A margin of safety is never offered smaller.
    const reserve = {
      ...check,
      found: 0.05,
      atLeast: 0.1,
      parameter: 'fixture.parameters.pushReserve',
    };
    expect(mendOf(withValue(design, reserve.parameter, 0.1), reserve)).toBeUndefined();
  });

  it('allows the deviation of a line that was found', () => {
    const allowed = design.blades[0]?.line.allowed ?? 0;
    const line = {
      ...check,
      found: allowed + 0.111,
      atMost: allowed,
      parameter: 'blades.0.line.allowed',
    };
    const mend = mendOf(design, line);
    expect(mend?.value).toBeGreaterThanOrEqual(allowed + 0.111);
    expect(mend?.value).toBeLessThan(allowed + 0.122);
    // A limit that is not the allowance itself is not moved by allowing more.
    expect(mendOf(design, { ...line, atMost: allowed / 2 })).toBeUndefined();
  });
});
