/** Words of the parameters that the spine-referenced rest does not share. */
export const parameters = {
  plate: {
    label: 'Plate thickness',
    meaning: 'Thickness of nose, packer, step, strips, collar and clamp bars.',
    reason:
      'The step is as high as the plate is thick: it must stand above the spine and take the zero pin.',
  },
  noseGap: {
    label: 'Gap at the belt',
    meaning: 'From the abrasive face to the front of the nose, set with a feeler.',
    reason:
      'Wide gaps let the blade be drawn in: 3.175 mm is the published limit for abrasive wheels.',
  },
  step: {
    label: 'Form of the step',
    meaning:
      'What the blade bears on: its own spine on a straight step, or a strip on a rounded one.',
    reason:
      'A straight step squares the blade; where a taper or a falling tip then makes the grind line wander, a strip of varying thickness on a rounded step brings it back.',
    options: {
      straight: 'Straight, for the spine',
      rounded: 'Rounded, with a line strip on the blade',
    },
  },
  stepWing: {
    label: 'Step beyond the belt',
    meaning: 'How far the step reaches past the edge of the belt on either side.',
    reason: 'It guides the spine wherever the belt cuts; the nose screws stand beyond it.',
  },
  travelReserve: {
    label: 'Reserve of travel',
    meaning: 'How far step and nose can go beyond the settings at both ends.',
    reason: 'It takes up wear of belt and platen and the place where the rest was clamped.',
  },
  leastBearing: {
    label: 'Bearing on the nose',
    meaning: 'How much of the nose must lie in front of the spine corner that stands on it.',
    reason: 'On less than this the corner rolls over the front edge of the nose.',
  },
  aim: {
    label: 'Setting aims at',
    meaning: 'What decides the last setting of the step.',
    reason:
      'One setting cannot follow every line: either all blades share the deviation or one has none.',
    options: {
      line: 'The least deviation over all blades',
      place: 'The first blade, exactly at its bevel place',
    },
  },
  settingTolerance: {
    label: 'Setting tolerance',
    meaning: 'How truly a reading of the step is met and kept.',
    reason: 'Below the least no dial repeats; above the most the bevel height is a guess.',
  },
  pushReserve: {
    label: 'Reserve on the step',
    meaning: 'Share of the push that the step must carry in every pass.',
    reason: 'Without a reserve the blade beds on its own bevel and the line creeps.',
  },
  guardRise: {
    label: 'Guard above the edge',
    meaning: 'How far the guard of the push block stands above the highest edge.',
    reason: 'It is what stops a hand that slips over the blade.',
  },
  leastEdge: {
    label: 'Least edge thickness',
    meaning: 'Thinnest edge that is ground in this fixture, edge up.',
    reason: 'A thinner edge that meets the belt first is drawn in.',
  },
  tipLift: {
    label: 'Rocking of the blade',
    meaning: 'How far the blade may be rocked over either end of the nose while grinding.',
    reason: 'Everything below and beside the blade is checked over this range.',
  },
} as const;
