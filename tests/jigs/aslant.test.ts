import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { registry } from '../../jigs/registry.ts';
import { stopDistance } from '../../jigs/shared/layout/stop-distance.ts';
import { withValue } from '../../src/core/path.ts';
import { checkDesign, openDesign } from '../../src/document/open.ts';
import type { Design } from '../../src/document/schema.ts';
import { checkFixture, solveDesign } from '../../src/make/engine.ts';
import { valueOf } from '../family/examples.ts';

const opened = (file: string): Design =>
  valueOf(openDesign(readFileSync(`jigs/${file}.jig.json`), registry));
const slicer = opened('edge-rest/examples/slicer-200-hollow');
const herb = opened('edge-rest/examples/herb-110-small-wheel');
const hunting = opened('spine-rest/examples/hunting-115');

const failing = (design: Design, path: string, value: number): string[] => {
  const sound = valueOf(checkDesign(withValue(design, path, value), registry));
  return valueOf(checkFixture(valueOf(solveDesign(sound, registry)), sound.making, 'near'))
    .checks.filter(({ passed }) => !passed)
    .map(({ id }) => id);
};

describe('a blade whose edge leaves a pad on its way', () => {
  it.each([1.25, 1.5])('touches a lip %s mm high no deeper than it may', (height) => {
    // From 1.25 mm on the belly meets the far pad near the end of the stroke: the stroke bends there.
    expect(failing(slicer, 'fixture.parameters.lipHeight', height)).not.toContain(
      'contact/blade/lip',
    );
  });
});

describe('the stop collar of a blade that lies aslant', () => {
  it.each([
    ['an edge that falls to the belly', slicer, 'blades.0.outline.heelHeight', 25.5, 'wear-strip'],
    ['an edge that rises to the belly', herb, 'blades.0.outline.heelHeight', 37.5, 'wear-strip'],
    ['a bulging spine', hunting, 'blades.0.outline.spineSagitta', 2, 'nose'],
  ] as const)('meets what stops it, on %s', (_, design, path, value, stop) => {
    expect(failing(design, path, value)).not.toContain(`contact/collar/${stop}`);
  });

  // By turning the face's line as points, which shares nothing with the formula.
  it.each([3, 0, -3])(
    'is as far from the plunge as the nearest of its face, at %s degrees',
    (p) => {
      const [half, u, deep] = [46, 27.5, 6];
      const stop = { slopes: [p], stands: [{ tilt: 0, rise: 0 }] };
      const distance = stopDistance({ half, u, deep, inner: 2, outer: 8, stop });
      const [c, s] = [Math.cos((p * Math.PI) / 180), Math.sin((p * Math.PI) / 180)];
      // The blade's line lies along the seat; its u axis, tip raised by p, points to (c, s), and the
      // face runs down from the place whose shadow on that axis is the plunge less the distance.
      const foot = -(distance + u) / c;
      const face = Array.from({ length: 1001 }, (_, i) => i / 100)
        .map((k) => ({ x: foot + k * s, z: -k * c }))
        .filter(({ z }) => z >= -deep);
      expect(Math.abs(Math.max(...face.map(({ x }) => x)) + half)).toBeLessThan(1e-3);
    },
  );
});

describe('a belt that leans over the maker', () => {
  it('stays as far from the hand on the push stick as one that stands square', () => {
    expect(failing(hunting, 'grinder.lean', -3)).toEqual([]);
  });
});
