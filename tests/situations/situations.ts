import { readFileSync } from 'node:fs';
import { registry } from '../../jigs/registry.ts';
import { withValue } from '../../src/core/path.ts';
import { openDesign } from '../../src/document/open.ts';
import { saveDesign, saveGrinder } from '../../src/document/save.ts';
import type { Grinder } from '../../src/grinder/schema.ts';
import { grinderPresets } from '../../src/grinder/presets/index.ts';

/**
 * The three situations as plain values, so that the command line and the browser go through the
 * same job and their packages can be held against each other byte for byte.
 */

/** The worked design that a maker starts from: by its file, and by what the app calls it. */
export const START = {
  file: 'jigs/carriage/examples/marking-60.jig.json',
  family: 'carriage',
} as const;

/** What the maker enters for a blade family of their own: the place in the document, the value. */
export const ENTERED: readonly { readonly path: string; readonly value: number | string }[] = [
  { path: 'name', value: 'Marking knives 68' },
  { path: 'blades.0.name', value: 'Marking 68' },
  { path: 'blades.0.quantity', value: 3 },
  { path: 'blades.0.outline.length', value: 68.5 },
  { path: 'blades.0.outline.bellyStart', value: 46 },
  { path: 'blades.0.outline.tipDrop', value: 17.5 },
  { path: 'blades.0.bevels.left.height', value: 15 },
];

/** The grinder of the second situation, and the one the other maker of the third one has. */
export const OTHER_GRINDER = 'platen-75';

/** The first situation's design as the command line reads it. */
export const newFixture = (): string => {
  const opened = openDesign(readFileSync(START.file), registry);
  if (!opened.ok) throw new Error(JSON.stringify(opened.issues));
  return saveDesign(
    ENTERED.reduce((design, { path, value }) => withValue(design, path, value), opened.value),
  );
};

const otherGrinder = (): Grinder => {
  const grinder = grinderPresets[OTHER_GRINDER];
  if (!grinder) throw new Error(`no preset ${OTHER_GRINDER}`);
  return grinder;
};

/** The other maker's grinder as a file of its own. */
export const theirGrinder = (): string => saveGrinder(otherGrinder());
