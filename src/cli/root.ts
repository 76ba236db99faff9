import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The checkout; the one place that asks where its own source is (see built.mjs). */
export const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
