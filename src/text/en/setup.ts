const n = (value: number, decimals = 2): string =>
  String(Math.round(value * 10 ** decimals) / 10 ** decimals);

/** Words of setting up: tolerance budget, zero and calibration. */
export const setup = {
  quantities: {
    edge: 'edge',
    bevelHeight: 'bevel height',
    angle: 'angle',
    depth: 'depth of the hollow',
    lower: 'lower limit of the hollow',
    upper: 'upper limit of the hollow',
    thickness: 'thickness of the piece',
    height: 'height of the piece',
  },
  contributors: {
    labels: {
      step: 'Position of the step at its zero',
      lip: 'Position of the lip at its zero',
      fence: 'Position of the fence',
      screw: 'Reading of the heel screw',
      yaw: 'Yaw in the guide',
      dial: 'Reading of the dial',
      backlash: 'Play of the screw',
      lock: 'Shift on locking',
      base: 'Distance of foot and heel screw',
      belt: 'Thickness of the belt',
      wear: 'Wear of the belt since the zero',
      compression: 'Compression of the belt',
      splice: 'Splice of the belt',
      backing: 'Give of the backing',
      platen: 'Wear of the platen',
      wheel: 'Radius of the wheel',
      squareness: 'Squareness of seat and abrasive face',
      seatHeight: 'Height of the seat',
      clamp: 'Middle of the blade in the clamp',
      height: 'Height of the blade',
      thickness: 'Thickness of the blade',
      bow: 'Bow after heat treatment',
      straightness: 'Straightness of the spine',
      edge: 'Reading of the edge at the stop',
      depth: 'Reading of the depth at the stop',
      centreline: 'Place of the scribed centreline',
      push: 'Push on the blade',
    },
    sources: {
      practice: 'common practice, no source',
      parameter: 'setting tolerance of this fixture',
      yaw: 'yaw of the step in its guide, taken over half the width of the belt',
      resolution: 'half a division of the dial (JCGM 100, F.2.2.1)',
      splice:
        'height of the splice, over the tenth of the belt that it may be taken to bear on; common practice, no source',
      push: 'half of the push, bending by the handbook formula of cantilevers; an estimate',
    },
  },
  budget: {
    badRange: (label: string, minus: number, plus: number) => ({
      message: `The range of ${label} is -${minus} to +${plus}; both must be finite and not negative, because they are distances from the nominal value.`,
      fix: `Enter how far ${label} may lie below and above its nominal value.`,
    }),
    same: (id: string) => ({
      message: `Two contributors are called "${id}"; each must have a name of its own, because correlations refer to it.`,
      fix: 'Rename one of them, or put both into one.',
    }),
    badCorrelation: (between: readonly string[], coefficient: number) => ({
      message: `The correlation between ${between.join(' and ')} is ${coefficient}; it must be from -1 to 1 between two contributors of this budget, because nothing agrees better than wholly.`,
      fix: 'Correct the coefficient or the names.',
    }),
    outOfReach: {
      message:
        'No budget can be computed: at the nominal setting, or with the contributors at the ends of their ranges, the fixture does not grind this blade at all.',
      fix: 'Check setting and blade, or narrow the ranges of the contributors.',
    },
    missed: (missed: number, draws: number) => ({
      message: `${missed} of ${draws} simulated settings lie outside what the fixture can grind and are left out of the simulated spread.`,
      fix: 'Narrow the ranges of the contributors, or move the setting away from its limit.',
    }),
  },
  calibration: {
    named: (place: string, label: string): string =>
      place === '' ? label : `${label} at ${place}`,
    undetermined: {
      message:
        'The readings do not fix the offset: each place needs, besides how far the cut went (edge or depth), at least one of bevel height, angle or a limit of the hollow.',
      fix: 'Add bevel height, angle or a limit to at least one place.',
    },
    outOfReach: {
      message:
        'No offset of this setting explains the readings: the fixture as set could not have ground such a piece.',
      fix: 'Check which setting the piece was ground at, the measures of the piece, and that every reading is in mm or degrees.',
    },
    tooFew: (freedom: number) => ({
      message: `Errors are to be taken from the scatter, but there ${freedom === 0 ? 'is no spare reading' : 'are too few readings'}; at least one more reading than unknowns is needed.`,
      fix: 'Measure more places, or set scatter to "stated" with the uncertainty of every reading.',
    }),
    inconsistent: (chiSquare: number, limit: number, names: readonly string[]) => ({
      message: `The readings disagree by more than their stated uncertainties: chi-square is ${n(chiSquare)}, and at most ${n(limit)} would be expected in 19 of 20 sound sets. ${names.length > 0 ? `Out of line: ${names.join(', ')}` : 'No single place stands out'}. The interval was widened by the scatter.`,
      fix:
        names.length > 0
          ? 'Measure the named readings again and look for burrs, or for a step that moved between strokes.'
          : 'Measure thickness and height of the piece again, check the setting, or state larger uncertainties.',
    }),
    noSpare: {
      message: 'There are as many unknowns as readings, so nothing tells whether they agree.',
      fix: 'Measure at least one more place.',
    },
  },
} as const;
