const n = (value: number, decimals = 2): string =>
  String(Math.round(value * 10 ** decimals) / 10 ** decimals);
const mm = (value: number): string => `${n(value)} mm`;

/** Why this fixture cannot be built for a design: what is wrong, and what mends it. */
export const issues = {
  thicknessMissing: (label: string, value: number, available: readonly number[]) => ({
    message: `${label} is ${mm(value)}; the sheets to be had are ${available.map((t) => n(t)).join(', ')} mm, and every plate is cut from one of them.`,
    fix: `Set ${label.toLowerCase()} to one of the sheet thicknesses, or add ${mm(value)} to them.`,
  }),
  guideNeedsCut: (process: string) => ({
    message: `Guide of the step is a slot over pins and plates are made by "${process}"; the slot must be true within a few hundredths, which takes laser or water jet.`,
    fix: 'Choose the bolted guide strips, or cut the plates by laser or water jet.',
  }),
  wingsTooClose: (wing: number, stepWing: number, least: number) => ({
    message: `Nose beyond the belt is ${mm(wing)} and step beyond the belt ${mm(stepWing)}; the nose must reach at least ${mm(least)} further than the step, or its screws and washers have no room.`,
    fix: `Set nose beyond the belt to at least ${mm(stepWing + least)}, or step beyond the belt to at most ${mm(wing - least)}.`,
  }),
  guideTooShort: (length: number, least: number) => ({
    message: `Length of the guide is ${mm(length)}; with guide strips it must be at least ${mm(least)}, because two keepers and a gap for the scale lie on it.`,
    fix: `Set length of the guide to at least ${mm(least)}.`,
  }),
  noseAtBelt: (gap: number, least: number, flutter: number, clearance: number) => ({
    message: `Gap at the belt is ${mm(gap)}; it must be at least ${mm(least)}: flutter and splice of the belt take ${mm(flutter)}, the running clearance is ${mm(clearance)}, and a platen that leans back comes nearer to the lower edge of the nose.`,
    fix: `Set the gap at the belt to at least ${mm(least)}, or ask for less running clearance.`,
  }),
  bearing: (gap: number, corner: number, bearing: number, setting: string) => ({
    message: `Gap at the belt is ${mm(gap)} and bearing on the nose ${mm(bearing)}, but at setting ${setting} the spine corner stands only ${mm(corner)} from the belt: both cannot hold, since the gap may be at most ${mm(corner - bearing)}.`,
    fix: 'Reduce the gap or the bearing, grind at a steeper angle, keep a flat below the spine, or use another fixture for this blade.',
  }),
  stepTooLow: (contact: number, plate: number, most: number, setting: string) => ({
    message: `Plate thickness is ${mm(plate)}, so the step is as high; at setting ${setting} the spine touches it ${mm(contact)} above the seat, and at most ${mm(most)} are allowed.`,
    fix: 'Choose a thicker plate, or a smaller spine radius.',
  }),
  padTooLow: (pad: number, least: number) => ({
    message: `The push must act ${mm(pad)} above the seat; the pad cannot stand lower than ${mm(least)}, because its groove and the foot of the push block lie below it.`,
    fix: 'Use a thinner plate, or a carriage: this blade is too low for the spine rest.',
  }),
  noScrew: (thread: string, from: number, to: number, what: string) => ({
    message: `No ${thread} screw of the table fits ${what}: its length would have to be from ${mm(from)} to ${mm(to)}.`,
    fix: 'Choose another plate or base thickness.',
  }),
  noThread: (width: number) => ({
    message: `Holes or slots of the rest are ${mm(width)} wide; no screw from M4 to M8 passes them and finds its length of thread in the base.`,
    fix: 'Choose the clamp bars for the mounting, or a thicker base.',
  }),
  headTooHigh: (thread: string, plate: number) => ({
    message: `The rest is tapped ${thread}; the head of such a screw is higher than the plate thickness, ${mm(plate)}, in which it has to lie.`,
    fix: 'Choose a thicker plate or the clamp bars.',
  }),
  patternMisses: (width: number, from: number, to: number) => ({
    message: `Fewer than two holes or slots of the rest, at least 40 mm apart, lie under the base (${mm(width)} wide, from ${mm(from)} to ${mm(to)} in front of the bare platen) and clear of its other holes.`,
    fix: 'Widen the base by the nose beyond the belt, choose the clamp bars, or correct the pattern of the rest.',
  }),
  noBars: (from: number, to: number, back: number) => ({
    message: `Two clamp bars at least 40 mm apart find no room: the rest reaches from ${mm(from)} to ${mm(to)} in front of the bare platen and the base ends at ${mm(back)}.`,
    fix: 'Draw the tool arm further out, choose the rest pattern, or lengthen the guide.',
  }),
  handleInCollar: (blade: string, distance: number) => ({
    message: `The stop collar of ${blade} sits ${mm(distance)} behind the plunge, where the handle is already fitted; it should clamp on steel.`,
    fix: 'Grind before fitting the handle, or line the collar well and check that it does not slip.',
  }),
  notSettled: (blade: string, u: number) => ({
    message: `${blade} at ${mm(u)} from the plunge does not settle into nose, step and belt at some stop of the sequence, so nothing can be measured there.`,
    fix: 'Correct the sequence, or use another fixture for this blade.',
  }),
  noLine: 'No grind line was solved for this place.',
  shapeFailed: (part: string, message: string) => ({
    message: `The outline of ${part} cannot be drawn: ${message}`,
    fix: 'Change the parameter that makes this part so small.',
  }),
} as const;
