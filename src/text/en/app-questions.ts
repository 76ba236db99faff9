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
