import type { BeltSection } from '../../src/family/index.ts';

type Line = BeltSection['lines'][number];

/** A rectangle of a belt section, from y to y and z to z, mm. */
export const box = (
  role: Line['role'],
  y: readonly [number, number],
  z: readonly [number, number],
  label?: string,
): Line => ({
  role,
  closed: true,
  points: [
    [y[0], z[0]],
    [y[1], z[0]],
    [y[1], z[1]],
    [y[0], z[1]],
  ],
  ...(label === undefined ? {} : { label }),
});
