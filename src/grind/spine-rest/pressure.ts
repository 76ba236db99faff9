/**
 * Distance along the abrasive face of the resultant of the belt's pressure on a bevel, mm.
 *
 * While the spine is held on seat and step, the edge recedes as the blade turns about the instant
 * centre of its two contacts, and each point of the bevel is worn away as fast as it is far from
 * that centre. Wear is pressure times speed (Preston's law), so the pressure grows linearly from
 * `pivot`:
 *
 *     h_c = int z (z - z_0) dz / int (z - z_0) dz     from z_1 to z_2
 *
 * which for z_0 = 0 is (2/3) (z_2^3 - z_1^3) / (z_2^2 - z_1^2). No belt pulls, so the part of a
 * bevel below the pivot carries nothing. Domain: low <= high, pivot < high.
 */
export const pressureCentre = (low: number, high: number, pivot: number): number => {
  const from = Math.max(low, pivot) - pivot;
  const to = high - pivot;
  // The cubes over the squares, with their common factor to - from taken out.
  return pivot + ((2 / 3) * (to * to + to * from + from * from)) / (to + from);
};
