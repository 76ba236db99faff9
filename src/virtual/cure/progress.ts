import { tan } from '../../core/trigonometry.ts';
import { degrees, radians } from '../../core/units.ts';
import { root } from '../../grind/numeric/root.ts';
import type { SpineRestSetting } from '../../grind/spine-rest/types.ts';
import { setoffWith, type StripPlace } from './sum.ts';

/** Range of tilts that are looked at, degrees. */
const TILT = { least: 0.02, most: 60 } as const;
/** Half steps of the central differences: edge, mm, and tilt, degrees. */
const STEP = { edge: 1e-5, tilt: 1e-4 } as const;

/** A section on its strip: all but edge and tilt, and the strip's outer distance from the midplane. */
export interface OnStrip {
  readonly place: StripPlace;
  readonly out: number;
}

const setoffAt = ({ place, out }: OnStrip, edge: number, tilt: number): number =>
  setoffWith({ ...place, edge, tilt: radians(tilt) }, out);

/** Tilt in degrees at which an edge is reached at a setoff; the setoff grows with the tilt. */
const tiltFor = (on: OnStrip, setoff: number, edge: number): number | undefined => {
  const short = (tilt: number): number => setoffAt(on, edge, tilt) - setoff;
  return short(TILT.least) <= 0 && short(TILT.most) >= 0
    ? root(short, TILT.least, TILT.most)
    : undefined;
};

const bevelFor = ({ place }: OnStrip, edge: number, tilt: number): number => {
  const angle = radians(tilt) - place.lean;
  return Math.min(place.height, (place.near - edge) / tan(angle));
};

/** Growth of the setoff with the angle, mm per degree: what `setoffPerDegree` is without a strip. */
export const stripSetoffPerDegree = (on: OnStrip): number => {
  const { edge, tilt } = on.place;
  const at = degrees(tilt);
  return (
    (setoffAt(on, edge, at + STEP.tilt) - setoffAt(on, edge, at - STEP.tilt)) / (2 * STEP.tilt)
  );
};

/**
 * Angle and bevel height on the way to the stop, at one setoff with the strip, by the section's
 * sum in `sum.ts`. The setoff is the one that gives the last edge the tilt it was found to have, so
 * that the last row is what was ground. Edges that are out of reach are left out.
 */
export const stripProgress = (
  on: OnStrip,
  rows: SpineRestSetting['progress'],
): SpineRestSetting['progress'] => {
  const { place } = on;
  const setoff = setoffAt(on, place.edge, degrees(place.tilt));
  return rows.flatMap((row) => {
    const { edgeSide } = row;
    const heightAt = (edge: number): number | undefined => {
      const tilt = tiltFor(on, setoff, edge);
      return tilt === undefined ? undefined : bevelFor(on, edge, tilt);
    };
    const tilt = tiltFor(on, setoff, edgeSide);
    const [less, more] = [heightAt(edgeSide - STEP.edge), heightAt(edgeSide + STEP.edge)];
    if (tilt === undefined || less === undefined || more === undefined) return [];
    return [
      {
        ...row,
        angle: tilt - degrees(place.lean),
        bevelHeight: bevelFor(on, edgeSide, tilt),
        gain: Math.max(0, (less - more) / (2 * STEP.edge)),
      },
    ];
  });
};

/** What `by` mm of setoff does to angle (degrees) and bevel height at the finished edge. */
export const stripSensitivity = (
  on: OnStrip,
  by: number,
): { readonly degrees: number; readonly bevelHeight: number } => {
  const { edge, tilt } = on.place;
  const setoff = setoffAt(on, edge, degrees(tilt));
  const heightAt = (s: number): number => bevelFor(on, edge, tiltFor(on, s, edge) ?? degrees(tilt));
  return {
    degrees: by / stripSetoffPerDegree(on),
    bevelHeight: Math.abs(heightAt(setoff - by) - heightAt(setoff + by)) / 2,
  };
};
