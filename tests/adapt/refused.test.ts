import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { registry } from '../../jigs/registry.ts';
import { adapt } from '../../src/adapt/adapt.ts';
import { build } from '../../src/adapt/consequence.ts';
import { firstBuilt } from '../../src/adapt/give-way.ts';
import { ontoGrinder } from '../../src/adapt/onto-grinder.ts';
import { openDesign } from '../../src/document/open.ts';
import type { Design } from '../../src/document/schema.ts';
import { grinderPresets } from '../../src/grinder/presets/index.ts';
import type { Grinder } from '../../src/grinder/schema.ts';
import { valueOf } from '../family/examples.ts';

const example = (file: string): Design =>
  valueOf(openDesign(readFileSync(`jigs/${file}.jig.json`), registry));

const preset = (name: string): Grinder => {
  const grinder = grinderPresets[name];
  if (!grinder) throw new Error(name);
  return grinder;
};

describe('a design that another grinder refuses', () => {
  it('says so where the design has no fixture on its own grinder, before another is looked at', () => {
    const from = example('spine-rest/examples/kitchen-210');
    const { fixture } = from;
    const wide = {
      ...from,
      fixture: { ...fixture, parameters: { ...fixture.parameters, wing: 34 } },
    };
    const refused = adapt(wide, { grinder: preset('arm-50') }, registry);
    expect(refused.ok).toBe(false);
    expect(refused.issues[0]?.message).toContain('The design as it is, on its own grinder: ');
  });

  it('tells all that stands against a grinder, not what a solver meets first alone', () => {
    // A belt narrower than the blade stands on it at the tip, and no wheel at the front.
    const side = example('edge-rest/examples/side-165-leaning');
    const before = build(side, registry);
    if (!before.ok) throw new Error('no fixture');
    const { issues } = firstBuilt(ontoGrinder(side, preset('platen-25')), before.value, registry);
    const errors = issues.filter(({ severity }) => severity === 'error');
    expect(errors.map(({ code }) => code)).toEqual(['tip-unground', 'no-wheel']);
    expect(errors[1]?.message).toContain('With what is named before this set');
  });
});
