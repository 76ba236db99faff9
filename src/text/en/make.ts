import { mm } from './lengths.ts';

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
  asNeeded: 'as needed',
  designFile: 'design.jig.json',
  nestTooLarge: (
    part: string,
    [width, height]: readonly [number, number],
    [w, h]: readonly [number, number],
    margin: number,
  ) => ({
    message: `${part} measures ${mm(width)} by ${mm(height)}; a sheet of ${mm(w)} by ${mm(h)} with a margin of ${mm(margin)} has room for ${mm(w - 2 * margin)} by ${mm(h - 2 * margin)}, and the part does not fit either way round.`,
    fix: 'Set a larger sheet or a smaller margin, or write no nested sheets.',
  }),
  bedTooLow: (part: string, height: number, reach: number) => ({
    message: `${part} is ${mm(height)} high as it is printed; the printer reaches ${mm(reach)} over its bed, so it is on none of the laid out beds.`,
    fix: 'Set the height the printer reaches, or have it printed by a service from its own file.',
  }),
  bedTooSmall: (
    part: string,
    [width, depth]: readonly [number, number],
    [w, d]: readonly [number, number],
    margin: number,
  ) => ({
    message: `${part} measures ${mm(width)} by ${mm(depth)} as it is printed; a bed of ${mm(w)} by ${mm(d)} with ${mm(margin)} kept free around has no room for it, so it is on none of the laid out beds.`,
    fix: 'Set the size of the bed the part is printed on, or have it printed by a service from its own file.',
  }),
  bedTitle: (which: number, of: number) =>
    of === 1 ? 'All printed parts' : `Printed parts, bed ${String(which)} of ${String(of)}`,
  coupon: {
    name: 'Fit coupon',
    row: (label: string, uses: readonly { readonly part: string; readonly purpose?: string }[]) =>
      `  ${label}: ${uses.map(({ part, purpose }) => (purpose === undefined ? `opening of ${part}` : `${part}, ${purpose}`)).join('; ')}`,
    pins: (width: string): string[] => [
      `The pins above the figures are ${width} mm wide, less the tenths of their column. Try them in`,
      `the opening ${width} of column 0 of a second coupon, or in a drilled hole of that width: the`,
      'first pin that goes in as wanted tells how much smaller a printed tenon or pin must be.',
      '',
    ],
    reading: (
      [length, width]: readonly [length: number, width: number],
      rows: readonly string[],
      pins: readonly string[],
      play: { readonly clearance: number; readonly close: number; readonly press: number },
      fit: string,
    ) =>
      [
        'FIT COUPON',
        '',
        'Print it first, figures up, with the material, nozzle and settings of the parts.',
        `It is ${mm(length)} by ${mm(width)} over all. Measure that first: what is missing over such lengths`,
        'is mended by the steps or the shrinkage of the printer, and no play makes up for it.',
        '',
        'Each row repeats one opening of the printed parts; the figure left of it is its width',
        'without play, in millimetres. The figure above a column is the play added to that width,',
        'in tenths of a millimetre: column 4 is 0.4 mm wider than column 0.',
        '',
        'Rows, from below:',
        ...rows,
        '',
        'Try the very screw, rod or nut that belongs into each opening, from column 0 on:',
        '  press:      the last column into which it must be pressed and then stays.',
        '  close:      the first column through which it slides by hand without shake.',
        '  clearance:  the first column through which it drops by its own weight.',
        'Where rows disagree, take the larger play. Write the figures, divided by ten, into the',
        'design as making.prints.play.press, .close and .clearance, and write the files again.',
        '',
        ...pins,
        `This design has press ${mm(play.press)}, close ${mm(play.close)}, clearance ${mm(play.clearance)}; its parts use the fit "${fit}".`,
        'Common practice, no source: printers differ, and only the coupon tells what yours does.',
        '',
      ].join('\n'),
  },
  failedHead: 'CHECKS FAILED: ',
  failedMore: (count: number) => ` (and ${count} more, see checks.csv)`,
  drawingsTitle: (design: string) => `${design}: drawings`,
  cuttingPlansTitle: (design: string) => `${design}: cutting plans`,
  templatesTitle: (design: string) => `${design}: full-size templates`,
  setupTitle: (design: string) => `${design}: setting up`,
  annexTitle: (design: string) => `${design}: annex to the set-up sheet`,
  side: { left: 'left', right: 'right' },
  place: { heel: 'heel', middle: 'middle', tip: 'tip' },
  setup: {
    grinder: 'Grinder',
    blades: 'Blades',
    speed: 'Speed of the belt',
    rated: (speed: string, belt: string, wheel: string) =>
      `${speed} m/s; rated ${belt} (belt), ${wheel} (wheels)`,
    scratch: (belt: string) => `Scratches of ${belt}, estimate`,
    skin: (blade: string) => `Taken off each side at the edge, ${blade}`,
    fromTo: (low: string, high: string) => `${low} to ${high}`,
    share: (label: string, percent: string) => `${label} (${percent} %)`,
    wider: ' out',
    closer: ' in',
    unmoved: 'as it is',
    turns: (whole: number, divisions: number, way: string) => `${whole} t ${divisions} d${way}`,
    dial: (fromZero: string, division: number) => `${fromZero} (${division})`,
    place: (place: string, u: string) => `${place}, ${u}`,
    upTo: '–',
    forPasses: (passes: string | null, note: string) =>
      `${passes === null ? 'Every pass' : `No. ${passes}`}: ${note}`,
    placeAt: (place: string, u: string) => `${place} ${u}`,
    lettered: (letter: string, label: string) => `${letter}: ${label}`,
    bladePicture: (blade: string) => `${blade}: stops and places to measure, mm`,
    progressOf: (blade: string, u: string, thickness: string, height: string) =>
      `Told of ${blade}, ${u} mm from the plunge, ${thickness} mm thick and ${height} mm high there.`,
    edges: (comes: string, wanted: string) => `${comes}; ${wanted}`,
    bevels: (left: string, right: string) => (left === right ? left : `${left}; ${right}`),
    bevel: {
      none: 'not ground',
      full: 'full height',
      flat: (height: string) => `${height} mm`,
      angle: (angle: string) => `${angle}°`,
      hollow: (depth: string, angle: string | null) =>
        `hollow ${depth} mm in ${angle === null ? 'the flat' : `a flat bevel of ${angle}°`}`,
    },
    progressTitle: (pass: number, belt: string, side: string, at: string | null) =>
      `${pass}. ${belt}, ${side}${at === null ? '' : `, at ${at} mm`}`,
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
