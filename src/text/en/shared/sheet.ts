/** What a set-up sheet calls things wherever a bevel is ground down to an edge thickness. */
export const bevelSheet = {
  stopAt: 'Stop at e',
  settingsNote:
    'Stop at the edge thickness (both halves together, mm), measured with the motor off. Lock, read the setting again and write it under Read. Bevel heights are measured from the edge along the middle of the blade.',
  progressNote:
    'The angle follows the edge: at one setting a thinner edge means a steeper and higher bevel. Edge thickness e, angle a side a, bevel height b.',
  expectedTitle: 'Expected bevel heights, mm',
  turnsIn: 'towards the belt',
  progress: ['e, mm', 'a, °', 'b, mm'],
  perTenth: (change: string): string => `0.1 mm off the edge: ${change} mm of height`,
} as const;
