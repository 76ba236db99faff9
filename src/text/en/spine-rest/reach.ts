/** What a spine-referenced rest can grind besides the blades it was made for. */
export const reach = {
  travel: 'Place of the step on its base, within the slot less a reserve of 0.5 mm',
  step: 'Height of the spine’s contact with the step',
  push: 'Room for the pad between the lowest push that seats the spine and the edge',
  scope:
    'blades of constant thickness with a straight spine, both sides ground flat to one angle, on the belts, edges and spine radius of this design; the bevel ends below the spine. Push block, stop collar and setting gauge follow the blade; tang, plunge and grind line are checked when the blade itself is put in',
} as const;
