/** Words of the quick sums: parameters, flags and answers. */
export const calc = {
  about: 'Quick sums without a design: one section, one wheel, one carriage',
  spineRestAbout:
    'Setoff, angle and bevel height of one fresh section on a spine rest (give exactly one of angle, setoff, bevel height)',
  edgeRestAbout: 'Lip, tilt and limits of a hollow ground on a wheel, edge down on an edge rest',
  carriageAbout: 'Heel screw of a guided-angle carriage',
  range: (meaning: string, range: string, fallback: string) => `${meaning} ${range}${fallback}`,
  fallback: (value: number) => `; ${value} when left out`,
  from: (min: number, max: number, unit: string) => `from ${min} to ${max} ${unit}`,
  belowSpine: 'below the spine thickness',
  halfSpine: 'at most half the spine thickness and the height',
  withinHeight: "at most the blade's height",
  notNumber: (label: string, flag: string, value: string, range: string) => ({
    message: `${label} (${flag}) is "${value}"; it must be a plain number ${range}, with a point as the decimal mark.`,
    fix: `Give ${flag} a number ${range}.`,
  }),
  noValue: (label: string, flag: string, range: string) => ({
    message: `${label} (${flag}) has no value; it must be a number ${range}.`,
    fix: `Give ${flag} a number ${range}, or leave it out if it is optional.`,
  }),
  missing: (label: string, flag: string, range: string) => ({
    message: `${label} (${flag}) is missing; it must be a number ${range}.`,
    fix: `Add ${flag} with a number ${range}.`,
  }),
  twice: (label: string, flag: string, values: string) => ({
    message: `${label} (${flag}) is given more than once (${values}); it may be given once, as one value must decide.`,
    fix: `Give ${flag} once.`,
  }),
  unknown: (argument: string, known: string) => ({
    message: `"${argument}" is not a flag of this command; known flags are ${known}.`,
    fix: 'Remove it or write one of the known flags; --help prints their ranges.',
  }),
  noKind: (kinds: string) => ({
    message: `No quick sum is named; known are ${kinds}.`,
    fix: `Name one of ${kinds}.`,
  }),
  unknownKind: (kind: string, kinds: string) => ({
    message: `There is no quick sum "${kind}"; known are ${kinds}.`,
    fix: `Name one of ${kinds}.`,
  }),
  targets: (given: string, flags: string) => ({
    message: `The target is given by ${given}; exactly one of ${flags} must be given, because each follows from the others.`,
    fix: `Give exactly one of ${flags}.`,
  }),
  noTarget: 'none of them',
  parameters: {
    spineThickness: {
      label: 'Spine thickness',
      meaning: 'Thickness of the bar at the spine.',
      reason: 'Thinner bars bend under the push; thicker ones are not blades.',
    },
    edgeThickness: {
      label: 'Edge thickness',
      meaning: 'Thickness left behind the edge when grinding stops, both sides together.',
      reason: 'It must be thinner than the spine.',
    },
    height: {
      label: 'Blade height',
      meaning: 'From spine to edge, along the midplane.',
      reason: 'Lower blades disappear behind the step; higher ones reach beyond any platen.',
    },
    spineRadius: {
      label: 'Spine corner radius',
      meaning: 'Radius of both spine corners, 0 for sharp ones.',
      reason: 'Two rounded corners fill at most the whole spine.',
    },
    lean: {
      label: 'Lean of the platen',
      meaning: "From the seat's normal, positive when the platen's top leans away from the maker.",
      reason: 'At a steeper lean the blade slides along the seat.',
    },
    angle: {
      label: 'Bevel angle',
      meaning: 'Per side, between the midplane and the ground face.',
      reason: 'A smaller angle is no bevel; at a greater one the blade lies down on the belt.',
    },
    setoff: {
      label: 'Step to belt',
      meaning: 'Along the seat, from the abrasive face to the step.',
      reason: 'It lies between a blade flat on the belt and one that no longer leans on it.',
    },
    bevelHeight: {
      label: 'Bevel height',
      meaning: 'From the edge along the midplane to the upper limit of the bevel.',
      reason: 'Full height is the most there is.',
    },
    radius: {
      label: 'Abrasive radius',
      meaning: 'Radius of the wheel with the belt on it.',
      reason: 'Wheels of belt grinders lie in this range.',
    },
    centre: {
      label: "Height of the hollow's centre",
      meaning: 'Above the edge, along the face.',
      reason: 'The hollow must end above the lip that the edge stands against.',
    },
    depth: {
      label: 'Depth of the hollow',
      meaning: 'Greatest depth below the face.',
      reason: 'A deeper hollow goes through any blade.',
    },
    drop: {
      label: 'Drop from wheel centre to seat',
      meaning: 'Height of the wheel centre above the seat, negative when it is below.',
      reason: 'The wheel must reach the blade in front of its foremost part.',
    },
    faceOffset: {
      label: 'Face offset',
      meaning: 'Distance of the line of the face from the edge contact, towards the wheel.',
      reason: '0 on a bevel that ends at the edge; at most half a thick blade.',
    },
    base: {
      label: 'Base',
      meaning: 'From the centre of the front foot to the centre of the heel screw, along the sole.',
      reason: 'Shorter carriages tip over; longer ones are beyond a bench grinder.',
    },
    carriageAngle: {
      label: 'Carriage angle',
      meaning: 'Tilt of the carriage from level.',
      reason: 'At a greater angle the carriage tips over.',
    },
    pitch: {
      label: 'Screw pitch',
      meaning: 'Advance of the heel screw in one turn.',
      reason: 'Common screws lie in this range.',
    },
    footRadius: {
      label: 'Foot radius',
      meaning: 'Radius of the round front foot, 0 for a sharp one.',
      reason: 'A larger foot rolls the carriage away.',
    },
    tipRadius: {
      label: 'Tip radius',
      meaning: 'Radius of the round tip of the heel screw, 0 for a pointed one.',
      reason: 'A larger tip is no screw tip.',
    },
  },
  answers: {
    angle: (v: string) => `angle ${v} degrees per side`,
    setoff: (v: string) => `step to belt ${v} mm`,
    bevelHeight: (v: string) => `bevel height ${v} mm`,
    setoffPerDegree: (v: string) => `${v} mm of setoff for each degree`,
    tilt: (v: string) => `tilt ${v} degrees towards the belt or wheel`,
    cornerDistance: (v: string) => `near spine corner ${v} mm from the belt`,
    stepContactHeight: (v: string) => `spine touches the step ${v} mm above the seat`,
    lip: (v: string) => `edge contact ${v} mm from the wheel's foremost point`,
    lower: (v: string) => `hollow from ${v} mm above the edge`,
    upper: (v: string) => `to ${v} mm above the edge`,
    chord: (v: string) => `chord ${v} mm`,
    room: (v: string) => `room at the edge contact ${v} mm`,
    screw: (v: string) => `screw out by ${v} mm from level`,
    turns: (v: string) => `${v} turns`,
    anglePerTurn: (v: string) => `${v} degrees for one more turn`,
  },
} as const;
