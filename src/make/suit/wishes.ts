/**
 * What a maker wishes kept, and how true their work is: a blade is not made to fit by asking for
 * less clearance, less reserve or less room for the hand, nor by claiming finer work.
 */
export const WISHES: ReadonlySet<string> = new Set([
  'runningClearance',
  'handDistance',
  'guardRise',
  'leastEdge',
  'leastBearing',
  'leastWeb',
  'padMargin',
  'pushReserve',
  'heelReserve',
  'travelReserve',
  'tipAllowance',
  'tipLift',
  'settingTolerance',
  'angleTolerance',
  'fenceTolerance',
  'guidePlay',
  'tabPlay',
  'wheelShare',
  'builtTravel',
  'builtNoseTravel',
]);
