import { type Certainty, exact } from '../../core/certainty.ts';
import { sin, tan } from '../../core/trigonometry.ts';
import { radians } from '../../core/units.ts';
import { supportRadius } from '../../grinder/belt-path.ts';
import type { Backing, Grinder } from '../../grinder/schema.ts';
import { text } from '../../text/index.ts';
import type { Shape } from '../../blade/shape.ts';

const words = text.grind.certainty;

/** What a bound on a bevel height is built from. */
export interface Doubt {
  /** Tilt of the blade and lean of the platen, degrees. */
  readonly tilt: number;
  readonly lean: number;
  readonly setoff: number;
  /** Bevel height for each mm of setoff at this place. */
  readonly heightPerSetoff: number;
  /** Reach along the blade of belt and nose on either side of the place, mm. */
  readonly reach: number;
  /** Change of the edge left standing from one place looked at to the next, mm. */
  readonly windowStep: number;
  /** Bevel height for each mm of edge. */
  readonly heightPerEdge: number;
}

/** Samples on either side of a place at which curve and tangent are compared. */
const SAMPLES = 6;

/** Greatest departure of a curve from its tangent at u, within `reach` on either side. */
export const departure = (
  value: (u: number) => number,
  slope: number,
  u: number,
  reach: number,
): number => {
  let most = 0;
  for (let i = -SAMPLES; i <= SAMPLES; i += 1) {
    const d = (reach * i) / SAMPLES;
    most = Math.max(most, Math.abs(value(u + d) - value(u) - slope * d));
  }
  return most;
};

/**
 * How far a bevel height of the section model can be trusted at place u.
 *
 * The model settles each section on its own. It is exact while spine and far corner are straight
 * under nose and belt and parallel to them: then every section of the rigid blade has the same
 * foot, and H enters each alone, whatever the edge does. Elsewhere the foot is off by no more than
 *
 *     the spine's departure d from its tangent: d (sin q + |tan t|) of setoff, because d adds to
 *     H sin q and lifts the edge by d along a leaning face;
 *     the taper: the far corner's departure, half that of T, on the step, and s (1 - cos psi) for
 *     a yaw psi of half the taper;
 *     the step from one place looked at to the next, where neighbours keep the belt off.
 *
 * Each is turned into bevel height by the local rates. Tip lift by hand is not counted. Behind a
 * radiused or soft backing nothing is bounded: an estimate.
 */
export const trust = (
  { spine, thickness }: Shape,
  u: number,
  grinder: Grinder,
  backing: Backing,
  doubt: Doubt,
): Certainty => {
  if (backing.kind === 'leather' || backing.kind === 'rubber')
    return { kind: 'estimate', basis: words.soft };
  if (supportRadius(grinder, backing) !== undefined)
    return { kind: 'estimate', basis: words.radius };
  const { tilt, lean, setoff, heightPerSetoff, reach, windowStep, heightPerEdge } = doubt;
  const bend = departure(spine.value, spine.slope(u), u, reach);
  const [before, after] = [u - reach, u + reach].map((at) => Math.abs(thickness.slope(at)) / 2);
  const yaw = Math.max(before ?? 0, after ?? 0, Math.abs(thickness.slope(u)) / 2);
  const swell = departure(thickness.value, thickness.slope(u), u, reach) / 2;
  const parts = [
    {
      by: bend * (sin(radians(tilt)) + Math.abs(tan(radians(lean)))) * heightPerSetoff,
      reason: words.spine,
    },
    { by: (swell + (setoff * yaw * yaw) / 2) * heightPerSetoff, reason: words.taper },
    { by: windowStep * heightPerEdge, reason: words.window },
  ].filter(({ by }) => by > 1e-9);
  if (parts.length === 0) return exact;
  const by = parts.reduce((sum, part) => sum + part.by, 0);
  return { kind: 'bounded', by, reason: parts.map(({ reason }) => reason).join('; ') };
};
