import type { Vec2 } from '../../geometry/vector.ts';
import { root } from '../numeric/root.ts';
import type { Section } from '../section/section.ts';
import { reachable } from './angle.ts';
import { alongFace, holdAt, pushFor } from './push.ts';
import { inSeat } from '../in-seat.ts';
import { setoffOn, settleOn } from './settle.ts';
import type { FirstContact } from './types.ts';

/** How far a pad must stay below the edge, mm. */
const PAD = 2;

/** Corners nearer than this in angle are touched together, degrees. */
const TOGETHER = 1e-6;

/**
 * Where the belt first touches a section that is leaned against it at a setoff: of all its corners
 * the one that meets the abrasive face at the least tilt. A steeper plane meets the edge itself,
 * which no push below the edge can seat; a flatter one meets the shoulder of the bevel before.
 * Undefined when no corner can be reached at this setoff.
 */
export const firstContact = (
  section: Section,
  setoff: number,
  lean: number,
  friction: number,
): FirstContact | undefined => {
  const span = reachable(section, 0, lean);
  if (span === undefined) return undefined;
  const { from, to } = span.angle;
  const touches = section.outline.vertices.flatMap(({ x, y }) => {
    const point: Vec2 = [x, y];
    const short = (angle: number): number => setoffOn(section, point, angle, lean) - setoff;
    if (x >= 0 || y <= 0 || short(to) < 0) return [];
    return [{ point, angle: short(from) > 0 ? from : root(short, from, to) }];
  });
  const [first, ...others] = touches.sort((p, q) => p.angle - q.angle || q.point[1] - p.point[1]);
  if (first === undefined) return undefined;
  const along = others.some((other) => other.angle - first.angle < TOGETHER);
  const pose = settleOn(section, first.point, first.angle, lean);
  const centre = alongFace(inSeat(pose.origin, pose.tilt, first.point), lean);
  const pushFrom = pushFor(holdAt(pose, centre), 0, friction);
  const edge = alongFace(inSeat(pose.origin, pose.tilt, [0, section.height]), lean);
  const belowEdge = section.height - first.point[1];
  return {
    at: along ? 'face' : belowEdge < 1e-9 ? 'edge' : 'shoulder',
    belowEdge,
    pushFrom,
    seated: pushFrom < edge - PAD,
  };
};
