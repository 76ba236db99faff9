import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  beltPath,
  faceDepth,
  leaned,
  supportRadius,
  type BeltPath,
} from '../../src/grinder/belt-path.ts';
import { beltSpeed, surfaceSpeed } from '../../src/grinder/belt-speed.ts';
import { grinderPresets } from '../../src/grinder/presets/index.ts';
import { grinderIssues } from '../../src/grinder/rules.ts';
import type { Backing, Grinder } from '../../src/grinder/schema.ts';

const preset = (name: string): Grinder => {
  const grinder = grinderPresets[name];
  if (grinder === undefined) throw new Error(name);
  return structuredClone(grinder);
};
const bare: Backing = { kind: 'none', id: 'bare', thickness: 0 };

type Point = readonly [number, number];

const pathOf = (grinder: Grinder, backing: Backing = bare, outset = 0): BeltPath => {
  const path = beltPath(grinder, backing, outset);
  if (!path.ok) throw new Error(JSON.stringify(path.issues));
  return path.value;
};

/** Points along the pieces, arcs sampled, in order. */
const walk = ({ pieces }: BeltPath): Point[] =>
  pieces.flatMap((piece): Point[] => {
    if (piece.kind === 'run') return [piece.from, piece.to];
    const { centre, radius, start, end } = piece;
    return Array.from({ length: 65 }, (_, i) => {
      const angle = ((start + ((end - start) * i) / 64) * Math.PI) / 180;
      return [centre[0] + radius * Math.cos(angle), centre[1] + radius * Math.sin(angle)] as const;
    });
  });

/** Perimeter of the convex hull of many points (monotone chain), with nothing of the program. */
const hullLength = (points: readonly Point[]): number => {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const chain = (list: readonly Point[]): Point[] => {
    const hull: Point[] = [];
    for (const p of list) {
      for (;;) {
        const [a, b] = [hull.at(-2), hull.at(-1)];
        if (!a || !b) break;
        if ((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]) > 0) break;
        hull.pop();
      }
      hull.push(p);
    }
    return hull.slice(0, -1);
  };
  const hull = [...chain(sorted), ...chain([...sorted].reverse())];
  return hull.reduce((sum, p, i) => {
    const q = hull[(i + 1) % hull.length] ?? p;
    return sum + Math.hypot(q[0] - p[0], q[1] - p[1]);
  }, 0);
};

const rim = ([y, z]: Point, radius: number, from = 0, to = 360, n = 4000): Point[] =>
  Array.from({ length: n + 1 }, (_, i) => {
    const angle = ((from + ((to - from) * i) / n) * Math.PI) / 180;
    return [y + radius * Math.cos(angle), z + radius * Math.sin(angle)] as const;
  });

describe('belt speed', () => {
  // v = pi D n: diameters in mm or inches, speeds recomputed from the formula; the first row is
  // published as 6283.19 in/min (a surface-speed calculator page).
  it.each([
    [2 * 25.4, 1000, 2.65988],
    [8 * 25.4, 3600, 38.3023],
    [8 * 25.4, 3450, 36.7064],
    [6 * 25.4, 1800, 14.3634],
    [7 * 25.4, 1750, 16.2918],
    [12 * 25.4, 1000, 15.9593],
    [100, 2850, 14.9226],
    [200, 2800, 29.3215],
    [250, 1440, 18.8496],
  ])('of %d mm at %d a minute is %d m/s', (diameter, speed, expected) => {
    expect(surfaceSpeed(diameter, speed)).toBeCloseTo(expected, 4);
    // Surface feet a minute: 0.2618 D n, the shop rule, D in inches.
    const feet = (surfaceSpeed(diameter, speed) / 0.3048) * 60;
    expect(feet / ((Math.PI / 12) * (diameter / 25.4) * speed)).toBeCloseTo(1, 9);
  });

  it('comes from the drive wheel', () => {
    expect(beltSpeed(preset('platen-50'))).toBeCloseTo((Math.PI * 125 * 2850) / 60_000, 9);
  });
});

