import { basis, bodies } from '../shared/checks.ts';

/** Labels, reasons and mends of the checks of the spine-referenced rest. */
export const checks = {
  basis,
  labels: {
    gapMost: 'Gap at the belt',
    gapSpine: 'Gap at the belt against the thinnest spine',
    gapLeast: 'Gap at the belt less flutter and splice',
    gapPlatenLow: 'Platen below the gap at the belt',
    contactLow: 'Platen below the contact of the bevel',
    contactHigh: 'Platen above the contact of the bevel',
    bearing: 'Nose in front of the spine corner',
    stepTop: 'Step above the contact of the spine',
    stepLower: 'Contact of the spine above the lower edge of the step',
    pushLow: 'Pad above the lowest push that seats the spine',
    pushHigh: 'Edge above the pad',
    padLow: (blade: string) => `Pad of ${blade} above the lowest push that seats the spine`,
    padHigh: (blade: string) => `Edge of ${blade} above its pad`,
    reserve: 'Share of the push that the step carries',
    line: (blade: string, side: string) => `Deviation of the grind line, ${blade}, ${side}`,
    travel: 'Slot of the step beyond its settings',
    noseTravel: 'Slot of the nose beyond its places',
    guideTravel: 'Travel of the step beyond its settings',
    yaw: 'Yaw of the step by the play of its guide',
    supportHeel: 'Spine on the nose with the plunge at the belt',
    supportTip: 'Spine on the nose with the tip at the belt',
    guard: 'Guard above the highest edge',
    hand: 'Hand on the push block to the belt',
  },
  fix: {
    gap: 'Set the gap at the belt smaller.',
    gapSpine: 'Set the gap at the belt smaller, or grind before tapering the spine.',
    gapLeast: 'Set the gap at the belt larger.',
    platen: 'Lower or raise the rest, or change plate and base thickness.',
    contact: 'Lower the seat with a thinner base, or raise the platen.',
    bearing: 'Set the gap at the belt smaller, or grind at a steeper angle.',
    stepTop: 'Choose a thicker plate or a smaller spine radius.',
    stepLower: 'Round the spine corners a little (spine radius), or break the step less.',
    pushLow:
      'Make this pass less steep: its bevel is then wider, and the belt bears lower. Or ask for a higher bevel, or for a smaller margin of the pad below the edge, above which it cannot go.',
    pushHigh: 'Ask for a smaller margin of the pad below the edge.',
    padAtBelt:
      'Ask for a larger margin of the pad below the edge: the blade that holds it off the belt is thicker there.',
    reserve:
      'Make this pass less steep, so that the belt bears lower, or ask for less reserve on the step.',
    line: 'Allow more deviation, let the line follow something else, or split the family.',
    travel: 'Ask for a larger reserve of travel.',
    support:
      'Make the nose wider (nose beyond the belt), or leave more blade on the belt at the tip.',
    guard: 'Raise the guard above the edge.',
    hand: 'Ask for more distance of the hand from the belt.',
    clearance: 'Move or shorten the part named, or change the keep-out.',
    belt: 'Set the gap at the belt larger, or ask for less running clearance.',
    mount: 'Choose other mounting holes or the clamp bars.',
    blade: 'Change drop, thickness or length of the tang, or set a larger gap at the belt.',
    collar: 'Let the nose reach further beyond the belt.',
    contactOpen:
      'Parts that must touch do not. No value is known that mends it: take back the last change, or compare the fixtures.',
    inside:
      'Two parts claim the same room. No value is known that mends it: take back the last change, or compare the fixtures.',
  },
  names: {
    base: 'base and packer',
    mount: 'mounting',
    nose: 'nose',
    step: 'step and feed',
    push: 'push block',
    pad: 'pad',
    collar: 'stop collar',
    ...bodies,
  },
} as const;
