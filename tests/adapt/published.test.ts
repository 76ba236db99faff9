import { toJsonSchema } from '@valibot/to-json-schema';
import { Ajv } from 'ajv';
import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { registry } from '../../jigs/registry.ts';
import { compare } from '../../src/adapt/compare.ts';
import { comparisonSchema } from '../../src/adapt/output-schema.ts';
import { withValue } from '../../src/core/path.ts';
import { unitSchema } from '../../src/make/output-schema.ts';
import { examplesOf } from '../family/examples.ts';

// Every answer that the program writes is as `jig schema` publishes it, by a validator of its own
// (JSON Schema, draft-07). The commands' own suite holds the plain answers of the smallest family
// against it; here stand those of the others that hold more.

const holds = (schema: Parameters<typeof toJsonSchema>[0], value: unknown): string => {
  const published = JSON.parse(JSON.stringify(toJsonSchema(schema))) as object;
  const validate = new Ajv({ strict: false }).compile(published);
  return validate(JSON.parse(JSON.stringify(value))) ? '' : JSON.stringify(validate.errors);
};

describe('published schemas', () => {
  it('allow a mend that is a choice', () => {
    const design = examplesOf('spine-rest').find(({ file }) => file.startsWith('kitchen'))?.design;
    if (!design) throw new Error('no kitchen design');
    const sawn = withValue(design, 'making.plates.process', 'saw-drill');
    const comparison = compare(design, sawn, registry);
    const mends = comparison.issues.flatMap(({ mend }) => mend ?? []);
    expect(mends).toContainEqual({ path: 'fixture.parameters.guide', value: 'strips' });
    expect(holds(comparisonSchema, comparison)).toBe('');
  });

  it('know the unit of every number of every family', () => {
    const parameters = Object.values(registry.families).flatMap((family) =>
      Object.values(family.parameters),
    );
    const units = parameters.flatMap((one) => (one.kind === 'number' ? one.unit : []));
    expect(units).toContain('N/mm2');
    expect(holds(v.array(unitSchema), units)).toBe('');
  });
});
