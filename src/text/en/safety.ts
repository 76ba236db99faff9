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
    'The manuals of the machine, the belt and the wheels, local codes and qualified people come before anything on this sheet. It reports which checks were computed and passed; it does not say that the fixture is safe.',
  /** On every set-up sheet, in the order of the work. */
  cautions: [
    {
      title: 'Fitting',
      lines: [
        'Isolate the machine (plug out or lock off) before you fit, adjust or measure anything at the belt or the wheel.',
        'Run the belt in the direction its splice is made for, at no more than the rated speed of belt and wheel.',
        'Lock every bolt, read the setting again, then move the fixture through its whole stroke by hand, both sides, motor off: it must touch nothing but the blade.',
        'Keep the gap between fixture and belt as small as the sheet says, and where platen or wheel carries the belt, never at an unsupported run of it.',
      ],
    },
    {
      title: 'Yourself',
      lines: [
        'Wear eye protection, and a respirator against fine dust, also when grinding wet. Hearing protection where the machine is loud.',
        'No gloves, loose sleeves, cords or jewellery near the belt; tie back long hair.',
        'Draw the dust off at the belt. Keep sparks out of collected dust, and never mix dust of different metals or wood.',
      ],
    },
    {
      title: 'Grinding',
      lines: [
        'Keep both hands behind the push block. Nothing but the push block presses the blade.',
        'With the edge up and the belt running down the belt meets the edge first: never grind a sharpened edge, and never one thinner than the least on this sheet.',
        'The push block hides the heat: cool often. Hardened steel that shows a colour has lost its hardness.',
        'Brush clean what the blade rests on before every stroke, and deburr the blade where it rests before every side: grit or a burr there is an error of the bevel.',
        'Stop at the edge thickness given, by measuring with the motor off. No fixture does that for you.',
      ],
    },
    {
      title: 'Machine and parts',
      lines: [
        'Keep water and mist away from mains parts; run the machine on a residual-current device.',
        'Keep printed parts from heat, and from where belt or wheel could draw them in. Replace one that is cracked, softened or worn.',
        'Stop at once when anything chatters, slips or touches; isolate the machine before you look for the reason.',
      ],
    },
  ],
} as const;
