import { said } from '../ids.ts';

const n = (value: number, decimals = 2): string => value.toFixed(decimals);

/** Words on the set-up sheet: readings, notes of a setting, facts. */
export const setting = {
  readings: {
    lip: "Lip from the wheel's foremost point",
    fromZero: 'Lip from the pin zero',
    centre: 'Centre of the hollow above the edge',
    tilt: 'Tilt of the blade towards the wheel',
    noseGap: 'Gap at the wheel (feeler)',
    collar: 'Plunge to stop collar',
  },
  notes: {
    zeroAgain: 'New belt: nose and zero again (Find zero, 3 to 5) before setting.',
    climbs: (per: number) => `The hollow climbs up to ${n(per, 1)} mm for each mm of depth.`,
    lipTop:
      'The face overhangs: the blade bears on the upper edge of the lip. Keep that edge sharp.',
    rubber:
      'The wheel gives way: depth and limits are estimates until calibrated with a test piece.',
  },
  facts: {
    radius: (belt: string) => `Abrasive radius on ${belt}`,
    drop: "Wheel's centre above the seat",
    stack: 'Seat above the rest',
    pinZero: (belt: string) => `Lip from the wheel's foremost point at the pin zero, ${belt}`,
    pushHeight: 'Push above the seat',
    travel: 'Travel of the lip slide',
    noseTravel: 'Travel of the nose on the base',
    perTurn: 'Lip for one turn of the knob',
    perDivision: 'Lip for one division of the knob',
    yaw: 'Yaw of the lip by the play of its guide, at most',
    room: (id: string) => `Room for lip and clearance at the lip's top, ${id}`,
    perTenth: (id: string) => `Centre of the hollow for 0.1 mm of lip, ${id}`,
    perDepth: (id: string) => `Climb of the hollow for each mm of depth, ${id}`,
    first: (id: string) => `Centre of the hollow at the first touch, ${id}`,
    lower: (id: string) => `Lower limit of the hollow above the edge, ${id}`,
    upper: (id: string) => `Upper limit of the hollow above the edge, ${id}`,
    web: (blade: string, side: string) => `Least steel left of ${blade}, ${side}`,
    webAt: (blade: string, side: string) => `Its height above the edge, ${blade}, ${side}`,
    guided: (blade: string, side: string) => `Length of ${blade} that the lip guides, ${side}`,
    sagitta: (blade: string, side: string) =>
      `Bow of the edge over the lip, ${blade}, ${side}: the hollow shifts by up to this`,
    deviation: (blade: string, side: string) =>
      `Hollow of ${blade}, ${side}: greatest deviation of its upper limit`,
  },
  side: { left: 'left side', right: 'right side' },
} as const;

/** What the set-up sheet calls the columns of a hollow. */
export const sheet = {
  stopAt: 'Stop at d',
  settingsNote:
    'Stop at the depth of the hollow d (mm), measured with the motor off. Lock, read the setting again and write it under Read. Upper limits are measured from the edge along the face.',
  expectedTitle: 'Expected upper limits of the hollow, mm',
  progressNote:
    'At one lip the hollow climbs as it deepens. Depth d below the face, lower and upper limit of the hollow above the edge.',
  turnsIn: 'towards the belt',
  progress: ['d, mm', 'lower, mm', 'upper, mm'],
  perTenth: (change: string): string => `0.1 mm deeper: ${change} mm of upper limit`,
  measure: [
    "Height of the wheel's axle above the seat, mm",
    'Diameter of the wheel with the belt of this pass, mm',
    'Lip parallel to the wheel (pin and feeler at both edges of the belt), mm',
    'Lip at the zero, read three times from the same side, divisions',
    'Thickness of this blade at the deepest line of the hollow before grinding, heel, middle and tip, mm',
    'Bow of the blade after heat treatment (straight edge and feeler), mm',
  ],
} as const;

/** Labels on the section of the set-up. */
export const section = {
  title: (id: string) => `Set-up ${said(id)}, seen along the stroke`,
  belt: 'Abrasive on the wheel',
  nose: 'Wheel nose',
  slide: 'Lip slide',
  wear: 'Wear strip',
  lip: 'Lip',
  base: 'Base',
  blade: 'Blade',
  pad: 'Pad',
  mm: (value: number) => n(value),
} as const;
