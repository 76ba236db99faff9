import fc from 'fast-check';
import Module, { type Manifold } from 'manifold-3d';
import { beforeAll, describe, expect, it } from 'vitest';
import { bladeMesh } from '../../src/blade/blade-mesh.ts';
import { flatCut, hollowCut, planeCut, wantedCut } from '../../src/blade/cut.ts';
import { outlineLoop } from '../../src/blade/outline.ts';
import { bladeIssues } from '../../src/blade/rules.ts';
import type { Blade } from '../../src/blade/schema.ts';
import { shapeOf } from '../../src/blade/shape.ts';
import type { Mesh } from '../../src/geometry/mesh.ts';
import { anyBlade, plainBlade } from './arbitrary.ts';

/** Directed edges that do not meet exactly one edge of the other direction. */
const openEdges = ({ triangles }: Mesh): number => {
  const count = new Map<string, number>();
  for (let t = 0; t < triangles.length; t += 3)
    for (let k = 0; k < 3; k += 1) {
      const key = `${triangles[t + k]},${triangles[t + ((k + 1) % 3)]}`;
      count.set(key, (count.get(key) ?? 0) + 1);
    }
  return [...count].filter(([key, n]) => {
    const reverse = key.split(',').reverse().join();
    return n !== 1 || count.get(reverse) !== 1;
  }).length;
};

/** Signed volume by the divergence theorem. */
const volume = ({ vertices, triangles }: Mesh): number => {
  const point = (i: number): number[] => {
    const v = 3 * (triangles[i] ?? 0);
    return [vertices[v] ?? 0, vertices[v + 1] ?? 0, vertices[v + 2] ?? 0];
  };
  let sum = 0;
  for (let t = 0; t < triangles.length; t += 3) {
    const [[a = 0, b = 0, c = 0], [d = 0, e = 0, f = 0], [g = 0, h = 0, i = 0]] = [
      point(t),
      point(t + 1),
      point(t + 2),
    ] as [number[], number[], number[]];
    sum += a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g);
  }
  return sum / 6;
};

const withoutRicasso: Blade = { ...plainBlade, ricasso: 0 };
/** Area of the plain blade from plunge to tip: rectangle and circular segment, closed form. */
const areaOfPlain = (() => {
  const [run, rise] = [60, 30];
  const r = (run ** 2 + rise ** 2) / (2 * rise);
  return (
    30 * 80 +
    (rise - r) * run +
    (run * Math.sqrt(r * r - run ** 2) + r * r * Math.asin(run / r)) / 2
  );
})();

describe('blank', () => {
  it('has the volume of its outline times its thickness', () => {
    for (const chord of [0.05, 0.005, 1e-4]) {
      const { blade, tang } = bladeMesh(plainBlade, { chord });
      const exact = (areaOfPlain + 10 * 30) * 3;
      expect(openEdges(blade)).toBe(0);
      // Inscribed: at most chord times the length of the curved edge (about 70 mm) is missing.
      expect(exact - volume(blade)).toBeGreaterThan(0);
      expect(exact - volume(blade)).toBeLessThan(chord * 70 * 3);
      expect(openEdges(tang)).toBe(0);
      expect(volume(tang)).toBeCloseTo(100 * 15 * 3, 9);
    }
  });

  it('loses what the spine radius takes off two corners', () => {
    const r = 0.4;
    const round = bladeMesh({ ...plainBlade, spineRadius: r }, { chord: 1e-4 });
    const sharp = bladeMesh(plainBlade, { chord: 1e-4 });
    // (1 - pi/4) r^2 a corner along 150 mm; the radius shrinks only where H < 2 r, at the tip.
    const exact = 2 * (1 - Math.PI / 4) * r * r * 150;
    expect(openEdges(round.blade)).toBe(0);
    expect(volume(sharp.blade) - volume(round.blade)).toBeCloseTo(exact, 1);
  });

  it('holds its thickness taper', () => {
    const tapered = {
      ...withoutRicasso,
      thickness: [
        { u: 0, t: 3 },
        { u: 80, t: 2 },
      ],
    };
    // Prismoid to u = 80, then constant: 30 * 80 * 2.5 + the rest of the area at 2 mm.
    const exact = 30 * 80 * 2.5 + (areaOfPlain - 2400) * 2;
    expect(volume(bladeMesh(tapered, { chord: 1e-4 }).blade)).toBeCloseTo(exact, 1);
  });
});

