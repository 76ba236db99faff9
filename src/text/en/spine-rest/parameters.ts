/** Words of the spine-referenced rest's parameters. */
export const parameters = {
  guide: {
    label: 'Guide of the step',
    meaning: 'What keeps the step square to the stroke while it moves.',
    reason: 'Slots over pins need a cut plate; bolted strips can be made with saw, file and drill.',
    options: { slots: 'Slot over two pins', strips: 'Between bolted strips' },
  },
  mount: {
    label: 'Mounting',
    meaning: 'How the base is held on the rest.',
    reason: 'A rest without holes or slots, and a bare tool arm, always take clamp bars.',
    options: {
      pattern: 'By the holes or slots of the rest',
      bars: 'By clamp bars under the rest',
    },
  },
  plate: {
    label: 'Plate thickness',
    meaning: 'Thickness of nose, packer, step, strips, collar and clamp bars.',
    reason:
      'The step is as high as the plate is thick: it must stand above the spine and take the zero pin.',
  },
  base: {
    label: 'Base thickness',
    meaning: 'Thickness of the base plate, which holds every thread.',
    reason: 'Thinner bases have too little thread; thicker ones lift the seat for nothing.',
  },
  noseGap: {
    label: 'Gap at the belt',
    meaning: 'From the abrasive face to the front of the nose, set with a feeler.',
    reason:
      'Wide gaps let the blade be drawn in: 3.175 mm is the published limit for abrasive wheels.',
  },
  wing: {
    label: 'Nose beyond the belt',
    meaning: 'How far the nose reaches past the edge of the belt on either side.',
    reason: 'It carries the blade at both ends of the stroke and holds the nose screws.',
  },
  stepWing: {
    label: 'Step beyond the belt',
    meaning: 'How far the step reaches past the edge of the belt on either side.',
    reason: 'It guides the spine wherever the belt cuts; the nose screws stand beyond it.',
  },
  guideLength: {
    label: 'Length of the guide',
    meaning: 'Distance of the two guide pins, or length of the guide strips.',
    reason: 'The yaw of the step is the play of its guide over this length.',
  },
  guidePlay: {
    label: 'Play of the guide',
    meaning: 'Width of the guide slot over its pins, or of the gap between the strips.',
    reason: 'Less binds when grit gets in; more lets the step yaw.',
  },
  travelReserve: {
    label: 'Reserve of travel',
    meaning: 'How far step and nose can go beyond the settings at both ends.',
    reason: 'It takes up wear of belt and platen and the place where the rest was clamped.',
  },
  runningClearance: {
    label: 'Running clearance',
    meaning: 'Least gap of the fixture to belt and machine, with the belt at its thickest.',
    reason: 'A fixture that touches a running belt is thrown.',
  },
  leastBearing: {
    label: 'Bearing on the nose',
    meaning: 'How much of the nose must lie in front of the spine corner that stands on it.',
    reason: 'On less than this the corner rolls over the front edge of the nose.',
  },
  plungeMargin: {
    label: 'Plunge to belt',
    meaning: 'How far the plunge stays outside the edge of the belt when the stroke stops.',
    reason: 'The belt wanders: with no margin it cuts into the ricasso.',
  },
  tipOverlap: {
    label: 'Blade on the belt at the tip',
    meaning: 'How much of the tip is still on the belt where the stroke ends.',
    reason:
      'Little lets the tip reach its own angle; with none the tip drops behind the edge of the belt.',
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
  padMargin: {
    label: 'Pad below the edge',
    meaning: 'How far the pad of the push block stays below the edge.',
    reason: 'The pad is worn by the belt if the edge recedes past it.',
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
  handDistance: {
    label: 'Hand to belt',
    meaning: 'Least distance of the hand on the push block from the belt.',
    reason: 'A hand nearer than this reaches the belt when the block slips.',
  },
} as const;
