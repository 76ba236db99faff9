import { bevelSheet } from '../shared/sheet.ts';
import { said } from '../ids.ts';

const n = (value: number, decimals = 2): string => value.toFixed(decimals);

/** Words on the set-up sheet: readings, notes of a setting, facts. */
export const setting = {
  readings: {
    heel: 'Heel screw from its zero',
    tilt: 'Tilt of the carriage on the base',
    fence: 'Belt to rear face of the fence',
    fenceFromFront: 'Front of the base to rear face of the fence',
    edgeSide: 'Edge of this side from the middle of the blade',
    edgeHeight: 'Edge above the base, level (edge gauge)',
    jaw: 'Plunge to jaw',
    turn: 'Turn of the blade in its plane, tip up',
  },
  notes: {
    baseAgain: 'New belt: set the base to the belt with the feeler again before anything else.',
    fenceAgain: (by: number) =>
      `New angle: set the fence again; its rear face moves ${n(Math.abs(by))} mm ${by < 0 ? 'towards the belt' : 'away from the belt'}.`,
    flip: (side: string) => `Jaw at the ${side} end, edge up, this side of the blade to the belt.`,
    soft: (backing: string) =>
      `Backing "${backing}" gives way under the push: angle and bevel height are estimates until calibrated with a test piece.`,
    edgeFirst: 'First touch is at the edge itself: approach slowly, break the edge by hand first.',
    uneven: (left: number) =>
      `One plane leaves up to ${n(left)} mm more at the edge where it falls to the tip: stop there, lead the tip by hand by raising it evenly, or leave it for the finish.`,
    turned: (degrees: number, u: number) =>
      `Clamp the blade again, tip raised by ${n(degrees, 1)} degrees, so that the edge ${n(u, 0)} mm from the plunge touches the edge gauge; heel screw and fence stay.`,
  },
  facts: {
    carriage: 'Foot to heel screw',
    footRadius: 'Radius of the foot',
    tipRadius: 'Radius of the heel tip',
    edgeHeight: 'Edge above the base, level',
    forward: 'Upright ahead of the foot',
    stroke: 'Stroke between the stop pins',
    pushHeight: 'Push above the base, most tilted',
    degreesPerTurn: 'Angle for one turn of the heel screw',
    degreesPerDivision: (side: string) => `Angle for one division of the heel screw, ${side}`,
    heightPerDivision: (side: string) =>
      `Bevel height for one division of the heel screw, fence untouched, ${side}`,
    edgePerTenth: (side: string) => `Edge for 0.1 mm of the fence, ${side}`,
    heightPerTenth: (side: string) => `Bevel height for 0.1 mm of the fence, ${side}`,
    fencePerDegree: 'Move of the fence for a degree',
    tipTurn: (blade: string) => `Turn of the edge from straight part to tip, ${blade}`,
    tipLeft: (blade: string, side: string) =>
      `Greatest metal left at the edge to the very tip, ${blade}, ${side}`,
    deviation: (blade: string, side: string) =>
      `Grind line of ${blade}, ${side}: greatest deviation`,
  },
  side: { left: 'left side', right: 'right side' },
  end: { left: 'left', right: 'right' },
} as const;

/** Labels on the section of the set-up. */
export const section = {
  title: (id: string) => `Set-up ${said(id)}, seen along the stroke`,
  belt: 'Abrasive face',
  base: 'Base',
  fence: 'Fence',
  upright: 'Upright',
  sole: 'Sole',
  foot: 'Foot',
  heel: 'Heel screw',
  blade: (angle: number) => `Blade, ${n(angle)}°`,
  jaw: 'Jaw, beside the belt',
  push: 'Push',
  mm: (value: number) => n(value),
  tilt: (value: number) => `${n(value)} degrees`,
} as const;

/** What the set-up sheet calls the columns, and what is measured before the fixture is trusted. */
export const sheet = {
  ...bevelSheet,
  turnsIn: 'to less tilt',
  settingsNote:
    'Stop at the edge thickness (both halves together, mm), measured with the motor off. Lock the nut of the heel screw, set the fence, read both again and write them under Read. Bevel heights are measured from the edge along the middle of the blade.',
  progressNote:
    'The angle stays what the heel screw sets while the fence stops the edge; with the fence held back the bevel is lower. Edge thickness e, angle a side a, bevel height b. The blade is taken to come as thick behind the edge as was entered: as long as one side is not ground, what is told for the other holds half of that. Where it comes otherwise, go by the edge of this side from the middle of the blade.',
  measure: [
    'Front of the upright square to the base with the carriage level (square and feeler), mm',
    'From the foot screws to the heel screw, mm',
    'Rear face of the fence parallel to the abrasive (feeler at both edges of the belt), mm',
    'Edge gauge: its lip above the upright, mm',
    'Tang or ricasso in the jaw: thickness, and play of the blade under the clamp, mm',
    'Bow of the blade after heat treatment (straight edge and feeler), mm',
  ],
} as const;
