import { describe, expect, it } from 'vitest';
import { registry } from '../../jigs/registry.ts';
import type { Profile } from '../../src/geometry/loop.ts';
import { boundingBox } from '../../src/geometry/loop-measure.ts';
import type { Vec2 } from '../../src/geometry/vector.ts';
import { nestedSheets } from '../../src/make/files/nest.ts';
import type { PlatePart } from '../../src/model/part.ts';
import { examplesOf, solved, valueOf } from '../family/examples.ts';

const cornerOf = ({ outer }: Profile): Vec2 => {
  const first = outer.kind === 'path' ? outer.vertices[0] : undefined;
  return first ? [first.x, first.y] : [NaN, NaN];
};

/** How far every point of the marks lies from the first corner of the outline, mm. */
const apart = (cut: Profile, marks: readonly (readonly Vec2[])[]): number[] => {
  const [cx, cy] = cornerOf(cut);
  return marks.flat().map(([x, y]) => Math.hypot(x - cx, y - cy));
};

const profileOf = ({ name, layers }: PlatePart): Profile => {
  const own = layers[0]?.profile;
  if (own === undefined) throw new Error(`${name} has no outline`);
  return own;
};

const widthOf = ({ outer }: Profile): number => {
  const { min, max } = boundingBox(outer);
  return max[0] - min[0];
};

describe('marks on nested sheets', () => {
  // A turn leaves every distance as it is; a mirror image of the marks alone does not.
  it('lie where they are on the plate, turned or not', () => {
    let [turned, straight] = [0, 0];
    for (const example of Object.keys(registry.families).flatMap(examplesOf)) {
      const { design } = example;
      const parts = valueOf(solved(example).parts());
      const plates = parts.flatMap((part): PlatePart[] =>
        part.kind === 'plate' && part.engraving.length > 0 ? [{ ...part, process: 'laser' }] : [],
      );
      for (const [width, height] of [
        [2000, 400],
        [130, 2000],
      ] as const) {
        const { plates: own } = design.making;
        const nest = { ...own.nest, sheets: 'beside', width, height } as const;
        const making = { ...design.making, plates: { ...own, kerf: 0, nest } };
        const sheets = nestedSheets(plates, making);
        // A plate may be too large for the strip.
        for (const { part, drawing } of sheets.ok ? sheets.value.flatMap((s) => s.pieces) : []) {
          const wanted = apart(profileOf(part), part.engraving);
          const found = apart(drawing.cut, drawing.engrave);
          expect(found).toHaveLength(wanted.length);
          found.forEach((far, i) => expect(far).toBeCloseTo(wanted[i] ?? NaN, 9));
          if (Math.abs(widthOf(drawing.cut) - widthOf(profileOf(part))) > 1) turned += 1;
          else straight += 1;
        }
      }
    }
    expect(Math.min(turned, straight)).toBeGreaterThan(0);
  });
});
