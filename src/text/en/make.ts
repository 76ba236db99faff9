export const make = {
  unknownFamily: (family: string, known: string) => ({
    message: `The design asks for the fixture family "${family}"; known are ${known}.`,
    fix: `Set fixture.family to one of ${known}, or open the design with a program that knows "${family}".`,
  }),
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
    wider: ' away from the belt',
    closer: ' towards the belt',
    unmoved: 'as it stands',
    turns: (whole: number, divisions: number, way: string) =>
      `${whole === 0 ? '' : `${whole} turn${whole === 1 ? '' : 's'} `}${divisions} div${way}`,
    dial: (fromZero: string, division: number) => `${fromZero}; knob at ${division}`,
    place: (place: string, u: string) => `${place}, ${u} mm from the plunge`,
    progressTitle: (step: number, belt: string, side: string) => `${step}. ${belt}, ${side} side`,
    check: (passed: boolean, found: string | null, unit: string) =>
      `${passed ? 'passed' : 'FAILED'}${found === null ? ', not computed' : `, ${found} ${unit}`.trimEnd()}`,
    measure: [
      'Face of the abrasive square to the seat, over the height of the blade (square and feeler), mm',
      'Step parallel to the abrasive over the belt width (feeler at both edges), mm',
      'Step to belt at the zero, read three times from the same side, mm',
      'Spine thickness and height of this blade at heel, middle and tip, mm',
      'Bow of the blade after heat treatment (straight edge and feeler), mm',
    ],
  },
} as const;
