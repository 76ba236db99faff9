import { execFileSync, spawnSync } from 'node:child_process';
import { circle, path, rectangle, slot, type Profile } from '../../src/geometry/loop.ts';
import type { PlatePart } from '../../src/model/part.ts';
import type { Mesh } from '../../src/model/mesh.ts';

/** A plate with filleted corners, round holes and a slot; sizes that inches do not divide. */
export const profile: Profile = {
  outer: path([
    { x: 5, y: 0, bulge: 0 },
    { x: 115, y: 0, bulge: Math.SQRT2 - 1 },
    { x: 120, y: 5, bulge: 0 },
    { x: 120, y: 55, bulge: Math.SQRT2 - 1 },
    { x: 115, y: 60, bulge: 0 },
    { x: 70, y: 60, bulge: -1 },
    { x: 50, y: 60, bulge: 0 },
    { x: 5, y: 60, bulge: Math.SQRT2 - 1 },
    { x: 0, y: 55, bulge: 0 },
    { x: 0, y: 5, bulge: Math.SQRT2 - 1 },
  ]),
  holes: [circle([20, 20], 3.3), circle([100, 20], 2.75), slot([40, 15], [80, 15], 6.4)],
};

export const plate = (
  cut: Profile = profile,
  engraving: PlatePart['engraving'] = [],
): PlatePart => ({
  kind: 'plate',
  id: 'base-plate',
  name: 'Base plate',
  quantity: 2,
  material: 'Steel',
  finish: 'Zinc plated',
  density: 7.85,
  layers: [{ profile: cut, from: 0, to: 5 }],
  notes: [],
  tight: [],
  process: 'laser',
  holes: [],
  engraving,
});

export const square: Profile = { outer: rectangle([0, 0], [100, 50]), holes: [] };

/** Text that would break out of a format that forgot to escape it. */
export const hostile =
  '{"name":"</metadata><script>alert(1)</script> ]]> \\\\(paren) ) \'q\' \\"dq\\" \n 0\nSECTION\r\n é Ø ± ° ⅜ 漢 😀 %PDF"}';

/** Whether a program is there; the tests that need it are skipped with its name where it is not. */
export const has = (command: string, args: readonly string[] = ['--version']): boolean =>
  spawnSync(command, [...args], { stdio: 'ignore' }).status === 0;

export const run = (command: string, args: readonly string[], input?: string): string =>
  execFileSync(command, [...args], { encoding: 'utf8', ...(input === undefined ? {} : { input }) });

/**
 * A square-cornered prism with a coaxial hole, both of n corners (radii R and r), from z = 0 to
 * h: closed by construction, volume n/2 (R^2 - r^2) sin(2 pi / n) h.
 */
export const ring = (n: number, R: number, r: number, h: number): Mesh => {
  const corner = (i: number, radius: number, z: number): number[] => {
    const angle = (2 * Math.PI * i) / n;
    return [50 + radius * Math.cos(angle), 40 + radius * Math.sin(angle), z];
  };
  // Vertices of corner i: 4i outer low, 4i+1 outer high, 4i+2 inner low, 4i+3 inner high.
  const vertices = Array.from({ length: n }, (_, i) => [
    corner(i, R, 0),
    corner(i, R, h),
    corner(i, r, 0),
    corner(i, r, h),
  ]).flat(2);
  const triangles = Array.from({ length: n }, (_, i) => {
    const [a, b] = [4 * i, 4 * ((i + 1) % n)];
    const quad = (p: number, q: number, s: number, t: number): number[] => [p, q, s, p, s, t];
    return [
      quad(a, b, b + 1, a + 1),
      quad(b + 2, a + 2, a + 3, b + 3),
      quad(a + 1, b + 1, b + 3, a + 3),
      quad(b, a, a + 2, b + 2),
    ].flat();
  }).flat();
  return { vertices: Float64Array.from(vertices), triangles: Uint32Array.from(triangles) };
};

export const ringVolume = (n: number, R: number, r: number, h: number): number =>
  (n / 2) * (R * R - r * r) * Math.sin((2 * Math.PI) / n) * h;
