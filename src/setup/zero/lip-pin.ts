/** The wheel as an edge rest meets it, mm. */
export interface WheelAtSeat {
  /** Abrasive radius: wheel and belt. */
  readonly radius: number;
  /** Height of the wheel's centre above the seat. */
  readonly drop: number;
}

/**
 * Where the back of a lip stands that just holds a pin of radius `pin` lying on the seat against
 * the wheel, mm from the wheel's foremost point: the pin's axis is R + rho from the wheel's and rho
 * above the seat, and the lip another rho in front of it:
 *
 *     y_back = sqrt((R + rho)^2 - (dz - rho)^2) - R + rho
 *
 * The face against which the edge stands is the lip's thickness farther. Domain: |dz - rho| < R +
 * rho, a lip at least rho high and a pin behind which the lip finds room. Derived here.
 */
export const lipBackAtPin = ({ radius, drop }: WheelAtSeat, pin: number): number =>
  Math.sqrt((radius + pin) ** 2 - (drop - pin) ** 2) - radius + pin;

/**
 * Feeler between the wheel and the upper back edge of a lip, mm: the distance of that edge, at
 * y = `back` and z = `top`, from the circle. It is the running room of the lip as well.
 */
export const lipFeeler = ({ radius, drop }: WheelAtSeat, back: number, top: number): number =>
  Math.hypot(radius + back, drop - top) - radius;
