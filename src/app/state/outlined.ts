import type { Blade } from '../../blade/schema.ts';
import { withValue } from '../../core/path.ts';
import type { Design } from '../../document/schema.ts';

/**
 * The design with another outline for one of its blades. Names that still are those of a worked
 * example are then untrue: blade and design are called by the file.
 */
export const withOutline = (
  design: Design,
  index: number,
  outlined: Blade,
  file: string | null,
  examples: readonly string[],
): Design => {
  const called =
    file
      ?.replace(/\.[^.]*$/, '')
      .trim()
      .slice(0, 60) ?? '';
  const borrowed = called !== '' && examples.includes(design.name);
  const blade = borrowed ? { ...outlined, name: called } : outlined;
  const next = withValue(design, `blades.${index}`, blade);
  return borrowed ? { ...next, name: called } : next;
};
