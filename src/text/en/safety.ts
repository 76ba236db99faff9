/** Cautions for people, printed on every set-up sheet and drawing set. */
export const safety = {
  /** On every drawing, short. */
  drawing: [
    'Deburr every edge that touches the blade, the belt side or a hand.',
    'Checked parts are not a guarantee: try the fixture with the motor off, through its whole stroke, before the first cut.',
  ],
} as const;
