/** What a set-up sheet calls things wherever a bevel is ground down to an edge thickness. */
export const bevelSheet = {
  stopAt: 'Stop at e',
  expectedTitle: 'Expected bevel heights, mm',
  progress: ['e, mm', 'a, °', 'b, mm'],
  perTenth: (change: string): string => `0.1 mm off the edge: ${change} mm of height`,
} as const;
