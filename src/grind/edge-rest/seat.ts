import { atan2 } from '../../core/trigonometry.ts';
import { degrees } from '../../core/units.ts';

/** A hollow wanted on an edge-down blade, mm. */
export interface Hollow {
  /** Abrasive radius: wheel and belt. */
  readonly radius: number;
  /** Of the hollow's middle above the edge contact, along the face. */
  readonly centre: number;
  /** Greatest depth below the line of the face. */
  readonly depth: number;
  /** Height of the wheel's centre above the seat. */
  readonly drop: number;
  /** Distance of the face's line from the edge contact, towards the wheel. */
  readonly faceOffset: number;
}

/** Where the blade stands; mm and degrees. */
export interface EdgeSeat {
  /** Edge contact from the wheel's foremost point, towards the maker positive. */
  readonly lip: number;
  /** Tilt of the face from the seat's normal, towards the wheel positive. */
  readonly tilt: number;
  /** Distance of the edge contact from the abrasive: what a lip has to stand in. */
  readonly room: number;
}

/**
 * Places the edge contact E on the seat so that the wheel hollows the wanted place.
 *
 * The wheel's centre C stands R - d from the face, and the line through E along the face lies q
 * farther away, so seen from E it is D = R - d + q square to the face and c along it:
 *
 *     L = |EC| = hypot(D, c)          y_E = sqrt(L^2 - dz^2) - R          room = L - R
 *
 * with C at (-R, dz) and E at (y_E, 0). The line EC rises by atan2(dz, R + y_E) from the seat and
 * by atan2(c, D) from the face's normal, which leans k below the seat's plane; hence
 *
 *     k = atan2(c, D) - atan2(dz, R + y_E)
 *
 * Domain: 0 <= d < R, |dz| < L, room > 0. Derived here; tests place and measure independently.
 */
export const edgeSeat = ({ radius, centre, depth, drop, faceOffset }: Hollow): EdgeSeat => {
  const square = radius - depth + faceOffset;
  const apart = Math.hypot(square, centre);
  const level = Math.sqrt(apart * apart - drop * drop);
  return {
    lip: level - radius,
    tilt: degrees(atan2(centre, square) - atan2(drop, level)),
    room: apart - radius,
  };
};
