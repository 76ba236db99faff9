import { basis, bodies } from '../shared/checks.ts';

/** Labels, reasons and mends of the checks of the carriage. */
export const checks = {
  basis: { ...basis, finished: 'measured on the finished parts, settled on foot and heel screw' },
  labels: {
    gapMost: 'Gap at the belt',
    gapLeast: 'Gap at the belt less flutter and splice',
    contactLow: 'Platen below the contact of the bevel',
    contactHigh: 'Platen above the contact of the bevel',
    angle: 'Departure of the settled carriage from its angle',
    squareness: 'Departure of the upright from square to the sole',
    fenceTravel: 'Slot of the fence beyond its settings',
    heelThread: 'Thread of the heel screw beyond its farthest setting',
    heel: 'Share of the push on the heel screw',
    push: 'Push below the highest that keeps the heel down',
    base: 'Share of the push that the belt presses down',
    line: (blade: string, side: string) => `Deviation of the grind line, ${blade}, ${side}`,
    tip: (blade: string, side: string) => `Metal left at the falling edge, ${blade}, ${side}`,
    thin: (blade: string, side: string) => `Edge too thin, ${blade}, ${side}`,
    grip: 'Tang in the jaw',
    jawBeside: 'Jaw beside the belt at the plunge',
    support: 'Foot on the base at the ends of the stroke',
    belt: 'Belt within the length of the foot',
  },
  fix: {
    gap: 'Set the gap at the belt smaller.',
    gapLeast: 'Set the gap at the belt larger.',
    contact: 'Change the edge height, or raise or lower the rest.',
    angle:
      'The finished parts do not tip to the angle. No value is known that mends it: take back the last change, or compare the fixtures.',
    travel: 'Ask for a larger reserve of travel.',
    heelThread: 'Use a longer heel screw.',
    heel: 'Clamp the blade higher or make the carriage longer, or ask for less reserve.',
    base: 'Turn the belt to run down.',
    line: 'Allow more deviation, let the line follow something else, or split the family.',
    tip: 'Ask for more settings for the tip, allow more to be led by hand, or use a spine rest.',
    thin: 'Clamp where the blade is even, or give this blade a design of its own.',
    grip: 'Raise the edge, or grind this blade in a design of its own.',
    jaw: 'Set the jaw farther from the plunge.',
    support:
      'The foot runs off. No value is known that mends it: take back the last change, or compare the fixtures.',
    besideBelt:
      'Use a belt as wide as the platen: what is thick passes beside the belt, and a bare platen stands there. With a narrower belt this carriage does not suit.',
    clearance: 'Move or shorten the part named, or change the keep-out.',
    belt: 'Ask for less running clearance, or clamp the blade higher.',
    mount: 'Choose other slots or the clamp bars.',
    blade: 'Change drop, thickness or length of the tang, or the edge height.',
    hand: 'Make the carriage longer.',
    contactOpen:
      'Parts that must touch do not. No value is known that mends it: take back the last change, or compare the fixtures.',
    inside:
      'Two parts claim the same room. No value is known that mends it: take back the last change, or compare the fixtures.',
  },
  names: {
    base: 'base',
    stops: 'stop pins',
    mount: 'mounting',
    fence: 'fence',
    carriage: 'carriage',
    foot: 'foot',
    heel: 'heel screw',
    jaw: 'jaw',
    ...bodies,
  },
} as const;
