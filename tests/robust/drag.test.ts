import { describe, expect, it } from 'vitest';
import { registry } from '../../jigs/registry.ts';
import { saveDesign } from '../../src/document/save.ts';
import type { Design } from '../../src/document/schema.ts';
import { tryDrag } from './try-drag.ts';
import { workedDesigns } from './worked.ts';

/** A design whose first blade is a tenth of a millimetre thicker. */
const thicker = ({ blades: [first, ...rest], ...design }: Design): Design => ({
  ...design,
  blades: first
    ? [{ ...first, thickness: first.thickness.map(({ u, t }) => ({ u, t: t + 0.1 })) }, ...rest]
    : [],
});

/** The shortest worked design of a family: one step of the longest takes as long as all of these. */
const shortest = (family: string): Design | undefined =>
  workedDesigns(family, registry).sort((a, b) => saveDesign(a).length - saveDesign(b).length)[0];

// More of these, at random, are in `npm run soak`.
describe('a drag', () => {
  it.each(Object.keys(registry.families))(
    'of %s changes nothing by what it keeps, and holds at the end what it tells early',
    (family) => {
      const design = shortest(family);
      if (!design) throw new Error(`no worked ${family}`);
      expect(tryDrag([design, thicker(design)], registry)).toEqual([]);
    },
  );
});
