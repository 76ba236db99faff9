import { minimise } from '../numeric/minimise.ts';
import { root } from '../numeric/root.ts';
import type { Section } from '../section/section.ts';
import { setoffFor, tiltOn } from './settle.ts';

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
  const atTop = setoff(top);
  const grows = atTop > setoff(top - 1e-3);
  const to = grows ? top : minimise((angle) => -setoff(angle), from, top, 1e-6);
  const span = {
    angle: { from, to },
    setoff: { from: setoff(from), to: grows ? atTop : setoff(to) },
  };
  return span.setoff.to > span.setoff.from ? span : undefined;
};

/** How often the closed form is tried on other corners before the root is bracketed. */
const TRIES = 8;

/** Angles nearer than this are one, degrees. */
const SAME = 1e-12;

/**
 * The angle from the closed form on the corners that bear at the last angle, until the corners that
 * bear no longer change; undefined where they do not settle within the span.
 */
const closedForm = (
  section: Section,
  edge: number,
  setoff: number,
  lean: number,
  span: Span,
): number | undefined => {
  const { from, to } = span.angle;
  // A setoff grows nearly evenly with its angle: so the corners that bear are mostly the right ones.
  const share = (setoff - span.setoff.from) / (span.setoff.to - span.setoff.from);
  let angle = from + share * (to - from);
  for (let i = 0; i < TRIES; i += 1) {
    const tilt = tiltOn(section, { edge, angle }, setoff, lean);
    if (tilt === undefined) return undefined;
    const next = Math.min(to, Math.max(from, tilt - lean));
    if (Math.abs(next - angle) < SAME) return next;
    angle = next;
  }
  return undefined;
};

/**
 * The angle (degrees, per side) that a setoff grinds at an edge of `edge` mm on the belt side: the
 * inverse of `settle`, in closed form, or where a bevel through the spine takes what bears on the
 * seat, as its bracketed root. Undefined when the setoff lies outside `reachable`, which a search
 * over setoffs gives as `span`: it is the same for all.
 */
export const angleFor = (
  section: Section,
  edge: number,
  setoff: number,
  lean: number,
  span: Span | undefined = reachable(section, edge, lean),
): number | undefined => {
  if (span === undefined || setoff < span.setoff.from || setoff > span.setoff.to) return undefined;
  const closed = closedForm(section, edge, setoff, lean, span);
  if (closed !== undefined) return closed;
  const short = (angle: number): number => setoffFor(section, { edge, angle }, lean) - setoff;
  return root(short, span.angle.from, span.angle.to);
};
