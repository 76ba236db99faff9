import { said } from './ids.ts';
import { n } from './rounded.ts';

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
  readings: {
    noun: 'readings',
    parameters: {
      kind: {
        label: 'Kind of test piece',
        meaning: 'How the test piece was ground: flat on a spine rest or carriage, or hollow.',
        reason: 'Each kind is measured in its own way.',
      },
      setting: {
        label: 'Setting of the test piece',
        meaning: 'Id of the setting of the design at which the piece was ground.',
        reason: 'The readings are compared with what that setting should have ground.',
      },
      note: {
        label: 'Note',
        meaning: 'Which piece, belt and day the readings belong to.',
        reason: 'It is stored with the offset.',
      },
      scatter: {
        label: 'Errors of the readings',
        meaning: 'Whether the uncertainties are as stated or taken from the scatter.',
        reason: 'With few readings the stated uncertainties tell more than the scatter.',
        options: { stated: 'As stated with each reading', observed: 'From the scatter' },
      },
      wished: {
        label: 'Wished half interval',
        meaning:
          'Half width of the 95 % interval of the offset that would do, in the unit of the setting.',
        reason: 'It decides whether another reading is worth taking.',
      },
      thickness: {
        label: 'Thickness of the piece',
        meaning: 'Thickness of the unground stock.',
        reason: 'Thinner bars bend under the push; thicker ones are not blades.',
      },
      height: {
        label: 'Height of the piece',
        meaning: 'From spine to edge, along the midplane.',
        reason: 'Lower pieces disappear behind the step; higher ones reach beyond any platen.',
      },
      spineRadius: {
        label: 'Spine corner radius',
        meaning: 'Radius of both spine corners of the piece, 0 for sharp ones.',
        reason: 'Two rounded corners fill at most the whole spine.',
      },
      faceOffset: {
        label: 'Face offset',
        meaning: 'From the edge contact to the face that was hollowed, square to it.',
        reason: '0 on a bevel that ends at the edge, half the stock on a flat piece.',
      },
      edges: {
        label: 'Edge measured',
        meaning:
          'How the edge was measured: across, with the other side still the flat of the stock, or from a scribed centreline to the ground side.',
        reason: 'It decides which half of the thickness a reading tells.',
        options: { across: 'Across, other side unground', centreline: 'From the centreline' },
      },
      places: {
        label: 'Places',
        one: 'Place',
        meaning: 'Where the piece was measured, one entry each.',
        reason: 'Several places show whether the readings agree.',
      },
      label: {
        label: 'Name of the place',
        meaning: 'What the place is called in messages.',
        reason: 'Readings that do not agree are named by it.',
      },
      edge: {
        label: 'Edge thickness',
        meaning: 'Thickness at the edge as measured, across or from the centreline.',
        reason: 'It tells how far the cut went, which nothing else on the fixture does.',
      },
      bevelHeight: {
        label: 'Bevel height',
        meaning: 'From the edge along the midplane to the grind line.',
        reason: 'Full height tells nothing of the angle.',
      },
      angle: {
        label: 'Bevel angle',
        meaning: 'Between the midplane and the ground face, one side.',
        reason: 'Angles of knife bevels lie in this range.',
      },
      depth: {
        label: 'Depth of the hollow',
        meaning: 'Greatest depth below the face.',
        reason: 'It tells how far the cut went, which nothing else on the fixture does.',
      },
      limit: {
        label: 'Limit of the hollow',
        meaning: 'From the edge along the face to the lower or upper end of the hollow.',
        reason: 'The hollow lies between them.',
      },
      uncertainty: {
        label: 'Standard uncertainty',
        meaning:
          'Standard uncertainty of the reading, in its own unit: about half of what it may be wrong by.',
        reason: 'No reading is exact; one as uncertain as the most tells nothing.',
      },
    },
    rules: {
      sameLabel: (label: string) => ({
        message: `Two places are called "${label}"; each must have a name of its own, because readings are named by it.`,
        fix: 'Rename one of the places.',
      }),
      spineRadius: (value: number, most: number) => ({
        message: `Spine corner radius is ${value} mm; it must be from 0 to ${n(most)} mm on this piece, because two rounded corners fill at most the whole spine.`,
        fix: 'Measure the radius or the thickness of the piece again.',
      }),
      edge: (value: number, from: number, to: number, edges: string) => ({
        message: `Edge thickness is ${value} mm; measured "${edges}" on this piece it must be from ${n(from, 3)} to below ${n(to, 3)} mm, because something was ground and the other half is left.`,
        fix: 'Enter the edge as the file says it was measured, or change how it was measured ("edges").',
      }),
      bevelHeight: (value: number, height: number) => ({
        message: `Bevel height is ${value} mm; it must be less than ${height} mm, the height of the piece, because a full-height bevel tells nothing of the angle.`,
        fix: 'Grind a lower bevel on the test piece, or leave this reading out.',
      }),
      limits: (lower: number, upper: number) => ({
        message: `Lower limit of the hollow is ${lower} mm; it must be less than the upper limit, ${upper} mm, because both are measured from the edge.`,
        fix: 'Exchange or measure again the two limits.',
      }),
    },
  },
  budgetCommand: {
    about:
      'Draw up the tolerance budget of a design: what errors of setting, belt and blade do to the bevel',
    drawsOption: 'settings to simulate (4000)',
    seedOption: 'seed of the simulation (1); the same seed gives the same numbers',
    draws: {
      label: 'Draws',
      meaning: 'How many settings are simulated.',
      reason: 'Fewer tell nothing of the ends of the spread; more take minutes.',
    },
    seed: {
      label: 'Seed',
      meaning: 'Where the sequence of chance numbers starts.',
      reason: 'The generator knows no others.',
    },
    none: (family: string) => ({
      message: `Fixtures of the family "${family}" have no tolerance budget: they state no contributors.`,
      fix: 'Draw up the budget of a spine rest, an edge rest or a carriage.',
    }),
    outputs: {
      angle: { label: 'Angle, side ground first', unit: 'deg' },
      bevelHeight: { label: 'Bevel height, side ground first', unit: 'mm' },
      edgeThickness: { label: 'Edge thickness, both sides', unit: 'mm' },
      difference: { label: 'Second side less first', unit: 'mm' },
      tilt: { label: 'Tilt, side ground first', unit: 'deg' },
      upperLimit: { label: 'Upper limit of the hollow, side ground first', unit: 'mm' },
      web: { label: 'Steel left between the hollows', unit: 'mm' },
    },
    nominal: (label: string, value: string): string => `${label}: ${value}`,
    worst: (low: string, high: string): string => `  worst case ${low} to ${high}`,
    spread: (rss: string, uncertainty: string): string =>
      `  root sum of squares +/- ${rss}, standard uncertainty ${uncertainty}`,
    simulated: (low: string, high: string): string => `  simulated: 95 % from ${low} to ${high}`,
    dominant: (label: string, share: string, uncertainty: string, rss: string): string =>
      `  most by: ${label} (${share} of the variance); half of it leaves standard uncertainty ${uncertainty}, root sum of squares +/- ${rss}`,
    effect: (most: string): string => `up to ${most}`,
    assumed:
      'Ranges of common practice are assumptions: measure what counts most and put the measured range in their place.',
  },
  command: {
    about:
      'Find the true offset of a fixture from the readings of a test piece, with its 95 % interval and the corrected dial readings',
    readingsOption: 'readings of the test piece (JSON; `schema readings` prints its schema)',
    outOption: 'write the design that remembers the offset to this new file',
    offset: (setting: string, offset: string, significant: boolean): string =>
      `True offset by setting ${said(setting)}: ${offset}${significant ? '' : ', not told from 0 by these readings'}`,
    interval: (low: string, high: string, uncertainty: string, method: string): string =>
      `95 % interval: ${low} to ${high} (standard uncertainty ${uncertainty}, ${method === 'student' ? 'from the scatter of the readings' : 'from the stated uncertainties'})`,
    agreement: ({
      chiSquare,
      limit,
      freedom,
      consistent,
    }: {
      readonly chiSquare: number;
      readonly limit?: number;
      readonly freedom: number;
      readonly consistent: boolean;
    }): string =>
      limit === undefined
        ? 'Agreement of the readings: not computed, no spare reading'
        : `Agreement of the readings: chi-square ${n(chiSquare)} with ${freedom} spare readings, at most ${n(limit)} expected: ${consistent ? 'they agree' : 'they do NOT agree'}`,
    dialTitle: (offset: string): string => `Dial readings that allow for an offset of ${offset}:`,
    turns: (turns: string): string => `${turns} turns from zero`,
    division: (division: number): string => `read division ${division}`,
    advice: {
      enough: (now: string, wished: string): string =>
        `Advice: another reading is not worth taking; half the interval is ${now}, wished ${wished}.`,
      'one-more': (now: string, wished: string): string =>
        `Advice: take one more reading; half the interval is ${now}, wished ${wished}.`,
      'several-more': (now: string, wished: string): string =>
        `Advice: one more reading will not do; half the interval is ${now}, wished ${wished}. Measure several more places, or with a smaller uncertainty.`,
      'measure-piece-better': (now: string, wished: string): string =>
        `Advice: more places will not do; half the interval is ${now}, wished ${wished}. Measure thickness and height of the piece better.`,
    },
    expected: (after: string, floor: string): string =>
      `Expected half interval (estimate): ${after} with one more place, ${floor} with any number of them`,
    written: (file: string): string => `Updated design in ${file}`,
  },
  calibration: {
    unknownSetting: (id: string, ids: string) => ({
      message: `Setting of the test piece is "${id}"; it must be one of ${ids}, because the readings are compared with a setting of this design.`,
      fix: `Enter one of ${ids}.`,
    }),
    wrongKind: (wanted: string, given: string) => ({
      message: `Kind of test piece is "${given}"; it must be "${wanted}", because that is what this fixture grinds.`,
      fix: `Measure a piece ground on this fixture and enter it as "${wanted}".`,
    }),
    notKnown: (family: string) => ({
      message: `Fixtures of the family "${family}" cannot be calibrated from readings: they state no setting to correct.`,
      fix: 'Calibrate a spine rest, an edge rest or a carriage.',
    }),
    corrected: (offset: string, unit: string, note: string): string =>
      `The dial allows for an offset of ${offset} ${unit} found on a test piece${note === '' ? '' : ` (${note})`}.`,
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
