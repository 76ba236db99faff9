/**
 * A strip of varying thickness on the far face of the blade: what stands between it and the step.
 * Thickness counts from the midplane, so it holds the half thickness of the blade under the strip.
 */
export interface Strip {
  /** Places along the blade, ascending, and the outer face's distance from the midplane there, mm. */
  readonly us: readonly number[];
  readonly out: readonly number[];
  /** v of the strip's lower edge, which bears on the step. */
  readonly bottom: number;
}

/** Distance of the strip's outer face from the midplane at u, mm; straight beyond its ends. */
export const outerFace = ({ us, out }: Strip, u: number): number => {
  let after = us.findIndex((at) => at >= u);
  if (after < 0) after = us.length - 1;
  after = Math.min(Math.max(after, 1), us.length - 1);
  const [u0 = 0, u1 = 1, p0 = 0, p1 = 0] = [us[after - 1], us[after], out[after - 1], out[after]];
  return p0 + ((p1 - p0) * (u - u0)) / (u1 - u0);
};
