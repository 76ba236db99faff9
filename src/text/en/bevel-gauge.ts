/** Words of the bevel gauge, the family that the guide for new families copies. */
export const bevelGauge = {
  label: 'Bevel gauge',
  meaning:
    'A plate with two leaning edges that shows how far the blade must lean on the belt, one edge a side; nothing holds the blade.',
  parameters: {
    thickness: {
      label: 'Gauge thickness',
      meaning: 'Thickness of the plate the gauge is cut from.',
      reason: 'Thinner plate does not stand by itself; thicker is not cut cleanly.',
    },
    height: {
      label: 'Gauge height',
      meaning: 'Height of the leaning edges over the seat.',
      reason: 'A short edge shows the lean poorly; a long one reaches past the platen.',
    },
    top: {
      label: 'Top width',
      meaning: 'Width of the gauge between the upper ends of its edges.',
      reason: 'The hole and the fingers need it.',
    },
    screw: {
      label: 'Screw to hang it by',
      meaning: 'Thread of the screw in the wall that the gauge hangs on.',
      reason: 'Its clearance hole has to fit under the top; a large one weakens the plate.',
      options: { M4: 'M4', M5: 'M5', M6: 'M6' },
    },
  },
  reachless: {
    message:
      'A bevel gauge shows each lean it was cut for and no other, so it has no range of blades: another angle needs another edge.',
    fix: 'Ask which plates stay as they are: jig adapt FILE --blades OTHER.',
  },
  issues: {
    notFlat: (blade: string, side: string, kind: string) => ({
      message: `The ${side} bevel of "${blade}" is of kind "${kind}"; a gauge shows the lean of a flat bevel only (height, angle or full).`,
      fix: 'Ask for a flat bevel on this side, or choose another fixture family.',
    }),
    lean: (blade: string, side: string, tilt: number, most: number) => ({
      message: `"${blade}" would lean ${tilt.toFixed(2)} degrees on its ${side} side; a gauge shows more than 0 and at most ${most} degrees.`,
      fix: 'Change the bevel of this side, or the lean of the platen.',
    }),
    thickness: (value: number, have: readonly number[]) => ({
      message: `Gauge thickness is ${value} mm; it must be one of ${have.join(', ')} mm, because it is cut from a sheet at hand.`,
      fix: `Set it to one of ${have.join(', ')} mm, or add ${value} mm to making.plates.thicknesses.`,
    }),
  },
  gauge: (blade: string) => `Gauge for ${blade}`,
  purpose: (thread: string, standard: string) => `Hanging on a screw ${thread}, ${standard}`,
  finish: 'Deburr; leave the leaning edges straight and square',
  edges: (within: string, angle: string, height: string, allowed: string) =>
    `the two leaning edges straight within ${within} mm. This moves the angle by ${angle} degrees and the bevel height by ${height} mm at most, of ${allowed} mm that its line may be off`,
  side: { left: 'left', right: 'right' },
  tilt: 'Lean of the blade',
  checks: {
    basis: 'the gauge is what it promises',
    tilt: (blade: string, side: string) => `Lean of the ${side} edge for ${blade}`,
    tiltFix: 'This is a defect of the family, not of the design: report it.',
    line: (blade: string, side: string) => `Bevel height of ${blade}, ${side} side, from its wish`,
    lineBasis: 'line.allowed of the blade',
    lineFix: 'Allow more deviation, or follow a line that suits the taper.',
  },
  byHand: 'held by hand against the belt',
  section: (blade: string, side: string) => `${blade}, ${side} side, against its gauge`,
  assembly: [
    'Cut the gauges and deburr them; leave the leaning edges straight.',
    'Hold each leaning edge against a straight edge: no light may show.',
    'Hold each foot against a square: its two edges lean by the angles of the drawing.',
    'Mark each gauge with the name of its blade, and its edges with left and right.',
  ],
  zeroing: [
    'Switch the machine off and isolate it; tension the belt as for work.',
    'Stand the gauge on the rest before the belt.',
    'Lean the blade against the edge of its side: this is the lean that grinds the bevel.',
    'Take the gauge away before the motor starts.',
  ],
  cautions: [
    'Nothing holds the blade: the gauge shows an angle and keeps no hand from the belt.',
    'The gauge must not stand on the rest while the belt runs.',
    'A rest set away from the belt lets the blade be drawn in: set its gap before grinding.',
    'With the edge up the belt meets it first: never grind an edge that is sharp already.',
  ],
} as const;