describe('against an independent solid modeller', () => {
  let solid: Awaited<ReturnType<typeof Module>>;
  beforeAll(async () => {
    solid = await Module();
    solid.setup();
  });

  const fromMesh = ({ vertices, triangles }: Mesh): Manifold =>
    new solid.Manifold(
      new solid.Mesh({
        numProp: 3,
        vertProperties: Float32Array.from(vertices),
        triVerts: triangles,
      }),
    );
  /** The plain blade without its tang as an extruded polygon, midplane at w = 0. */
  const slab = (): Manifold => {
    const points = outlineLoop(withoutRicasso, 1e-4)
      .vertices.filter(({ x }) => x >= 0)
      .filter(({ x, y }) => x > 0 || y === 0 || y === 30)
      .map(({ x, y }): [number, number] => [x, y]);
    return solid.Manifold.extrude([points], 3).translate([0, 0, -1.5]);
  };

  it('cuts planes as the modeller does', () => {
    const [w0, perU, perV] = [1.9, 0.001, -0.06];
    const { blade } = bladeMesh(withoutRicasso, {
      chord: 1e-4,
      sides: { left: [planeCut(w0, perU, perV)], right: [planeCut(w0, -perU, perV)] },
    });
    const norm = Math.hypot(perU, perV, 1);
    // Keeps perU u + perV v + w0 - w >= 0 on the left, and its mirror on the right.
    const cut = slab()
      .trimByPlane([perU / norm, perV / norm, -1 / norm], -w0 / norm)
      .trimByPlane([-perU / norm, perV / norm, 1 / norm], -w0 / norm);
    expect(openEdges(blade)).toBe(0);
    expect(Math.abs(volume(blade) - cut.volume()) / cut.volume()).toBeLessThan(2e-5);
    const both = solid.Manifold.intersection(fromMesh(blade), cut);
    expect(both.volume() / cut.volume()).toBeGreaterThan(0.9999);
  });

  it('cuts a hollow into a bevel as the modeller does', () => {
    const radius = 100;
    const bevel = planeCut(1.5 + 0.6, 0, -0.055);
    const hollow = hollowCut(radius, () => ({ v: 18, w: radius + 0.7 }));
    const { blade } = bladeMesh(withoutRicasso, {
      chord: 1e-3,
      sides: { left: [bevel, hollow] },
    });
    const norm = Math.hypot(0.055, 1);
    const wheel = solid.Manifold.cylinder(400, radius, radius, 4096)
      .rotate([0, 90, 0])
      .translate([-100, 18, radius + 0.7]);
    const cut = slab()
      .trimByPlane([0, -0.055 / norm, -1 / norm], -2.1 / norm)
      .subtract(wheel);
    expect(openEdges(blade)).toBe(0);
    expect(Math.abs(volume(blade) - cut.volume()) / cut.volume()).toBeLessThan(1e-4);
  });

  it('gives meshes that the modeller takes as solids', () => {
    fc.assert(
      fc.property(anyBlade, (blade) => {
        fc.pre(bladeIssues(blade, '').length === 0);
        const shape = shapeOf(blade);
        const left = wantedCut(shape, 'left', 0.3);
        const right = wantedCut(shape, 'right', 0.3);
        const mesh = bladeMesh(blade, {
          chord: 0.01,
          sides: { ...(left && { left: [left] }), ...(right && { right: [right] }) },
        });
        const taken = fromMesh(mesh.blade);
        expect(taken.status()).toBe('NoError');
        // Single precision of the modeller's input on bodies of up to 1e5 mm3.
        expect(Math.abs(taken.volume() - volume(mesh.blade))).toBeLessThan(0.5);
        taken.delete();
      }),
      { numRuns: 20, seed: 2 },
    );
  });
});

