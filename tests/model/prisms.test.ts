import { describe, expect, it } from 'vitest';
import { circle, polygon, rectangle, slot, type Loop } from '../../src/geometry/loop.ts';
import { signedArea } from '../../src/geometry/loop-measure.ts';
import { cross2, sub2, type Vec2 } from '../../src/geometry/vector.ts';
import { convexParts } from '../../src/model/convex.ts';
import type { Layer } from '../../src/model/part.ts';
import { prismsOf, type Prism } from '../../src/model/prisms.ts';
import { meshOf } from '../../src/model/solid.ts';
import { random } from '../check/shapes.ts';
import { examplesOf, solved, valueOf } from '../family/examples.ts';
import { Manifold, toManifold } from './manifold.ts';

const areaOf = (points: readonly Vec2[]): number => signedArea(polygon(points));

/** Corners at which polygons with holes, the outer one anticlockwise, bend the other way. */
const reflexIn = (rings: readonly (readonly Vec2[])[]): number =>
  rings.flatMap((points) =>
    points.filter((p, i) => {
      const next = points[(i + 1) % points.length] ?? p;
      const after = points[(i + 2) % points.length] ?? p;
      return cross2(sub2(next, p), sub2(after, next)) < 0;
    }),
  ).length;

const isConvex = (points: readonly Vec2[]): boolean =>
  points.every((p, i) => {
    const next = points[(i + 1) % points.length] ?? p;
    const after = points[(i + 2) % points.length] ?? p;
    return cross2(sub2(next, p), sub2(after, next)) >= 0;
  });

/** A star of random radii with a few round holes in its middle. */
const plate = (next: () => number): Layer => {
  const corners = 8 + Math.floor(30 * next());
  const outer = polygon(
    Array.from({ length: corners }, (_, i): Vec2 => {
      const [turn, radius] = [(2 * Math.PI * i) / corners, 30 + 40 * next()];
      return [radius * Math.cos(turn), radius * Math.sin(turn)];
    }),
  );
  const holes = [0, 1, 2].map((i) =>
    circle([12 * Math.cos(2 * i), 12 * Math.sin(2 * i)], 2 + next()),
  );
  return { profile: { outer, holes: holes.slice(0, Math.floor(4 * next())) }, from: 0, to: 6 };
};

/** All that prisms fill, by the reference library. */
const filled = (prisms: readonly Prism[]): InstanceType<typeof Manifold> =>
  Manifold.union(
    prisms.map(({ polygon: base, from, to }) =>
      Manifold.hull(
        [from, to].flatMap((z) => base.map(([x, y]): [number, number, number] => [x, y, z])),
      ),
    ),
  );

const volumeOf = (prisms: readonly Prism[]): number =>
  prisms.reduce((sum, { polygon: base, from, to }) => sum + areaOf(base) * (to - from), 0);

describe('convex parts of a polygon', () => {
  // S. Hertel, K. Mehlhorn 1983: no corner that is not convex needs more than two diagonals.
  it('are convex, fill it, and are one more than twice its reflex corners at most', () => {
    const next = random(5);
    for (let i = 0; i < 60; i += 1) {
      const { outer, holes } = plate(next).profile;
      const ring = (loop: Loop): Vec2[] =>
        loop.kind === 'circle'
          ? Array.from({ length: 40 }, (_, k): Vec2 => {
              const turn = (2 * Math.PI * k) / 40;
              const [x, y] = loop.centre;
              return [x + loop.radius * Math.cos(turn), y + loop.radius * Math.sin(turn)];
            })
          : loop.vertices.map(({ x, y }): Vec2 => [x, y]);
      const rings = [ring(outer), ...holes.map((hole) => ring(hole).reverse())];
      const found = convexParts(rings);
      expect(found.every(isConvex)).toBe(true);
      const whole = rings.reduce((sum, points) => sum + areaOf(points), 0);
      expect(found.reduce((sum, points) => sum + areaOf(points), 0)).toBeCloseTo(whole, 8);
      expect(found.length).toBeLessThanOrEqual(2 * reflexIn(rings) + 1);
    }
  });
});

describe('prisms of a stack', () => {
  it('fill what manifold-3d says its mesh bounds, and overlap nowhere', () => {
    const next = random(6);
    for (let i = 0; i < 5; i += 1) {
      const low = plate(next);
      const layers = [low, { profile: { outer: circle([0, 0], 6), holes: [] }, from: 6, to: 9 }];
      const clear = low.profile.holes.length === 0 ? layers : [low];
      const prisms = valueOf(prismsOf(clear, 0.005));
      const mesh = toManifold(valueOf(meshOf(clear, { chord: 0.005, volumeShare: Infinity })));
      expect(volumeOf(prisms) / mesh.volume()).toBeCloseTo(1, 6);
      const all = filled(prisms);
      // The library works to some 1e-5 mm of a part of this size: times its surface.
      expect(all.subtract(mesh).volume()).toBeLessThan(0.05);
      expect(mesh.subtract(all).volume()).toBeLessThan(0.05);
    }
  });

  it('have the volume of the meshes of all parts of the worked designs, as so many pieces less', () => {
    let [pieces, triangles] = [0, 0];
    for (const family of ['carriage', 'spine-rest']) {
      for (const example of examplesOf(family).slice(0, 1)) {
        for (const { layers } of valueOf(solved(example).parts())) {
          const prisms = valueOf(prismsOf(layers, 0.005));
          const mesh = valueOf(meshOf(layers, { chord: 0.005, volumeShare: Infinity }));
          expect(volumeOf(prisms) / toManifold(mesh).volume()).toBeCloseTo(1, 5);
          pieces += prisms.length;
          triangles += mesh.triangles.length / 3;
        }
      }
    }
    expect(pieces).toBeLessThan(triangles / 5);
  });

  it('are refused where the contours enclose no face, and where a mesh of the stack is', () => {
    const cut = (outer: Loop, holes: readonly Loop[]): Layer => ({
      profile: { outer, holes },
      from: 0,
      to: 2,
    });
    const bow = polygon([
      [0, 0],
      [10, 10],
      [10, 0],
      [0, 12],
    ]);
    expect(prismsOf([cut(bow, [])], 0.01).issues[0]?.code).toBe('layer-without-face');
    const out = cut(rectangle([0, 0], [20, 20]), [circle([20, 10], 4)]);
    expect(prismsOf([out], 0.01).ok).toBe(false);
    const wide = cut(rectangle([0, 0], [20, 20]), [slot([5, 6], [14, 12], 3)]);
    expect(prismsOf([wide], 0.01).ok).toBe(true);
    expect(prismsOf([], 0.01).issues[0]?.code).toBe('layer-without-height');
  });
});
