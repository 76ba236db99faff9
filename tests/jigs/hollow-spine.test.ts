import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { registry } from '../../jigs/registry.ts';
import { shapeOf } from '../../src/blade/shape.ts';
import { withValue } from '../../src/core/path.ts';
import { checkDesign, openDesign } from '../../src/document/open.ts';
import type { Design } from '../../src/document/schema.ts';
import { boundingBox } from '../../src/geometry/loop-measure.ts';
import { place } from '../../src/geometry/frame.ts';
import { checkFixture, solveDesign } from '../../src/make/engine.ts';
import { valueOf } from '../family/examples.ts';

const kitchen: Design = valueOf(
  openDesign(readFileSync('jigs/spine-rest/examples/kitchen-210.jig.json'), registry),
);
const bowed = (sagitta: number): Design => {
  const [blade] = kitchen.blades;
  const one = { ...kitchen, blades: blade ? [blade] : [] };
  return valueOf(checkDesign(withValue(one, 'blades.0.outline.spineSagitta', sagitta), registry));
};
const solvedOf = (design: Design) => valueOf(solveDesign(design, registry));

/** The blade's spine above the seat at the middle of the belt, by places along it. */
const heights = (design: Design): Map<number, number> => {
  const [blade] = design.blades;
  if (!blade) throw new Error('no blade');
  const { spine } = shapeOf(blade);
  return new Map(
    solvedOf(design)
      .poses('5-left', blade.name)
      .map(({ u, frame }) => [u, place(frame, [u, spine.value(u), 0])[2]]),
  );
};

/** By brute force how far the spine at u lies above a nose so wide that comes up to it from below. */
const bridged = (design: Design, half: number, u: number): number => {
  const [blade] = design.blades;
  if (!blade) throw new Error('no blade');
  const { spine } = shapeOf(blade);
  const at = Array.from({ length: 261 }, (_, i) => u - half + (half * i) / 130).filter(
    (x) => x >= 0 && x <= 205,
  );
  const [before, after] = [at.filter((x) => x < u), at.filter((x) => x > u)];
  // Of all chords over u the lowest has no point of the spine below it: it lies on the nose.
  const chord = (p: number, q: number): number =>
    spine.value(p) + ((u - p) / (q - p)) * (spine.value(q) - spine.value(p));
  const lowest = Math.min(...before.flatMap((p) => after.map((q) => chord(p, q))));
  return Math.max(0, spine.value(u) - lowest);
};

describe('a blade with a hollow spine on a spine rest', () => {
  it.each([-1, -4, -8])('lies %s mm hollow on nose and step no deeper than it may', (sagitta) => {
    const design = bowed(sagitta);
    const { checks } = valueOf(checkFixture(solvedOf(design), design.making, 'near'));
    for (const id of ['contact/blade/nose', 'contact/blade/step'])
      expect(checks.find((check) => check.id === id)?.passed).toBe(true);
    // What fails is told with its number: every check is computed.
    expect(checks.filter(({ found }) => found === null)).toEqual([]);
  });

  it('stands on the ends of the hollow, as high over the seat as these bridge it', () => {
    const design = bowed(-4);
    const nose = valueOf(solvedOf(design).parts()).find(({ id }) => id === 'nose');
    const outer = nose?.layers[0]?.profile.outer;
    if (outer === undefined) throw new Error('no nose');
    const { min, max } = boundingBox(outer);
    const half = (max[0] - min[0]) / 2;
    const straight = heights(bowed(0));
    let most = 0;
    for (const [u, height] of heights(design)) {
      const flat = straight.get(u);
      // Off the tip the belt bears elsewhere, and the tang is no spine.
      if (flat === undefined || u < 40 || u > 100) continue;
      const gap = bridged(design, half, u);
      most = Math.max(most, gap);
      expect(Math.abs(height - flat - gap)).toBeLessThan(0.03);
    }
    expect(most).toBeGreaterThan(0.5);
  });
});
