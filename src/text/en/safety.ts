/** Cautions for people, printed on every set-up sheet and drawing set. */
export const safety = {
  /** On every drawing, short. */
  drawing: [
    'Deburr the part; break every edge a hand or a blade can touch.',
    'Before the first cut try the assembled fixture with the motor off and the machine isolated, through its whole stroke. Passed checks are computed, not a promise: nothing here says that the fixture is safe.',
  ],
  title: 'Cautions',
  /** What has the last word. */
  authority:
    'The manuals of the machine, belt and wheels, local codes and qualified people come first. Passed checks are computed: nothing here says that the fixture is safe.',
  /** On every set-up sheet, in the order of the work. */
  cautions: [
    {
      title: 'Fitting',
      lines: [
        'Isolate the machine (plug out or lock off) before you fit, adjust or measure at the belt.',
        'Run the belt the way its splice is made for, at no more than the rated speed of belt and wheel.',
        'Lock all, read again, try the whole stroke by hand, motor off: it may touch only the blade.',
        'Keep the gap to the belt as small as stated, and never at a run of it that nothing carries.',
      ],
    },
    {
      title: 'Yourself',
      lines: [
        'Wear eye protection, a respirator against fine dust, also grinding wet; ear protection if loud.',
        'No gloves, loose sleeves, cords or jewellery near the belt; tie back long hair.',
        'Draw dust off at the belt; no sparks into collected dust; never mix metal and wood dust.',
      ],
    },
    {
      title: 'Grinding',
      lines: [
        'Keep both hands behind the push block; nothing else presses the blade.',
        'With the edge up and the belt running down the belt meets the edge first: never grind a sharpened edge, nor one thinner than stated.',
        'The push block hides the heat: cool often. Hardened steel that colours has lost its hardness.',
        'Every stroke: brush what the blade rests on. Every side: deburr the blade where it rests.',
        'Stop by measuring, with the motor off: no fixture does that for you.',
      ],
    },
    {
      title: 'Machine and parts',
      lines: [
        'Keep water and mist from mains parts; use a residual-current device.',
        'Keep printed parts from heat and out of reach of the belt; replace cracked or worn ones.',
        'Stop at once when anything chatters, slips or touches; isolate, then look why.',
      ],
    },
  ],
} as const;
