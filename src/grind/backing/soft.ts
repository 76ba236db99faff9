import { atan2 } from '../../core/trigonometry.ts';
import { degrees } from '../../core/units.ts';

/** What a soft backing is, and how it is pressed; mm, N and MPa (N/mm2). */
export interface SoftPress {
  /** Thickness of the backing, mm, and its modulus in compression with free sides, MPa. */
  readonly thickness: number;
  readonly modulus: number;
  /** Tension of the belt for a millimetre of its width, N/mm. */
  readonly tension: number;
  /** Push of the bevel for a millimetre of belt width, N/mm, and height of the bevel, mm. */
  readonly push: number;
  readonly height: number;
}

/** How a soft backing gives way under a bevel: an estimate. */
export interface Softened {
  /** How far the bevel sinks in, mm: the metal taken at its ends cannot lie deeper than this. */
  readonly sink: number;
  /** Over this length beside the bevel the belt comes back to its place, mm. */
  readonly length: number;
  /** Angle at which the belt rises beside the bevel, degrees: what both ends are rounded to. */
  readonly roll: number;
}

/**
 * Estimate of how convex a soft backing makes a bevel. The backing is taken as a Winkler
 * foundation (Winkler 1867: pressure = k w, each place for itself) of stiffness k = E / t, the
 * belt as a membrane on it under the tension T a width: beside the bevel T w'' = k w, so the belt
 * rises as w0 exp(-x / L) with L = sqrt(T / k). The bevel, a flat strip of height b, sinks by w0
 * until foundation and the belt's two ends carry the push q a width:
 *
 *     q = k b w0 + 2 T w0 / L          roll = atan(w0 / L)
 *
 * The belt presses on both ends of the bevel as a line, and wears them round until they follow
 * its rise: at most w0 deep. Assumed, not measured: linear leather, no bending stiffness of the
 * belt, no drag. All inputs above 0.
 */
export const softened = ({ thickness, modulus, tension, push, height }: SoftPress): Softened => {
  const k = modulus / thickness;
  const length = Math.sqrt(tension / k);
  const sink = push / (k * height + (2 * tension) / length);
  return { sink, length, roll: degrees(atan2(sink, length)) };
};
