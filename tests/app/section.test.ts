import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { registry } from '../../jigs/registry.ts';
import { bladeSection, hollowRadius } from '../../src/app/pictures/blade-section.ts';
import { openDesign } from '../../src/document/open.ts';
import { grinderPresets } from '../../src/grinder/presets/index.ts';

const file = 'jigs/edge-rest/examples/slicer-200-hollow.jig.json';
const opened = openDesign(readFileSync(file), registry);
if (!opened.ok) throw new Error('the worked design does not open');
const slicer = opened.value;

/** Depth of a drawn section's left side under the flat bevel, and where along it, by plane geometry. */
const depths = (radius: number | null): { along: number; depth: number }[] => {
  const [blade] = slicer.blades;
  if (blade === undefined) throw new Error('no blade');
  const [wanted] = bladeSection(blade, 'b', radius).lines;
  const [c, s] = [Math.cos((3.2 * Math.PI) / 180), Math.sin((3.2 * Math.PI) / 180)];
  // The edge is 0.5 mm thick and 34 mm below the spine; the bevel opens by 3.2 degrees from there
  // and meets the stock of 3.5 mm after 1.5 / sin 3.2 = 26.9 mm.
  return (wanted?.points ?? [])
    .filter(([x]) => x < 0)
    .map(([x, y]) => ({
      along: (y + 34) * c - (x + 0.25) * s,
      depth: (x + 0.25) * c + (y + 34) * s,
    }))
    .filter(({ along }) => along < 26.8);
};

describe('the section of a hollowed blade', () => {
  it('shows the hollow as deep as it is stated, at its place on the bevel it is ground into', () => {
    const radius = hollowRadius(slicer);
    expect(radius).toBeGreaterThan(100);
    const [deepest] = depths(radius).toSorted((a, b) => b.depth - a.depth);
    expect(deepest?.depth).toBeCloseTo(0.3, 2);
    expect(Math.abs((deepest?.along ?? 0) - 18)).toBeLessThan(1);
    // From the chord of a circle: it is wider than 2 sqrt(2 R d) by nothing.
    const inside = depths(radius)
      .filter(({ depth }) => depth > 0.01)
      .map(({ along }) => along);
    const width = 2 * Math.sqrt(2 * (radius ?? 0) * 0.3);
    expect(Math.max(...inside) - Math.min(...inside)).toBeLessThan(width);
    expect(Math.max(...inside) - Math.min(...inside)).toBeGreaterThan(0.85 * width);
  });

  it('draws the bevel alone where the grinder has no such wheel', () => {
    const platen = grinderPresets['platen-50'];
    if (platen === undefined) throw new Error('no preset');
    expect(hollowRadius({ ...slicer, grinder: platen })).toBeNull();
    expect(Math.max(...depths(null).map(({ depth }) => depth))).toBeLessThan(1e-6);
  });
});
