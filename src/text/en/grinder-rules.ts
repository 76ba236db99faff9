/** What holds the fields of a grinder together, each with its mend. */
export const grinderRules = {
  platenNotTouched: () => ({
    message:
      'The belt does not touch the platen; Platen and backing must stand proud of the line between the wheels, because the belt is pulled straight over them.',
    fix: 'Move the wheels back from the platen face, or correct the ends of the platen.',
  }),
  sameId: (label: string, id: string) => ({
    message: `${label} has the short name ${id} twice; each must be unique, because passes refer to it.`,
    fix: 'Rename one of the two.',
  }),
  platenEnds: (bottom: number, top: number, least: number) => ({
    message: `Platen reaches from ${bottom} to ${top} mm; its top must lie at least ${least} mm above its bottom, because a flat must remain between its rounded ends.`,
    fix: 'Raise Top of the platen, lower Bottom of the platen, or reduce Radius of the platen ends.',
  }),
  besideBelt: (label: string, width: number, belt: number, most: number) => ({
    message: `${label} is ${width} mm and the belt ${belt} mm wide; beyond ${most} mm it stands bare beside the belt, because the belt wanders no farther, and plunge, tang and jaw, which pass there, meet it.`,
    fix: 'Measure both. Where it is so, use a belt as wide, or a fixture that keeps what is thick off the bare part.',
  }),
  bareBacking: (thickness: number) => ({
    message: `Backing thickness is ${thickness} mm on a backing of kind none; it must be 0 mm, because nothing lies between platen and belt.`,
    fix: 'Set Backing thickness to 0, or choose the kind of the backing.',
  }),
  thinBacking: (kind: string) => ({
    message: `Backing thickness is 0 mm on a backing of kind ${kind}; it must be more than 0 mm, because it moves every setting.`,
    fix: 'Measure the backing under working pressure and enter its thickness.',
  }),
  backingWithoutPlaten: () => ({
    message:
      'A backing lies on a platen, but Platen is of kind none; only the bare backing is possible, because a contact wheel takes no backing.',
    fix: 'Remove this backing, or describe the platen.',
  }),
  supports: (count: number) => ({
    message: `Wheels has ${count} entry; without a platen there must be at least 2, because a belt needs two supports.`,
    fix: 'Add the other wheels that the belt runs over.',
  }),
  noContact: () => ({
    message:
      'Platen is of kind none and no wheel has the role contact; one is needed, because there is nothing to grind on otherwise.',
    fix: 'Give one wheel the role contact, or describe the platen.',
  }),
  wheelsOverlap: (a: string, b: string, distance: number, least: number) => ({
    message: `The centres of wheels ${a} and ${b} are ${distance} mm apart; they must be at least ${least} mm apart, because wheels do not overlap.`,
    fix: 'Correct the centres or the diameters of the two wheels.',
  }),
  gapTooSmall: (gap: number, least: number) => ({
    message: `Gap of the rest is ${gap} mm; with its travel it must exceed ${least} mm, the thinnest backing and belt, because the belt would rub on the rest.`,
    fix: `Set Gap of the rest above ${least} mm, or enter the travel of the rest.`,
  }),
  gapForSome: (gap: number, stack: number) => ({
    message: `Gap of the rest is ${gap} mm; the thickest liner, backing and belt need ${stack} mm, so the rest must be moved back for them, and there is no travel for it.`,
    fix: `Set Gap of the rest above ${stack} mm, or enter the travel of the rest.`,
  }),
  slotEnds: (from: number, to: number) => ({
    message: `The slot runs from ${from} to ${to} mm; its end must lie after its start.`,
    fix: 'Exchange start and end of the slot.',
  }),
  offRest: (what: string, value: string, range: string) => ({
    message: `${what} lies at ${value}; it must lie within ${range}, because it is on the rest.`,
    fix: 'Correct its place, or the width, depth or gap of the rest.',
  }),
  slotName: 'The slot',
  holeName: 'The hole',
  box: (name: string) => ({
    message: `The lower corner of the keep-out box ${name} is not below its upper corner on every axis; it must be, because a box needs a size.`,
    fix: 'Exchange the values of the two corners where they are the wrong way round.',
  }),
  platenInBox: (name: string, lean: number) => ({
    message: `The keep-out box ${name} reaches into the platen as it leans by ${lean} degrees; it must not, because this box stays where it is whatever the lean.`,
    fix: 'Where what is in the box leans with the platen, say so of the box; else measure it again with the platen leaned, and enter its corners.',
  }),
  tooFast: (label: string, speed: number, rating: number) => ({
    message: `The belt runs at ${speed} m/s; ${label} is ${rating} m/s and must not be exceeded, because belts tear and wheels burst.`,
    fix: 'Reduce Shaft speed or Drive wheel diameter, or correct the rating from its marking.',
  }),
  driveDiffers: (wheel: number, drive: number) => ({
    message: `The drive wheel is ${wheel} mm in diameter, but Drive wheel diameter is ${drive} mm; both should be the same, because the belt speed follows from it.`,
    fix: 'Measure the wheel on the driven shaft and enter it in both places.',
  }),
  beltLength: (path: number, length: number) => ({
    message: `The belt is ${length} mm long, but its way round wheels and platen is ${path} mm; they should agree within 3 %, because the tension wheel makes up no more.`,
    fix: 'Measure the centres of the wheels again.',
  }),
} as const;
