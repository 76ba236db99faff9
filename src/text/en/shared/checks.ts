/** What limits of checks rest on. */
export const basis = {
  geometry: 'geometry of the fixture',
  setting: 'parameter of this fixture',
  practice: 'common practice, no source',
  wheelRest:
    'published limit for work rests at abrasive wheels, 3.175 mm (1/8 inch): the nearest written rule',
  plan: 'solution of this design',
  rating: 'rating in the grinder file',
  blade: 'wish in the blade file',
} as const;

/** Labels, mends and names of checks that several families have. */
export const checks = {
  basis,
  labels: {
    pair: (a: string, b: string) => `${a} to ${b}`,
    contact: (a: string, b: string) => `Contact of ${a} and ${b}`,
    inside: 'Parts of the fixture among each other',
    edge: 'Edge thickness at the stop',
    undercut: 'Distance of every pass from the finished face',
    speed: 'Speed of the belt',
  },
  fix: {
    collar: 'Let the nose reach further beyond the belt.',
    contactOpen: 'Correct the layout: parts that must touch do not.',
    inside: 'Correct the layout: two parts claim the same room.',
    edge: 'Stop at a thicker edge and finish by hand, or lower the least edge thickness knowingly.',
    undercut: 'Make this pass steeper, or leave more at its edge.',
    yaw: 'Make the guide longer or its play smaller.',
    speed: 'Use a smaller drive wheel or a slower motor, or belts and wheels of a higher rating.',
  },
  insideMessage: (passed: number, failed: number, apart: number, everySetting: boolean): string =>
    `${String(passed)} pairs of parts keep ${apart.toFixed(1)} mm apart at ${everySetting ? 'every' : 'the first'} setting; ${String(failed)} do not.`,
  names: { collar: 'stop collar', nose: 'nose' },
} as const;

/** Bodies of the machine, and what is held, in the words of checks. */
export const bodies = {
  blade: 'blade',
  tang: 'tang',
  belt: 'belt',
  platen: 'platen',
  wheels: 'wheels',
  rest: 'rest',
  guards: 'keep-outs',
  hand: 'hand',
} as const;
