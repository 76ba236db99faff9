import { execFileSync, spawnSync } from 'node:child_process';
import { circle, path, rectangle, slot, type Profile } from '../../src/geometry/loop.ts';
import type { PlatePart } from '../../src/model/part.ts';

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
