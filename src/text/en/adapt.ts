/** A count with its noun. */
const counted = (count: number, one: string, more = `${one}s`): string =>
  `${String(count)} ${count === 1 ? one : more}`;

/** Words of adapting, comparing and sharing designs. */
export const adapt = {
  openAbout:
    'Restore the design from any exported file (SVG, PDF, DXF, 3MF, package), a package folder or a link',
  linkAbout: 'Print a design as the fragment of a link, the whole design in it',
  compareAbout: 'Tell the difference between two designs in words, with its consequence',
  adaptAbout:
    'Fit a design to another grinder or other blades: what stays, what is made again, the new settings',
  reachAbout: 'Table what a fixture can grind: sizes of blade and bevel or hollow that are proved',
  newFileOption: 'the design file to write; it must not exist yet',
  grinderOption: 'a grinder file (*.grinder.json) or the name of a preset',
  bladesOption: 'a design whose blades and edges the fixture shall grind',
  nothingToAdapt: {
    message: 'Neither --grinder nor --blades is given: there is nothing to adapt to.',
    fix: 'Give --grinder with a grinder file or a preset, --blades with a design, or both.',
  },
  unknownGrinder: (name: string, presets: string) => ({
    message: `"${name}" is neither a file nor a grinder preset; presets are ${presets}.`,
    fix: `Give the path of a grinder file (*.grinder.json) or one of ${presets}.`,
  }),
  restored: (name: string, file: string) => `"${name}" written to ${file}`,

  mend: {
    about:
      'Set every value that refusals, warnings and failed checks name as their mend, or that is found by trying, and tell which',
    nothing: {
      message: 'No value is named, or found by trying, that would mend anything.',
      fix: 'Follow the words of what fails, or compare the fixtures.',
    },
    left: 'The values named do not mend it; nothing was written. What is left:',
    still: (n: number) => `${counted(n, 'check')} still ${n === 1 ? 'fails' : 'fail'}.`,
    all: 'Mend all that a value mends',
    working: 'Setting the values named, one after another …',
    step: (label: string, from: string | null, to: string | null) =>
      `${label}: ${to ?? 'not set'}${from === null ? '' : ` instead of ${from}`}`,
    done: (list: readonly string[]) =>
      [
        `${counted(list.length, 'value')} set; undo brings ${list.length === 1 ? 'it' : 'them'} back.`,
        ...list,
      ].join('\n'),
    failed: (why: string) => `The values named do not mend it; nothing was changed. Left: ${why}`,
  },

  absent: 'not set',
  none: 'none',
  entries: (count: number) => counted(count, 'entry', 'entries'),
  points: (count: number) => counted(count, 'point'),
  values: (count: number) => counted(count, 'value'),
  path: (labels: readonly string[]) => labels.join(', '),
  parameter: (label: string) => `Fixture, ${label}`,
  family: 'Fixture family',
  entryPart: (label: string, value: string) => `${label} ${value}`,
  wholeFixture: 'Fixture',
  areas: {
    grinder: 'Grinder',
    'grinder.belt': 'Grinder, belt',
    'grinder.drive': 'Grinder, Drive',
    making: 'Making',
    'making.plates': 'Making, plates',
    'making.prints': 'Making, prints',
    'fixture.calibration': 'Fixture, calibration',
  },
  differenceTitle: (count: number) =>
    count === 0 ? 'The designs are the same.' : counted(count, 'difference'),
  difference: (label: string, from: string | null, to: string | null) =>
    from === null
      ? `${label}: new${to ? `, ${to}` : ''}`
      : to === null
        ? `${label}: left out${from === '' ? '' : `; it was ${from}`}`
        : `${label}: ${from} -> ${to}`,
  consequenceTitle: 'What all of it changes',
  consequenceOf: (label: string) => `What "${label}" changes by itself`,
  noConsequence: 'Nothing is set, made or bought differently.',
  cannotAlone: (why: string) => `It does not stand by itself: ${why}`,

  side: { left: 'left', right: 'right' },
  edgeStop: 'Edge to stop at',
  angle: 'Bevel angle',
  bothSides: 'both sides',
  settingOf: (belt: string, side: string, nth: number) =>
    `${belt} ${side}${nth === 1 ? '' : `, setting ${nth}`}`,
  settingGone: 'no longer ground',
  settingValue: (from: string | null, to: string | null, unit: string) =>
    from === null
      ? `new: ${to ?? ''} ${unit}`
      : to === null
        ? `no longer set; it was ${from} ${unit}`
        : `${from} -> ${to} ${unit}`,
  setting: (who: string, label: string) => `${who}, ${label}`,
  settingsTitle: 'Settings that change',
  settingsSame: 'Settings: unchanged',
  partsTitle: (kept: number, total: number) =>
    kept === total
      ? `Parts: all ${total} made parts stay as they are`
      : `Parts: ${kept} of ${total} made parts stay as they are`,
  part: {
    unchanged: 'stays as it is',
    rework: 'drill further',
    remake: 'make again',
    new: 'make',
    'left-over': 'no longer needed',
    more: 'make more of',
  },
  make: { plate: 'cut', print: 'print', stock: 'saw and drill', hardware: 'buy' },
  partsStay: (count: number) =>
    `${counted(count, 'part')} ${count === 1 ? 'stays' : 'stay'} unchanged`,
  partsKept: (names: readonly string[]) => `as they are: ${names.join(', ')}`,
  partLine: (change: string, name: string, reasons: string) =>
    `${change}: ${name}${reasons === '' ? '' : ` (${reasons})`}`,
  reuse: (name: string) => `the old part "${name}" has this very shape`,
  reasons: {
    kind: (from: string, to: string) => `${from} becomes ${to}`,
    material: (from: string, to: string) => `material ${from} -> ${to}`,
    process: (from: string, to: string) => `process ${from} -> ${to}`,
    thickness: (from: string, to: string) => `thickness ${from} -> ${to} mm`,
    size: (from: string, to: string) => `size ${from} -> ${to} mm`,
    section: (from: string, to: string) => `stock ${from} -> ${to}`,
    holesNew: (ids: readonly string[]) =>
      `new ${ids.length === 1 ? 'hole' : 'holes'} ${ids.join(', ')}`,
    holesGone: (ids: readonly string[]) =>
      `without ${ids.length === 1 ? 'hole' : 'holes'} ${ids.join(', ')}`,
    holesMoved: (ids: readonly string[], by: string) =>
      `${ids.length === 1 ? 'hole' : 'holes'} ${ids.join(', ')} moved by up to ${by} mm`,
    holesSized: (ids: readonly string[]) => `other size of ${ids.join(', ')}`,
    marks: 'marks differ',
    shape: 'outline differs',
    count: (from: number, to: number) => `${from} -> ${to} pieces`,
    wanted: (count: number) => counted(count, 'piece'),
    drill: (ids: readonly string[]) => `drill ${ids.join(', ')} in the part at hand`,
  },
  buyTitle: 'To buy',
  buyNothing: 'To buy: nothing',
  buy: (count: number, designation: string) => `${count} x ${designation}`,
  leftOver: (list: readonly string[]) => `Left over: ${list.join('; ')}`,
  checksTitle: (failed: number, total: number) =>
    failed === 0 ? `Checks: all ${total} pass` : `Checks: ${failed} of ${total} fail`,
  adaptTitle: (design: string, grinder: string) => `"${design}" on "${grinder}"`,
  notWritten: 'Nothing was written; give --out to write the design.',
  notes: {
    belt: (pass: number, from: string, to: string) =>
      `Belt ${pass}: ${from} is not among the belts of the new grinder; the nearest grit, ${to}, takes its place.`,
    backing: (pass: number, from: string, to: string) =>
      `Belt ${pass}: the backing ${from} is not on the new grinder; ${to} takes its place.`,
    passDropped: (pass: number, belt: string) =>
      `Belt ${pass}: ${belt} is used already with the same stop; the pass is left out.`,
    calibration: 'The calibration belongs to the old grinder and is left out: calibrate again.',
    kept: (
      { label, machine }: { label: string; machine?: { measure: string } },
      value: string,
      from: string,
      to: string,
    ) => ({
      message: `${label}: ${value} is kept from "${from}"; it describes that machine, and no file says what it is on "${to}".`,
      fix: `${machine?.measure ?? ''} Put in what you find; everything is worked out again from it.`,
    }),
    gaveWay: (label: string, from: string, to: string) =>
      `${label}: ${from} cannot be built here; ${to} can.`,
    asItIs: (message: string) => `The design as it is, on its own grinder: ${message}`,
    refusedThen: (message: string) => `With what is named before this set: ${message}`,
    sequence: 'Edges to stop at are taken over with the blades.',
  },

  reachTitle: (family: string) => `What this ${family.toLowerCase()} can grind, as it is built`,
  reachUnknown: (family: string) => ({
    message: `The fixture family "${family}" does not state the limits of what it can grind.`,
    fix: 'Adapt the design to the blades in question instead: jig adapt FILE --blades OTHER.',
  }),
  reachLimits: 'Held to',
  reachLimit: (label: string, atLeast: string, atMost: string) =>
    `${label}: ${[atLeast, atMost].filter(Boolean).join(', ')}`,
  reachAtLeast: (value: string) => `at least ${value}`,
  reachAtMost: (value: string) => `at most ${value}`,
  reachUnits: { mm: 'mm', deg: 'degrees' } as const,
  reachAxis: (label: string, unit: string) => `${label}, ${unit}`,
  reachBars: (label: string, from: string, to: string, unit: string) =>
    `Figures and bars: ${label}; a bar reaches across its band from ${from} to ${to} ${unit}.`,
  reachAlso: (label: string, unit: string) => `After the semicolon: ${label}, ${unit}.`,
  reachPicture: 'the drawing (SVG) to write; it must not exist yet',
  reachDrawn: (file: string) => `Drawn in ${file}`,
  reachCorner: (up: string, across: string) => `${up} \\ ${across}`,
  reachBand: (from: string, to: string) => `${from} to ${to}`,
  reachCell: (run: string, also: string | undefined) =>
    also === undefined ? run : `${run}; ${also}`,
  reachRange: (from: string, to: string) => `${from}-${to}`,
  reachNone: '-',
  reachNothing: 'nothing in the range that is tabled',
  reachProof: (label: string, unit: string, step: string) =>
    `${label}, ${unit}: proved by interval arithmetic for every blade of the band; found to ${step} ${unit}.`,
  reachScope: (scope: string) => `Holds for ${scope}.`,
} as const;
