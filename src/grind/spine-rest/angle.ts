import { minimise } from '../numeric/minimise.ts';
import { root } from '../numeric/root.ts';
import type { Section } from '../section/section.ts';
import { setoffFor } from './settle.ts';

/** Angles a spine rest may be asked for, degrees per side. */
export const ANGLE = { min: 0.01, max: 45 } as const;

/** What a blade can do on the rest at one edge thickness: setoff grows with the angle throughout. */
export interface Span {
  readonly angle: { readonly from: number; readonly to: number };
  readonly setoff: { readonly from: number; readonly to: number };
}

/** Least tilt at which the blade still leans on the belt, degrees. */
const LEAST_TILT = 1e-3;

/**
 * The range over which a setoff has one angle. It starts where the blade just leans towards the
 * belt and ends at ANGLE.max, or before it where a low, thick blade would lie down: there the
 * setoff stops growing with the angle, and the step would no longer hold it. Undefined when no
 * angle is left.
 */
export const reachable = (section: Section, edge: number, lean: number): Span | undefined => {
  const setoff = (angle: number): number => setoffFor(section, { edge, angle }, lean);
  const from = Math.max(ANGLE.min, LEAST_TILT - lean);
  const top = Math.min(ANGLE.max, 89 - lean);
  if (from >= top) return undefined;
  const grows = setoff(top) > setoff(top - 1e-3);
  const to = grows ? top : minimise((angle) => -setoff(angle), from, top, 1e-6);
  const span = { angle: { from, to }, setoff: { from: setoff(from), to: setoff(to) } };
  return span.setoff.to > span.setoff.from ? span : undefined;
};

/**
 * The angle (degrees, per side) that a setoff grinds at an edge of `edge` mm on the belt side, as
 * the root of the closed form in `settle`, which grows with the angle. Undefined when the setoff
 * lies outside `reachable`, which a search over setoffs gives as `span`: it is the same for all.
 */
export const angleFor = (
  section: Section,
  edge: number,
  setoff: number,
  lean: number,
  span: Span | undefined = reachable(section, edge, lean),
): number | undefined => {
  if (span === undefined || setoff < span.setoff.from || setoff > span.setoff.to) return undefined;
  const short = (angle: number): number => setoffFor(section, { edge, angle }, lean) - setoff;
  return root(short, span.angle.from, span.angle.to);
};
