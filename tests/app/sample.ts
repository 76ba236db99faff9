import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parameters } from '../../jigs/spine-rest/parameters.ts';
import { openDesign } from '../../src/document/open.ts';
import type { Design } from '../../src/document/schema.ts';

/** The worked examples of the spine rest. */
export const EXAMPLES = ['hunting-115', 'kitchen-210', 'paring-80'] as const;

export const exampleBytes = (name: (typeof EXAMPLES)[number]): Uint8Array =>
  readFileSync(join('jigs', 'spine-rest', 'examples', `${name}.jig.json`));

/** A worked example, opened as a file is opened. */
export const example = (name: (typeof EXAMPLES)[number] = 'hunting-115'): Design => {
  const opened = openDesign(exampleBytes(name), { families: { 'spine-rest': { parameters } } });
  if (!opened.ok) throw new Error(JSON.stringify(opened.issues));
  return opened.value;
};