describe('any valid blade', () => {
  it('gives closed meshes of positive volume that shrink with every cut', () => {
    fc.assert(
      fc.property(anyBlade, fc.constantFrom(0.02, 0.002), (blade, chord) => {
        fc.pre(bladeIssues(blade, '').length === 0);
        const shape = shapeOf(blade);
        const blank = bladeMesh(blade, { chord });
        const left = wantedCut(shape, 'left', 0.4);
        const right = wantedCut(shape, 'right', 0.2);
        const ground = bladeMesh(blade, {
          chord,
          sides: { ...(left && { left: [left] }), ...(right && { right: [right] }) },
        });
        for (const mesh of [blank.blade, blank.tang, ground.blade]) {
          expect(openEdges(mesh)).toBe(0);
          expect(volume(mesh)).toBeGreaterThan(0);
          expect(mesh.vertices.every(Number.isFinite)).toBe(true);
        }
        expect(volume(ground.blade)).toBeLessThan(volume(blank.blade));
      }),
      { numRuns: 40, seed: 3 },
    );
  });
});

describe('edge of a ground section', () => {
  it('has the stated thickness and opens at the stated angle', () => {
    const face = flatCut(() => ({ offset: 0.1, angle: 3.5 }));
    const { blade } = bladeMesh(withoutRicasso, {
      chord: 1e-4,
      sides: { left: [face], right: [face] },
    });
    const at: [number, number][] = [];
    for (let i = 0; i < blade.vertices.length; i += 3)
      if (blade.vertices[i] === 0)
        at.push([blade.vertices[i + 1] ?? 0, blade.vertices[i + 2] ?? 0]);
    const edge = at.filter(([v]) => v === 30).map(([, w]) => w);
    expect(Math.max(...edge)).toBeCloseTo(0.1, 12);
    expect(Math.min(...edge)).toBeCloseTo(-0.1, 12);
    // The grind line: T/2 is reached (T - e) / (2 tan a) above the edge.
    const shoulder = Math.max(...at.filter(([v, w]) => v < 29 && w > 1.5 - 1e-9).map(([v]) => v));
    expect(30 - shoulder).toBeCloseTo(1.4 / Math.tan((3.5 * Math.PI) / 180), 9);
  });
});

describe('chord error', () => {
  it.each([0.01, 1e-3, 1e-4])('keeps the ground face within %d mm', (chord) => {
    const face = flatCut(() => ({ offset: 0.1, angle: 5 }));
    const { blade } = bladeMesh(withoutRicasso, { chord, sides: { left: [face] } });
    // The edge is a circle from u = 80 on: centre (80, 30 - r), r = (60^2 + 30^2) / 60.
    const r = 75;
    const edge = (u: number): number => (u < 80 ? 30 : 30 - r + Math.sqrt(r * r - (u - 80) ** 2));
    const surface = (u: number, v: number): number =>
      Math.min(1.5, 0.1 + (edge(u) - v) * Math.tan((5 * Math.PI) / 180));
    const { vertices, triangles } = blade;
    let worst = 0;
    for (let t = 0; t < triangles.length; t += 3) {
      const corners = [0, 1, 2].map((k) => 3 * (triangles[t + k] ?? 0));
      const mean = (axis: number): number =>
        corners.reduce((sum, c) => sum + (vertices[c + axis] ?? 0), 0) / 3;
      // Faces of the left side: every corner left of the midplane.
      if (corners.every((c) => (vertices[c + 2] ?? 0) > 0))
        worst = Math.max(worst, Math.abs(mean(2) - surface(mean(0), mean(1))));
    }
    expect(worst).toBeGreaterThan(0);
    expect(worst).toBeLessThanOrEqual(chord);
  });
});
