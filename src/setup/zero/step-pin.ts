import { cos, sin } from '../../core/trigonometry.ts';
import { radians } from '../../core/units.ts';

/**
 * Setoff of a step that just holds a pin of radius `radius` lying on the seat against the abrasive
 * face, mm: the pin's axis stands rho square to a face that leans back by t, so at height rho it is
 * rho (1 - sin t) / cos t along the seat from where seat and face meet, and the step is another rho
 * behind it:
 *
 *     s_pin = rho + rho (1 - sin t) / cos t
 *
 * Square platen: the pin's diameter. Domain: |t| < 90 degrees and a step at least rho high.
 * Derived here; a test places the pin by itself.
 */
export const stepAtPin = (radius: number, lean: number): number => {
  const t = radians(lean);
  return radius + (radius * (1 - sin(t))) / cos(t);
};
