/** What a guided-angle carriage can grind besides the blades it was made for. */
export const reach = {
  fence: 'Foot’s centre from the belt, within the slots of the fence less a reserve of 0.5 mm',
  heel: 'Extension of the heel screw, within its thread',
  track: 'Heel screw’s tip on the base, clear of holes and ends',
  dip: 'Air between the front of the sole and the fence screws',
  grip: 'Lower side of the tang over the clamp screw',
  gripped: 'Ricasso under the clamp screw',
  scope:
    'blades of constant thickness with a straight spine and an edge parallel to it, both sides ground flat to one angle, no longer than those of this design, with their tang (its thickness, height and place under the spine), on the belts, edges and spine radius of this design; the bevel ends below the spine. Setting gauge and clearances of the blade are made and checked when the blade itself is put in',
} as const;
