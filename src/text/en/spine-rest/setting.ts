import { bevelSheet } from '../shared/sheet.ts';
import { said } from '../ids.ts';

const n = (value: number, decimals = 2): string => value.toFixed(decimals);

/** Words on the set-up sheet: readings, notes of a setting, facts. */
export const setting = {
  readings: {
    setoff: 'Step to belt',
    dialFromZero: 'Step from the pin zero',
    noseGap: 'Gap at the belt (feeler)',
    collar: 'Plunge to stop collar',
    edgeSide: 'Edge of this side from the middle of the blade',
  },
  notes: {
    zeroAgain: 'New belt: nose and zero again (Find zero, 3 to 5) before setting.',
    soft: (backing: string) =>
      `Backing "${backing}" gives way under the push: angle and bevel height are estimates until calibrated with a test piece.`,
    edgeFirst:
      'First touch is at the edge itself, which no push can seat: break the edge by hand first, or hold the spine firmly to the step until the bevel is a few millimetres high.',
    standing: (mm: number) =>
      `The belt's width leaves up to ${n(mm)} mm standing at the edge somewhere along the blade: blend it by hand.`,
    lowReserve: (share: number) =>
      `The step carries only ${n(100 * share, 0)} % of the push here: press high, near the edge.`,
  },
  facts: {
    pinZero: 'Step to belt with the pin between them',
    stack: 'Seat above the rest',
    yaw: 'Yaw of the step by the play of its guide, at most',
    travel: 'Travel of the step',
    noseTravel: 'Travel of the nose on the base',
    perTurn: 'Step for one turn of the knob',
    perDivision: 'Step for one division of the knob',
    degreesPerTenth: (side: string) => `Angle for 0.1 mm of the step, ${side}`,
    heightPerTenth: (side: string) => `Bevel height for 0.1 mm of the step, ${side}`,
    pushHeight: 'Push above the seat',
    collar: 'Plunge to stop collar',
    stepContact: 'Spine on the step, above the seat',
    deviation: (blade: string, side: string) =>
      `Grind line of ${blade}, ${side}: greatest deviation`,
  },
  side: { left: 'left side', right: 'right side' },
} as const;

/** Labels on the section of the set-up. */
export const section = {
  title: (setting: string) => `Set-up ${said(setting)}, seen along the stroke`,
  belt: 'Abrasive face',
  nose: 'Nose',
  step: 'Step',
  base: 'Base',
  blade: (angle: number) => `Blade, ${n(angle)}°`,
  strip: 'Line strip',
  pad: 'Pad',
  mm: (value: number) => n(value),
} as const;

/** What the set-up sheet calls the columns, and what is measured before the fixture is trusted. */
export const sheet = {
  ...bevelSheet,
  measure: [
    'Face of the abrasive square to the seat, over the height of the blade (square and feeler), mm',
    'Step parallel to the abrasive over the belt width (feeler at both edges), mm',
    'Step to belt at the zero, read three times from the same side, mm',
    'Spine thickness and height of this blade at heel, middle and tip, mm',
    'Bow of the blade after heat treatment (straight edge and feeler), mm',
  ],
} as const;
