import { plain } from '../../core/units.ts';

/** What several features alike are called where it is written once (ISO 129-1). */
const times = (what: string, count: number): string =>
  count > 1 ? `${String(count)}× ${what}` : what;

/** Words on drawings, templates and set-up sheets. */
export const drawing = {
  inBoth: (value: string, inch: string): string => `${value} (${inch}″)`,
  titleBlock: {
    material: 'Material',
    thickness: 'Thickness',
    height: 'Height',
    length: 'Length',
    quantity: 'Quantity',
    finish: 'Finish',
    tolerances: 'General tolerances',
    toleranceClass: 'ISO 2768-m',
    edges: 'Edges',
    /** Material taken off outer edges, least and most: the signs and limits of ISO 13715. */
    edgesBroken: 'ISO 13715: −0.2/−0.4',
    edgesPrinted: 'as printed',
    units: 'Units',
    scale: 'Scale',
    projection: 'Projection',
    owner: 'Legal owner',
    title: 'Title',
    documentType: 'Document type',
    creator: 'Created by',
    supplementaryTitle: 'Supplementary title',
    date: 'Date of issue',
    approvedBy: 'Approved by',
    number: 'Identification number',
    revision: 'Rev.',
    sheet: 'Sheet',
  },
  radius: (radius: string, count: number): string => times(`R${radius}`, count),
  diameter: (diameter: string): string => `Ø${diameter}`,
  detail: (letter: string, scale: string): string => `${letter} (${scale})`,
  acrossFlats: (width: string, count: number): string =>
    times(`hexagon ${width} across flats`, count),
  holes: {
    title: 'Holes',
    crossTitle: 'Cross holes',
    columns: {
      id: 'Id',
      x: 'X',
      y: 'Y',
      size: 'Size',
      depth: 'Thread, depth',
      purpose: 'Purpose',
      face: 'Face',
      along: 'Along',
      up: 'Z',
    },
    diameter: (diameter: string): string => `Ø${diameter}`,
    slot: (width: string, length: string, angle: string): string =>
      `slot ${width} × ${length}, ${angle}°`,
    rectangle: (width: string, height: string): string => `${width} × ${height}`,
    contour: (size: string): string => `${size} wide, see view`,
    through: 'through',
    seeView: 'see view',
    levels: (from: string, to: string): string => `z ${from} to ${to}`,
    blind: (depth: string): string => `${depth} deep`,
    tapped: (thread: string, depth: string): string => `tap ${thread}, ${depth}`,
    face: { x: 'left', y: 'front' },
  },
  corners: {
    title: 'Outline, corner by corner, anticlockwise from the one nearest to the datum',
    number: 'No.',
    x: 'X',
    y: 'Y',
    fillet: 'Corner rounded R',
    next: 'Arc to next R, + bulges out',
  },
  documentTypes: {
    part: 'Part drawing',
    assembly: 'Assembly drawing',
    template: 'Drilling template',
    setup: 'Set-up sheet',
    annex: 'Annex to set-up sheet',
    ground: 'Blade as ground',
    cuttingPlan: 'Cutting plan',
  },
  notes: {
    title: 'Notes',
    datum: 'X and Y are measured from the datum corner, marked with a half-filled circle.',
    kerf: (kerf: number): string =>
      kerf === 0
        ? 'Cut file and drawing show nominal sizes: no kerf is allowed for.'
        : `The drawing shows nominal sizes; the cut files allow for a kerf of ${plain(kerf, 3)} mm: do not offset again.`,
    print: 'Printed from the 3MF or STL file, which is the full definition of the shape.',
    flat: 'Print as drawn: the face at z = 0 lies on the bed, z up. No layer begins over air.',
    overhang: (levels: readonly { readonly z: string; readonly reach: string }[]): string =>
      `Print as drawn: the face at z = 0 lies on the bed, z up. Material begins over air at ${levels.map(({ z, reach }) => `z = ${z}, up to ${reach} mm from what carries it`).join('; ')}: bridge or support it there.`,
    brim: (height: string, width: string): string =>
      `${height} mm high on a foot ${width} mm wide: print it with a brim and dress what the brim leaves (common practice, no source).`,
    unlisted: 'The outline has more corners than a drawing can show: take it from the file.',
    tight: (feature: string): string => `Closer than the general tolerance: ${feature}.`,
  },
  setup: {
    what: 'What',
    value: 'Value',
    measured: 'Measured:',
    measureTitle: 'Measure first',
    zeroTitle: 'Find zero',
    settingsTitle: 'Settings, in the order of the passes',
    once: (what: string) => `The same for all belts: ${what}.`,
    turnsNote: (leads: string): string =>
      `Dial: t turns and d divisions of the knob from zero, in ${leads}, in brackets the division at the index.`,
    comes: (what: string, blade: string) =>
      `Heel, middle, tip, so many mm from the plunge: ${what.toLowerCase()}, ${blade}.`,
    expectedOf: (what: string, blade: string) => `${what}: ${blade}`,
    furtherTitle: 'What follows from the settings',
    picturesNote: 'Pictures are not to scale.',
    annexTitle: 'Numbers to check by, and places to write',
    annexNote:
      'To look up and to keep. What is needed at the machine, the cautions first of all, is on the set-up sheet.',
    factsTitle: 'Fixture, belts and blades',
    factsNote:
      'Scratches are estimates, a tenth of the mean grain. Up to about 0.2 mm of skin is decarburised by the heat treatment (common practice, no source): take as much off each side before the last belts.',
    budgetTitle: 'What errors do to the bevel',
    budgetNote:
      'Root of the sum of squares and worst case of the last settings; ranges of common practice are assumptions. Tighten what does most: halving it leaves what is stated.',
    budget: {
      what: 'What',
      spread: 'Spread',
      worst: 'Worst case',
      most: 'Most by (share of the variance)',
      halved: 'First halved',
    },
    bladesTitle: 'The blades that this holds for',
    bladesNote:
      'Before grinding, as entered. Measure yours: what differs moves angle and bevel. Heights are from spine to edge, square to the spine.',
    blades: {
      blade: 'Blade',
      place: 'From the plunge, mm',
      thickness: 'Thick, mm',
      height: 'High, mm',
      edge: 'Edge: as it comes; wanted, mm',
      spine: 'Spine corner radius, mm',
      bevels: 'Bevels: left; right',
    },
    progressTitle: 'Progress at one setting',
    checksTitle: 'Computed checks',
    checksNote:
      'Computed on the drawn parts with the stated grinder. A check that could not be computed counts as failed.',
    inchesNote: 'In brackets after a length: inches; stops and heights in inches are in the annex.',
    recordTitle: 'Record',
    record: [
      'Test piece, bevel heights at the three places, side one',
      'Test piece, bevel heights at the three places, side two',
      'Edge thickness after the last belt',
      'Set, tried with the motor off and checked by, date',
    ],
    columns: {
      pass: 'No.',
      belt: 'Belt',
      side: 'Side',
      turns: 'Turns from last',
      reading: 'Dial',
      read: 'Read',
      bevel: (place: string): string => `${place} mm`,
      measured: 'Measured',
      volume: 'Off, mm³',
    },
    lineStays: 'The line stays where it is: the new face does not reach it yet.',
  },
  cuttingPlan: {
    item: 'Item',
    name: 'Name',
    quantity: 'Qty',
    drawing: 'Drawing',
    sheet: (material: string, size: string, gap: string, margin: string): string =>
      `${material}: sheet of ${size} mm, lower left corner at the origin of the file; ${gap} mm between pieces, ${margin} mm to the edges of the sheet.`,
  },
  template: {
    bar100: '100 mm',
    bar4: '4 in',
    actualSize:
      'Print at actual size (100 %, no fitting to the page). Measure all four bars before you use the template; if one is off, do not use it. Glue it on, punch the circles, saw outside the line and file to it.',
    facts: (material: string, quantity: number, id: string, revision: string): string =>
      `${material}, quantity ${String(quantity)}. Scale 1:1, mm. ${id}, revision ${revision}.`,
    bar: (material: string, section: string, length: string): string =>
      `${material}, ${section}, ${length} mm long`,
    drilled: (id: string, size: string): string => `${id} Ø${size}`,
    tapped: (id: string, size: string, thread: string): string => `${id} Ø${size}, ${thread}`,
    fold: 'fold along the edge',
    tile: (row: number, column: number): string => `row ${String(row)}, column ${String(column)}`,
    overview: (count: number, scale: string): string =>
      `, overview of ${String(count)} pages (${scale})`,
  },
  code: {
    title: 'This design',
    holds: (characters: number, id: string): string =>
      `The code holds the whole design ${id}, ${String(characters)} characters, and needs no network. Scan it and put the text behind the address of the page, or save it as a text file and open that. Every parameter comes back as it was.`,
    tooLong: (characters: number, id: string): string =>
      `The design ${id} needs ${String(characters)} characters, more than a code holds that a camera can read from paper. Open this drawing's file instead: it carries the design.`,
  },
  partsList: {
    title: 'Parts list',
    item: 'Item',
    name: 'Name',
    quantity: 'Qty',
    material: 'Material, designation',
    sheet: (material: string, thickness: string): string => `${material}, ${thickness} mm`,
    file: 'File',
    bought: 'bought',
    drawing: 'see drawing',
  },
  assembly: {
    order: 'Assembly order',
    assembled: 'Assembled',
    supplies: 'Also needed, not drawn',
    supply: (what: string, use: string): string => `${what} (${use})`,
    fromBelow: 'Apart, from the other side and from below',
    cut: (letter: string): string => `${letter} – ${letter}`,
    cutNote: (letter: string): string =>
      `Section ${letter} – ${letter}: only what lies in the plane is drawn; screws, pins, nuts and round bars along it are not cut.`,
  },
} as const;
