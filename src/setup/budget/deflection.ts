/** A straight bar of rectangular section held at one end; mm and N/mm2. */
export interface Cantilever {
  readonly length: number;
  readonly width: number;
  /** In the direction it bends. */
  readonly thickness: number;
  /** Young's modulus: steel 200 000, aluminium 69 000 N/mm2 (handbook values). */
  readonly modulus: number;
}

/** How a loaded end gives way: mm across the bar, and its slope in radians. */
export interface Give {
  readonly deflection: number;
  readonly slope: number;
}

/** Bending stiffness E I of the rectangle, I = b h^3 / 12; N mm2. */
const stiffness = ({ width, thickness, modulus }: Cantilever): number =>
  (modulus * width * thickness ** 3) / 12;

/**
 * Free end of a cantilever under a force F across it and a moment M at its end (N, N mm), by the
 * handbook formulas
 *
 *     deflection = F L^3 / 3 E I + M L^2 / 2 E I        slope = F L^2 / 2 E I + M L / E I
 *
 * Source: tables of deflections and slopes of beams in Gere, Mechanics of Materials (from memory).
 * Small deflections, no shear: an estimate of a real nose, whose bolts and rest give as well.
 */
export const cantileverEnd = (bar: Cantilever, force: number, moment = 0): Give => {
  const [L, EI] = [bar.length, stiffness(bar)];
  return {
    deflection: (force * L ** 3) / (3 * EI) + (moment * L ** 2) / (2 * EI),
    slope: (force * L ** 2) / (2 * EI) + (moment * L) / EI,
  };
};
