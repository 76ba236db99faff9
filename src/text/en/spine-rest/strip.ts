import { unmended } from '../shared/unmended.ts';
import { mm } from '../lengths.ts';

/** Words of the rounded step, and of the checks with the strip on the blade. */
export const strip = {
  name: 'Step plate, rounded for the line strip',
  finish: 'Rounded front smooth; its lower edge broken 0.1 mm at most',
  radius: (radius: number, within: number) =>
    `front rounded to ${mm(radius)} within ${mm(within)}, upright, in the middle of the plate`,
  notes: {
    instead: 'Goes in place of the straight step plate while blades with a line strip are ground.',
    contact: (contact: number) =>
      `The strip meets the front up to ${mm(contact)} above the seat: round it over its whole height.`,
    tolerance: (within: number, slope: number, error: number) =>
      `A radius off by ${mm(within)} moves the setting by ${String(error)} mm at most where the strip slopes by ${String(slope)} degrees: what counts is the distance of its foremost line.`,
  },
  issues: {
    oneBlade: (count: number) => ({
      message: `A rounded step is set for the line strip of one blade, so the design must have 1; it has ${String(count)} blades, and each would want a strip and settings of its own.`,
      fix: 'Leave one blade in the design and make one for each, or use the straight step.',
    }),
  },
  reachless: {
    message:
      'A line strip belongs to one blade: what else the rounded step could grind has no range.',
    fix: 'Ask for the range with a straight step, or put the other blade into the design.',
  },
  readings: {
    from: 'Plunge to the line strip, on the face away from the belt',
    below: 'Spine line to the lower edge of the line strip',
    to: 'Stroke ends at the step, from the plunge',
  },
  measure: 'Line strip with its tape: thickness at both ends and in the middle, mm',
  body: 'line strip',
  labels: {
    strip: (label: string, side: string) => `${label}, ${side} side, with strip`,
    line: 'Deviation of the grind line',
    least: 'Thinnest place of the strip',
    hollow: 'Sharpest hollow of the strip over the radius of the step',
    flank: 'Flat flank beside the far bevel for the strip',
    corner: 'Nose in front of the spine corner',
    top: 'Step above the contact of the strip',
    belt: 'Contact of the belt above that of the strip',
    pushLow: 'Pad above the lowest push that seats the blade',
    pushHigh: 'Edge above the pad',
  },
  basis: {
    ground: 'ground virtually with the strip (estimate)',
    wish: 'what the strip is made for; common practice, no source',
    lever: 'levers about the near spine corner: the step carries no less with a higher contact',
  },
  fix: {
    line: 'Allow more deviation, or let the line follow something else.',
    least: unmended('The strip is thinner than it can be made'),
    hollow: 'Use a step of a smaller radius.',
    flank: 'Make the bevel lower, or grind this blade without a strip.',
    corner: 'Set the gap at the belt smaller, or grind at a steeper angle.',
    top: 'Choose a thicker plate.',
    belt: 'Grind a lower bevel, or this blade without a strip.',
    pushLow:
      'Make the rest for the strip (parameter “Form of the step”): its pad then stands higher.',
    pushHigh:
      'Make the rest for the strip (parameter “Form of the step”): its pad then stands lower.',
    clear:
      'The blade yaws on a rounded step where its edge bends. Ask for a rest with the rounded step (parameter “Form of the step”), whose nose screws stand clear of it; or leave more of the blade on the belt at the tip, change the wings, or grind it without a strip.',
    contact:
      'The strip is computed for the rounded step, and no other is known that bears on it there: grind this blade without a strip, on the straight step (parameter “Form of the step”).',
  },
} as const;
