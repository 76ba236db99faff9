/** Words of parameters that several families have. */
export const parameters = {
  guide: {
    label: 'Guide of the sliding plate',
    meaning: 'What keeps it square to the stroke while it moves.',
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
  base: {
    label: 'Base thickness',
    meaning: 'Thickness of the base plate, which holds every thread.',
    reason: 'Thinner bases have too little thread; thicker ones lift the seat for nothing.',
  },
  wing: {
    label: 'Nose beyond the belt',
    meaning: 'How far the nose reaches past the edge of the belt on either side.',
    reason: 'It carries the blade at both ends of the stroke and holds the nose screws.',
  },
  guideLength: {
    label: 'Length of the guide',
    meaning: 'Distance of the two guide pins, or length of the guide strips.',
    reason: 'The yaw of the sliding plate is the play of its guide over this length.',
  },
  guidePlay: {
    label: 'Play of the guide',
    meaning: 'Width of the guide slot over its pins, or of the gap between the strips.',
    reason: 'Less binds when grit gets in; more lets the sliding plate yaw.',
  },
  runningClearance: {
    label: 'Running clearance',
    meaning: 'Least gap of the fixture to belt and machine, with the belt at its thickest.',
    reason: 'A fixture that touches a running belt is thrown.',
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
  padMargin: {
    label: 'Pad below the edge',
    meaning: 'How far the pad of the push block stays below the edge.',
    reason: 'The pad is worn by the belt if the edge recedes past it.',
  },
  handDistance: {
    label: 'Hand to belt',
    meaning: 'Least distance of the hand on the push block from the belt.',
    reason: 'A hand nearer than this reaches the belt when the block slips.',
  },
} as const;
