/**
 * Distance between the abrasive and a point over the edge contact, `height` above the seat, mm: what
 * the top of a lip has to stand in, less its running clearance. With the wheel's centre `drop`
 * above the seat and the contact at `lip`,
 *
 *     room(h) = hypot(R + y_E, dz - h) - R
 *
 * which at h = 0 is the room at the edge contact and falls towards the height of the centre.
 */
export const lipRoom = (radius: number, lip: number, drop: number, height: number): number =>
  Math.hypot(radius + lip, drop - height) - radius;

/**
 * How far a hollow shifts on a curved edge that stands on two lips outboard of the belt, mm: the
 * sagitta of the edge's arc (radius `edgeRadius`) over the chord between lips at +/- `halfSpan`.
 * Source: circle segment, h = r - sqrt(r^2 - c^2 / 4). Domain: halfSpan <= edgeRadius.
 */
export const edgeSagitta = (edgeRadius: number, halfSpan: number): number =>
  edgeRadius - Math.sqrt(edgeRadius * edgeRadius - halfSpan * halfSpan);
