import { cos, tan } from '../../core/trigonometry.ts';
import { radians } from '../../core/units.ts';
import type { Face } from '../section/ground.ts';

/** What is taken off a pass before it is compared, mm. */
export interface Slack {
  /** Depth of the belt's scratches, square to the face. */
  readonly scratch: number;
  /** How far the setting may be short, and the setoff's growth with the angle, mm per degree. */
  readonly tolerance: number;
  readonly setoffPerDegree: number;
}

/**
 * Least distance, square to the pass's face, by which an earlier pass stays outside the finished
 * face of the same side, mm; negative when it undercuts.
 *
 * Both faces are straight, so the pass stays outside everywhere iff it does at the two ends of the
 * finished face: e_k >= e_f at the edge, and e_k + b_f tan a_k >= w at its shoulder, b_f from the
 * edge, where w = e_f + b_f tan a_f. A setting that is short by d grinds at an angle smaller by
 * d / (ds/da) while the edge, which is measured, stays; it takes b_f of that off the shoulder.
 *
 * At one section a pass set no nearer (s_k >= s_f) and stopped no thinner (e_k >= e_f) undercuts
 * nothing above the height of the step's contact, T sin q over the seat, about which the section
 * turns at one setoff; only a bevel of full height reaches below it.
 */
export const undercutMargin = (
  pass: Face,
  finished: Face,
  finishedBevel: number,
  { scratch, tolerance, setoffPerDegree }: Slack,
): number => {
  const c = cos(radians(pass.angle));
  const short = { ...pass, angle: pass.angle - tolerance / setoffPerDegree };
  const atEdge = pass.edge - finished.edge;
  const half = ({ edge, angle }: Face): number => edge + finishedBevel * tan(radians(angle));
  return Math.min(atEdge, half(short) - half(finished)) * c - scratch;
};
