import type { Face } from '../section/ground.ts';
import type { Section } from '../section/section.ts';
import { alongFace, contactOf, holdOn, pushFor, seatForce, stepForce } from './push.ts';
import type { Seating } from './settle.ts';
import type { PushWindow } from './types.ts';

/** How a blade is pushed. */
export interface Pushing {
  /** Friction of belt on blade; negative for a belt that runs up. */
  readonly friction: readonly [from: number, to: number];
  readonly reserve: number;
  /** Height of the push as a share of the edge's, both along the abrasive face. */
  readonly share: number;
}

/** Samples of the friction range: every force is monotone in friction, so its ends would do. */
const SAMPLES = [0, 0.25, 0.5, 0.75, 1];

/**
 * The push window of one place whose face is being finished, and the forces for a push at the
 * given share of the edge's height. A face that takes nothing is taken to bear at the edge.
 */
export const pushWindow = (
  section: Section,
  face: Face,
  seating: Seating,
  { friction: [least, most], reserve, share }: Pushing,
): PushWindow => {
  const to = alongFace(seating.edge, seating.lean);
  const hold = holdOn(seating, contactOf(section, face, seating) ?? [to, to]);
  const frictions = SAMPLES.map((x) => least + x * (most - least));
  const forces = frictions.map((m) => stepForce(hold, share * to, m));
  return {
    from: Math.max(...frictions.map((m) => pushFor(hold, reserve, m))),
    to,
    stepForceMin: Math.min(...forces),
    stepForceMax: Math.max(...forces),
    seatForceMin: Math.min(...frictions.map((m) => seatForce(hold, share * to, m))),
  };
};
