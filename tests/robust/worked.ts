import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { openDesign } from '../../src/document/open.ts';
import type { Design } from '../../src/document/schema.ts';
import type { Registry } from '../../src/family/index.ts';

/** The worked designs of a family. */
export const workedDesigns = (family: string, registry: Registry): Design[] =>
  readdirSync('jigs', { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.jig.json'))
    .sort()
    .flatMap((name) => {
      const opened = openDesign(readFileSync(join('jigs', name)), registry);
      return opened.ok && opened.value.fixture.family === family ? [opened.value] : [];
    });
