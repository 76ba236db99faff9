import type { Grinder } from '../grinder/schema.ts';
import type { Design } from './schema.ts';

const HEADING = ['format', 'schema', 'name', 'kind', 'id'];

/** Marks first, then by name, so that equal documents give equal bytes. */
const order = (a: string, b: string): number => {
  const [i, j] = [HEADING.indexOf(a), HEADING.indexOf(b)];
  if (i !== j) return i === -1 ? 1 : j === -1 ? -1 : i - j;
  return a < b ? -1 : a > b ? 1 : 0;
};

const canonical = (value: unknown): unknown => {
  if (Array.isArray(value)) return value.map(canonical);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .sort(([a], [b]) => order(a, b))
      .map(([key, inner]: [string, unknown]) => [key, canonical(inner)]),
  );
};

const write = (value: unknown): string => `${JSON.stringify(canonical(value), null, 2)}\n`;

/**
 * The text of a design file: every parameter, initial values included, in a fixed order, ending
 * in a line break. Equal designs give equal bytes; numbers are written so that they read back
 * exactly.
 */
export const saveDesign = (design: Design): string => write(design);

/** The text of a grinder file; see `saveDesign`. */
export const saveGrinder = (grinder: Grinder): string => write(grinder);
