import { problem } from '../../core/issue.ts';
import { fail, ok, type Result } from '../../core/result.ts';
import { text } from '../../text/index.ts';
import { edgeRestParameters } from '../parameters.ts';
import { outside } from '../within.ts';
import { hollowChord } from './chord.ts';
import { edgeSeat, type EdgeSeat, type Hollow } from './seat.ts';

export interface EdgeRestSums extends EdgeSeat {
  /** Limits of the hollow along the face, from the edge contact, mm. */
  readonly lower: number;
  readonly upper: number;
  readonly chord: number;
}

const words = text.grind;

/** Seat and limits of one hollow. */
export const edgeRestSums = (hollow: Hollow): Result<EdgeRestSums> => {
  const issues = outside(edgeRestParameters, { ...hollow });
  if (issues.length > 0) return fail(...issues);
  const { radius, centre, depth, drop, faceOffset } = hollow;
  if (depth >= radius)
    return fail(problem('depth-too-great', 'depth', words.depthTooGreat(depth, radius)));
  const apart = Math.hypot(radius - depth + faceOffset, centre);
  if (Math.abs(drop) >= apart)
    return fail(problem('drop-too-great', 'drop', words.dropTooGreat(drop, apart)));
  const seat = edgeSeat(hollow);
  const chord = hollowChord(radius, depth);
  if (seat.room <= 0)
    return fail(
      problem('hollow-at-lip', 'centre', words.hollowAtLip(seat.room, centre, chord / 2)),
    );
  return ok({ ...seat, lower: centre - chord / 2, upper: centre + chord / 2, chord });
};
