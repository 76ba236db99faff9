/** Sizes in which it is told what a fixture for flat bevels can grind, and limits that all hold. */
export const reach = {
  height: 'Height of the blade',
  thickness: 'Thickness at the spine',
  angle: 'Bevel angle a side',
  spine: 'Flank left between bevel and spine corner',
  bevel: 'Half thickness over the edge',
} as const;