describe('belt path', () => {
  const twoWheels = (a: number, b: number, distance: number): Grinder => ({
    ...preset('wheel-250'),
    wheels: [
      { id: 'a', role: 'contact', diameter: a, width: 50, centre: [0, 0], surface: 'hard' },
      { id: 'b', role: 'drive', diameter: b, width: 50, centre: [-distance, 0], surface: 'hard' },
    ],
  });

  it.each([
    [200, 100, 500],
    [300, 150, 600],
    [100, 100, 400],
    [355, 60, 700],
  ])('is an open belt round wheels of %d and %d, %d apart', (a, b, c) => {
    const { length } = pathOf(twoWheels(a, b, c));
    // Open belt: exact form from the tangent's angle, and the usual approximation
    // 2C + pi (D1 + D2) / 2 + (D1 - D2)^2 / 4C, whose next term is d^4 / 192 C^3.
    const tilt = Math.asin((a - b) / 2 / c);
    const exact = 2 * c * Math.cos(tilt) + (Math.PI * (a + b)) / 2 + tilt * (a - b);
    const usual = 2 * c + (Math.PI * (a + b)) / 2 + (a - b) ** 2 / (4 * c);
    expect(length).toBeCloseTo(exact, 9);
    expect(Math.abs(length - usual)).toBeLessThan((a - b) ** 4 / (150 * c ** 3) + 1e-9);
  });

  it('grows by 2 pi for every millimetre outwards', () => {
    for (const name of Object.keys(grinderPresets)) {
      const grinder = preset(name);
      const inner = pathOf(grinder).length;
      expect(pathOf(grinder, bare, 1.4).length - inner).toBeCloseTo(2 * Math.PI * 1.4, 6);
    }
  });

  it('is one closed line without kinks', () => {
    for (const name of Object.keys(grinderPresets))
      for (const lean of [0, 3, -7]) {
        const points = walk(pathOf({ ...preset(name), lean }, bare, 1));
        const [first, last] = [points[0], points.at(-1)];
        expect(
          Math.hypot((first?.[0] ?? 0) - (last?.[0] ?? 1), (first?.[1] ?? 0) - (last?.[1] ?? 1)),
        ).toBeLessThan(1e-9);
        const steps = points.flatMap((p, i): Point[] => {
          const q = points[(i + 1) % points.length] ?? p;
          const d = Math.hypot(q[0] - p[0], q[1] - p[1]);
          return d < 1e-9 ? [] : [[(q[0] - p[0]) / d, (q[1] - p[1]) / d]];
        });
        steps.forEach(([x, y], i) => {
          const [nx, ny] = steps[(i + 1) % steps.length] ?? [x, y];
          const turn = (Math.asin(x * ny - y * nx) * 180) / Math.PI;
          // Convex, and no turn beyond one of 64 steps of half a circle.
          expect(turn).toBeGreaterThan(-1e-6);
          expect(turn).toBeLessThan(4);
        });
      }
  });

  it('is as long as the convex hull of sampled wheels and platen', () => {
    const grinder = preset('platen-50');
    const samples = [
      ...grinder.wheels.flatMap(({ centre, diameter }) => rim(centre, diameter / 2)),
      ...rim([-4, -41], 4),
      ...rim([-4, 146], 4),
    ];
    expect(pathOf(grinder).length).toBeCloseTo(hullLength(samples), 2);
    const leaning = pathOf({ ...grinder, lean: 5 });
    expect(leaning.length).toBeCloseTo(pathOf(grinder).length, 9);
  });

  it('matches the sampled hull for any wheels', () => {
    const wheel = fc.record({
      y: fc.integer({ min: -600, max: 0 }),
      z: fc.integer({ min: -300, max: 500 }),
      diameter: fc.integer({ min: 10, max: 300 }),
    });
    fc.assert(
      fc.property(fc.array(wheel, { minLength: 2, maxLength: 6 }), (wheels) => {
        const grinder: Grinder = {
          ...preset('wheel-250'),
          wheels: wheels.map(({ y, z, diameter }, i) => ({
            id: `w${i}`,
            role: 'idler',
            diameter,
            width: 50,
            centre: [y, z],
            surface: 'hard',
          })),
        };
        const samples = wheels.flatMap(({ y, z, diameter }) =>
          rim([y, z], diameter / 2, 0, 360, 720),
        );
        const hull = hullLength(samples);
        // A 720-gon is shorter than its circle by a share of 3.2e-6; near-tangent gaps add little.
        expect(Math.abs(pathOf(grinder).length - hull)).toBeLessThan(2e-5 * hull);
      }),
      { numRuns: 200, seed: 5 },
    );
  });

  it('is backed by the platen where its face is flat', () => {
    const runs = pathOf(preset('platen-50')).pieces.filter(
      (piece) => piece.kind === 'run' && piece.over === 'platen',
    );
    expect(runs).toEqual([{ kind: 'run', from: [0, -41], to: [0, 146], over: 'platen' }]);
  });

  it('stands off by liner, backing and belt', () => {
    const grinder = preset('platen-75');
    const [belt, leather] = [grinder.belts[1], grinder.backings[1]];
    if (!belt || !leather) throw new Error('preset');
    expect(faceDepth(grinder, belt, leather)).toBeCloseTo(3 + 5 + 1.4, 12);
    const face = pathOf(grinder, leather, belt.thickness).pieces.find(
      (piece) => piece.kind === 'run' && piece.over === 'platen',
    );
    expect(face?.kind === 'run' && face.from[0]).toBeCloseTo(9.4, 9);
  });

  it('leans its top away from the maker', () => {
    const [y, z] = leaned([0, 100], 2);
    expect(y).toBeCloseTo(-100 * Math.sin((2 * Math.PI) / 180), 12);
    expect(z).toBeCloseTo(100 * Math.cos((2 * Math.PI) / 180), 12);
    expect(leaned([0, 0], 2)).toEqual([0, 0]);
  });

  it('follows a convex platen', () => {
    const grinder = preset('platen-50');
    const radius = 900;
    const convex: Grinder = {
      ...grinder,
      platen: { kind: 'radius', radius, width: 50, bottom: -45, top: 150, edgeRadius: 4, liner: 0 },
      wheels: grinder.wheels.map((wheel) =>
        wheel.role === 'idler' ? { ...wheel, centre: [-45, wheel.centre[1]] } : wheel,
      ),
    };
    expect(grinderIssues(convex).filter(({ severity }) => severity === 'error')).toEqual([]);
    const path = pathOf(convex);
    const face = path.pieces.find((piece) => piece.kind === 'arc' && piece.radius === radius);
    if (face?.kind !== 'arc') throw new Error('no face');
    expect(face.centre).toEqual([-radius, 52.5]);
    const half = (Math.asin((97.5 - 4) / (radius - 4)) * 180) / Math.PI;
    expect(face.end - 360).toBeCloseTo(half, 6);
    expect(face.start - 360).toBeCloseTo(-half, 6);
    const ends = [-half, half].map((angle): Point => {
      const a = (angle * Math.PI) / 180;
      return [-radius + (radius - 4) * Math.cos(a), 52.5 + (radius - 4) * Math.sin(a)];
    });
    const samples = [
      ...convex.wheels.flatMap(({ centre, diameter }) => rim(centre, diameter / 2)),
      ...rim([-radius, 52.5], radius, -half, half),
      ...ends.flatMap((end) => rim(end, 4)),
    ];
    expect(path.length).toBeCloseTo(hullLength(samples), 2);
  });

  it('takes the radius of platen and backing', () => {
    const grinder = preset('platen-50');
    expect(supportRadius(grinder, bare)).toBeUndefined();
    const radiused: Backing = { kind: 'radius', id: 'r', thickness: 4, radius: 600 };
    expect(supportRadius(grinder, radiused)).toBe(600);
    if (grinder.platen.kind !== 'flat') throw new Error('preset');
    const convex: Grinder = {
      ...grinder,
      platen: { ...grinder.platen, kind: 'radius', radius: 900, liner: 2 },
    };
    expect(supportRadius(convex, { kind: 'leather', id: 'l', thickness: 5 })).toBe(907);
  });

  it('meets a platen flush with its wheels', () => {
    const grinder = preset('platen-50');
    const flush: Grinder = {
      ...grinder,
      wheels: grinder.wheels.map((wheel) =>
        wheel.role === 'idler' ? { ...wheel, centre: [-25, wheel.centre[1]] } : wheel,
      ),
    };
    expect(pathOf(flush).length).toBeGreaterThan(0);
  });

  it('fails by name where the wheels stand proud of the platen', () => {
    const grinder = preset('platen-50');
    const proud: Grinder = {
      ...grinder,
      wheels: grinder.wheels.map((wheel) =>
        wheel.role === 'idler' ? { ...wheel, centre: [-20, wheel.centre[1]] } : wheel,
      ),
    };
    const path = beltPath(proud, bare);
    expect(path.ok).toBe(false);
    expect(path.issues[0]).toMatchObject({ code: 'platen-not-touched', path: 'platen' });
    expect(grinderIssues(proud, 'grinder')[0]?.path).toBe('grinder.backings.0');
  });
});

describe('presets', () => {
  it('are named by size and fit their belt', () => {
    expect(Object.keys(grinderPresets).length).toBeGreaterThanOrEqual(6);
    for (const grinder of Object.values(grinderPresets)) {
      expect(grinderIssues(grinder)).toEqual([]);
      const [backing] = grinder.backings;
      if (!backing) throw new Error('preset');
      // A tension wheel makes up a few millimetres.
      expect(Math.abs(pathOf(grinder, backing).length - grinder.belt.length)).toBeLessThan(5);
      expect(beltSpeed(grinder)).toBeGreaterThan(5);
      expect(beltSpeed(grinder)).toBeLessThan(30);
    }
  });
});
