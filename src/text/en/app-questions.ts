/** What the page asks of a fixture beyond its own design: questions that take some seconds. */

export const reach = {
  title: 'What else it can grind',
  about:
    'Sizes of blades, and of bevels or hollows, that this fixture, as it is built, can still grind.',
  ask: 'Find its reach',
  axes: (up: string, across: string) => `Down: ${up}. Across: ${across}.`,
  nothing: 'In the range that is tabled nothing is proved to be in its reach.',
  bars: (label: string, from: string, to: string) =>
    `${label}; each bar lies between ${from} and ${to}.`,
} as const;

export const range = {
  title: 'How far a number may move',
  about:
    'Tries other values of one number of the fixture, each solved and checked whole, until a check fails. It takes some seconds a number.',
  dials: 'How far a reading may be off',
  dialsAbout:
    'Shift of what a reading moves, to either side, before a clearance can fail. Proved; the blade is left out unless it is clamped to it.',
  dial: (label: string, free: string, check: string) =>
    `${label}: ${free} is proved free; farther, ${check} may fail`,
  dialNone: (label: string, check: string) => `${label}: nothing is known to be free (${check})`,
  number: 'Number',
  ask: 'Find its free range',
  looking: 'Values are being tried.',
  between: (from: string, to: string, now: string) => `${from} to ${to} (now ${now})`,
  down: (why: string) => `Smaller: ${why}.`,
  up: (why: string) => `Greater: ${why}.`,
  stop: {
    limit: 'the end of what may be entered',
    far: 'nothing failed so far out',
    check: (bad: string, fails: readonly string[]) => `at ${bad} checks fail: ${fails.join(', ')}`,
    refused: (bad: string, codes: readonly string[]) =>
      `at ${bad} nothing can be built: ${codes.join(', ')}`,
  },
  basis: (tried: number, tolerance: string) =>
    `An estimate: ${tried} values tried, ends found to ${tolerance}; between the values tried nothing is proved.`,
} as const;

export const budget = {
  title: 'Tolerance budget',
  about: 'What errors of setting, belt and blade do to the bevel, and which counts most.',
  make: 'Draw up the budget',
  none: 'This kind of fixture states no contributors, so no budget can be drawn up.',
  simulated: (low: string, high: string) => `95 of 100 set-ups lie from ${low} to ${high};`,
  worst: (low: string, high: string) => `the worst case is ${low} to ${high}.`,
  dominant: (label: string, share: string) => `Most comes from: ${label} (${share}).`,
  effects: 'Every contributor',
  contributor: 'Contributor',
  most: 'Up to',
  share: 'Share',
} as const;

export const calibration = {
  title: 'Calibrating from a test piece',
  about:
    'Grind a piece of known thickness at one setting, measure it at a few places, and put in what you find: how far the fixture really stands from what its dial says comes out.',
  none: 'This kind of fixture states no setting that a test piece could correct.',
  stored: (offset: string, note: string) =>
    `The design allows for an offset of ${offset} found before${note === '' ? '' : ` (${note})`}.`,
  start: 'Enter readings',
  open: 'Open a readings file',
  refused: 'The readings file was not opened; nothing was changed.',
  another: 'Another place',
  measured: 'Every value above was measured on my test piece',
  work: 'Work out the offset',
  working: 'Being worked out …',
  drop: 'Put the readings away',
  old: 'Design or readings have changed since this was worked out. Work it out again.',
  take: 'Put the offset into the design',
  taken:
    'The design allows for the offset now; its dial readings have changed. Undo takes it back.',
  uncertainty: (label: string) => `${label}: standard uncertainty`,
  lower: 'Lower limit of the hollow',
  upper: 'Upper limit of the hollow',
} as const;

/** What a design is fitted to, before and after it is. */
export const adapt = {
  grinder: {
    title: (name: string) => `This design on “${name}”`,
    working: 'Building the fixture for that grinder, to see what stays and what is made again …',
    cannot: 'This fixture cannot be built for that grinder as it stands.',
    take: 'Fit the design to it',
  },
  blades: {
    title: (name: string) => `The blades of “${name}” in this fixture`,
    working: 'Building the fixture for those blades, to see what stays and what is made again …',
    cannot: 'This fixture cannot be built for those blades as it stands.',
    take: 'Fit the design to them',
  },
  old: 'The design has changed since this was asked.',
  again: 'See again',
  replaceOnly: 'Only put the grinder in',
  measure: (count: number, grinder: string) =>
    `“${grinder}” is in. ${count === 1 ? '1 value of the fixture describes' : `${count} values of the fixture describe`} another grinder: measure on this one before anything is made.`,
  toMeasure: 'Show what to measure',
  drop: 'Leave everything as it is',
  settings: 'Readings before and after',
  setting: 'Reading',
  before: 'Before',
  after: 'After',
} as const;
