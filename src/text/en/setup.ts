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
