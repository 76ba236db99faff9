import { it } from 'vitest';
import { registry } from '../../jigs/registry.ts';
import { examplesOf, type Example } from './examples.ts';
import { familySuite } from './suite.ts';

for (const family of Object.values(registry.families)) {
  let examples: Example[] = [];
  try {
    examples = examplesOf(family.id);
  } catch (error) {
    it(`${family.id} opens all its examples`, () => {
      throw error;
    });
  }
  familySuite(family, examples);
}
