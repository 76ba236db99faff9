import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { bladeMesh } from '../../src/blade/blade-mesh.ts';
import { bladeSections, type BladeOptions } from '../../src/blade/blade-sections.ts';
import { convexSlabs, PROUD } from '../../src/blade/convex-slabs.ts';
import { hollowCut, planeCut, type Cut } from '../../src/blade/cut.ts';
import { bladeIssues } from '../../src/blade/rules.ts';
import type { Blade } from '../../src/blade/schema.ts';
import type { Vec3 } from '../../src/geometry/vector.ts';
import { Manifold, toManifold } from '../model/manifold.ts';
import { anyBlade, plainBlade } from './arbitrary.ts';

const hullOf = (points: readonly Vec3[]) =>
  Manifold.hull(points.map(([u, v, w]): Vec3 => [u, v, w]) as [number, number, number][]);

/** Coarse: the reference library unites every slab. */
const CHORD = 0.03;

/** Volume that slabs fill beyond the mesh of the same blade, and that they leave of it, mm3. */
const missed = (
  blade: Blade,
  options: BladeOptions,
): { proud: number; left: number; count: number } => {
  const slabs = convexSlabs(bladeSections(blade, options));
  const all = Manifold.union(slabs.map(hullOf));
  const mesh = toManifold(bladeMesh(blade, options).blade);
  return {
    proud: all.subtract(mesh).volume(),
    left: mesh.subtract(all).volume(),
    count: slabs.length,
  };
};

/** What the library leaves of solids of this size that are one and the same, mm3. */
const ROUNDING = 0.02;

const hollow = (radius: number): readonly Cut[] => [
  hollowCut(radius, () => ({ v: 18, w: radius + 0.7 }), 8),
];
const flat: readonly Cut[] = [planeCut(1.3, 0, -0.04)];

describe('convex slabs of a blade', () => {
  it('fill what manifold-3d says the mesh of a blank bounds, one between two sections', () => {
    let blanks = 0;
    fc.assert(
      fc.property(anyBlade, (blade) => {
        fc.pre(bladeIssues(blade, '').length === 0);
        const { proud, left, count } = missed(blade, { chord: CHORD });
        expect(Math.max(proud, left)).toBeLessThan(ROUNDING + PROUD * 300 * 70);
        const triangles = bladeMesh(blade, { chord: CHORD }).blade.triangles.length / 3;
        expect(count).toBeLessThan(triangles / 4);
        blanks += 1;
      }),
      { numRuns: 16, seed: 8 },
    );
    expect(blanks).toBeGreaterThan(6);
  });

  it('fill a ground blade, hollow or flat on one side or both', () => {
    for (const sides of [
      { left: hollow(40), right: hollow(40) },
      { left: flat, right: flat },
      { right: hollow(25) },
      { left: flat, right: hollow(60) },
    ]) {
      const blade = { ...plainBlade, spineRadius: 0.4 };
      const { proud, left } = missed(blade, { chord: CHORD, sides, plunge: 4 });
      expect(left).toBeLessThan(ROUNDING);
      // Both sides of 90 mm by 30 mm, nowhere prouder than is said.
      expect(proud).toBeLessThan(ROUNDING + PROUD * 2 * 90 * 30);
    }
  });

  it('do not bridge a hollow: a hull over it would fill far more', () => {
    const options = { chord: CHORD, sides: { left: hollow(25), right: hollow(25) }, plunge: 4 };
    const sections = bladeSections(plainBlade, options);
    const bridged = sections.slice(1).flatMap((next, i) =>
      [sections[i]].flatMap((here) =>
        here === undefined || here.u === next.u
          ? []
          : [
              hullOf(
                [here, next].flatMap(({ u, rungs }) =>
                  rungs.flatMap(({ v, left, right }): Vec3[] => [
                    [u, v, left],
                    [u, v, -right],
                  ]),
                ),
              ),
            ],
      ),
    );
    const mesh = toManifold(bladeMesh(plainBlade, options).blade);
    expect(Manifold.union(bridged).subtract(mesh).volume()).toBeGreaterThan(100);
    expect(missed(plainBlade, options).proud).toBeLessThan(ROUNDING + PROUD * 2 * 90 * 30);
  });
});
