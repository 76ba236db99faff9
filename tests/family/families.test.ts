import { registry } from '../../jigs/registry.ts';
import { examplesOf } from './examples.ts';
import { familySuite } from './suite.ts';

for (const family of Object.values(registry.families)) familySuite(family, examplesOf(family.id));
