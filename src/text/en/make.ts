import { range } from './range.ts';

export const make = {
  range,
  unknownFamily: (family: string, known: string) => ({
    message: `The design asks for the fixture family "${family}"; known are ${known}.`,
    fix: `Set fixture.family to one of ${known}, or open the design with a program that knows "${family}".`,
  }),
  checkColumns: [
    'Check',
    'Passed',
    'Found',
    'At least',
    'At most',
    'Unit',
    'Worst at',
    'Basis',
    'What would mend it',
  ],
  yes: 'yes',
  no: 'NO',
  hardwareColumns: ['Quantity', 'Designation', 'Use', 'Material'],
  designFile: 'design.jig.json',
  failedHead: 'CHECKS FAILED: ',
  failedMore: (count: number) => ` (and ${count} more, see the report)`,
  drawingsTitle: (design: string) => `${design}: drawings`,
  templatesTitle: (design: string) => `${design}: full-size templates`,
  setupTitle: (design: string) => `${design}: setting up`,
  side: { left: 'left', right: 'right' },
  place: { heel: 'heel', middle: 'middle', tip: 'near the tip' },
  setup: {
    grinder: 'Grinder',
    blades: 'Blades',
    wider: ' out',
    closer: ' in',
    unmoved: 'as it is',
    turns: (whole: number, divisions: number, way: string) => `${whole} t ${divisions} d${way}`,
    dial: (fromZero: string, division: number) => `${fromZero} (${division})`,
    place: (place: string, u: string) => `${place}, ${u} mm`,
    progressTitle: (step: number, belt: string, side: string) => `${step}. ${belt}, ${side} side`,
    passed: 'Checks passed',
    passedOf: (passed: number, total: number) =>
      `${passed} of ${total}; all with numbers in checks.csv`,
    failed: (found: string | null) =>
      found === null ? 'FAILED, not computed' : `FAILED, ${found}`,
    measure: [
      'Face of the abrasive square to the seat, over the height of the blade (square and feeler), mm',
      'Step parallel to the abrasive over the belt width (feeler at both edges), mm',
      'Step to belt at the zero, read three times from the same side, mm',
      'Spine thickness and height of this blade at heel, middle and tip, mm',
      'Bow of the blade after heat treatment (straight edge and feeler), mm',
    ],
  },
} as const;
