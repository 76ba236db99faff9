import { text, type BeltSection, type Grinder } from '../../src/family/index.ts';
import { shiftsOf } from './needs-of.ts';
import { placedRest, type Stand } from './site.ts';

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

/** The machine under a section: from grinder to seat frame along y, and the base's shift there, mm. */
export interface Site {
  readonly grinder: Grinder;
  readonly offset: number;
  readonly shift: number;
}

/** The site of the pass of that number. */
export const siteOf = (grinder: Grinder, stands: readonly Stand[], step: number): Site => ({
  grinder,
  offset: stands[step - 1]?.offset ?? 0,
  shift: shiftsOf(stands).shifts[step - 1] ?? 0,
});

/** Of a rest deeper than this only the upper part is drawn, mm: a tool arm would fill the picture. */
const DRAWN = 12;

/**
 * The rest of the machine under a base, up to where the base is drawn: `offset` from grinder to seat
 * frame. An arm may be drawn out from under the belt, so it is drawn from the base on.
 */
export const restUnder = (
  grinder: Grinder,
  offset: number,
  base: { readonly front: number; readonly back: number; readonly bottom: number },
): Line => {
  const rest = placedRest(grinder, offset);
  const front = rest.kind === 'arm' ? base.front : rest.front;
  return box(
    'grinder',
    [front, Math.min(rest.back, base.back)],
    [base.bottom - Math.min(rest.thickness, DRAWN), base.bottom],
    text.family.shared.restLabel,
  );
};
