import { GRINDER_FORMAT, GRINDER_VERSION } from '../grinder/schema.ts';
import { text } from '../text/index.ts';
import { DESIGN_FORMAT, DESIGN_VERSION } from './schema.ts';
import type { Format } from './version.ts';

/**
 * The file formats. Whoever changes a schema raises its version and adds a migration here; a
 * file of every past version stays in the tests.
 */
export const designFormat: Format = {
  mark: DESIGN_FORMAT,
  noun: text.document.open.design,
  version: DESIGN_VERSION,
  migrations: [],
};

export const grinderFormat: Format = {
  mark: GRINDER_FORMAT,
  noun: text.document.open.grinder,
  version: GRINDER_VERSION,
  migrations: [],
};
