import { cos, sin, tan } from '../../core/trigonometry.ts';
/** One place of a blade that bears on the step through a strip; mm and radians. */
export interface StripPlace {
  /** Height of the blade, from spine to edge, and of the strip's lower edge above the spine. */
  readonly height: number;
  readonly bottom: number;
  /** Half thickness at the spine on the belt's side. */
  readonly near: number;
  /** Edge to stop at, from the midplane. */
  readonly edge: number;
  /** Tilt of the blade from the seat's normal, and lean of the face. */
  readonly tilt: number;
  readonly lean: number;
}

/** Height of the belt-side edge over the seat: the near spine corner bears on it. */
const edgeHeight = ({ height, near, edge, tilt }: StripPlace): number =>
  height * cos(tilt) + (near - edge) * sin(tilt);

/**
 * Distance of the strip's outer face from the midplane that gives the blade its tilt at a setoff s,
 * mm. The strip's lower outer corner, `bottom` over the spine, stands at the setoff and the edge's
 * belt-side corner on the abrasive face; seen across the section, with o the distance asked for,
 *
 *     s = (o + e) cos q + (H - bottom) sin q - z tan t,   z = H cos q + (T/2 - e) sin q
 *
 * On a square platen and with the strip at the spine itself the strip's own thickness is
 * p = o - T/2 = (s - H sin a) / cos a - (T/2 + e).
 */
export const outerFor = (place: StripPlace, setoff: number): number => {
  const { height, bottom, edge, tilt, lean } = place;
  const reach = setoff + edgeHeight(place) * tan(lean) - (height - bottom) * sin(tilt);
  return reach / cos(tilt) - edge;
};

/** The inverse: the setoff at which a strip of outer distance `out` gives the tilt, mm. */
export const setoffWith = (place: StripPlace, out: number): number => {
  const { height, bottom, edge, tilt, lean } = place;
  const across = (out + edge) * cos(tilt) + (height - bottom) * sin(tilt);
  return across - edgeHeight(place) * tan(lean);
};
