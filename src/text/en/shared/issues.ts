import { rules } from '../model-rules.ts';
import { parameters } from './parameters.ts';
import { mm, n } from '../rounded.ts';

interface Span {
  readonly from: number;
  readonly to: number;
}
export type Spans = readonly (readonly [from: number, to: number])[];
/** "6 mm or 7.4 to 12 mm". */
export const orOf = (spans: Spans): string =>
  `${spans.map(([from, to]) => (from === to ? n(from) : `${n(from)} to ${n(to)}`)).join(' or ')} mm`;

/** Why parts that several families have cannot be made or mounted: what is wrong, what mends it. */
export const issues = {
  thicknessMissing: (
    { label, min, max }: { label: string; min: number; max: number },
    value: number,
    available: readonly number[],
    within: boolean,
  ) => ({
    message: `${label} is ${mm(value)}; the sheets to be had are ${available.map((t) => n(t)).join(', ')} mm, and every plate is cut from one of them.`,
    fix: within
      ? `Set ${label.toLowerCase()} to one of the sheet thicknesses, or add ${mm(value)} to them.`
      : `Get a sheet from ${n(min)} to ${n(max)} mm and add it to the plate thicknesses: thinner ones are too weak, thicker ones have no room here.`,
  }),
  guideNeedsCut: (process: keyof typeof rules.process) => ({
    message: `Guide of the sliding plate is a slot over pins and plates are made by "${rules.process[process]}"; the slot must be true within a few hundredths, which takes laser or water jet.`,
    fix: 'Choose the bolted guide strips, or cut the plates by laser or water jet.',
  }),
  wingsTooClose: (wing: number, stepWing: number, least: number) => ({
    message: `Nose beyond the belt is ${mm(wing)} and step beyond the belt ${mm(stepWing)}; the nose must reach at least ${mm(least)} further than the step, or its screws and washers have no room.`,
    fix: `Set nose beyond the belt to at least ${mm(stepWing + least)}, or step beyond the belt to at most ${mm(wing - least)}.`,
  }),
  tipUnground: (overlap: number, width: number) => ({
    message: `Blade on the belt at the tip is ${mm(overlap)} and the belt ${mm(width)} wide; it must be at most as much, or the last ${mm(overlap - width)} of the tip never come to the belt.`,
    fix: `Set blade on the belt at the tip to at most ${mm(width)}.`,
  }),
  guideTooShort: (length: number, least: number) => ({
    message: `Length of the guide is ${mm(length)}; with guide strips it must be at least ${mm(least)}, because two keepers and a gap for the scale lie on it.`,
    fix: `Set length of the guide to at least ${mm(least)}.`,
  }),
  /** Screws as a message calls them. */
  screws: {
    'nose-screw': 'the nose',
    'guide-screw': 'the guide strips',
    'packer-screw': 'the packer',
    'lock-screw': 'locking the sliding plate',
    'bracket-screw': 'the feed bracket',
    'lug-screw': 'the feed lug',
    'mount-screw': 'mounting the base',
  },
  noScrew: (thread: string, { from, to }: Span, what: string, bases: Spans = []) => ({
    message: `No ${thread} screw of the table fits ${what}: its length would have to be from ${mm(from)} to ${mm(to)}.`,
    fix:
      bases.length > 0
        ? `Set base thickness to ${orOf(bases)}.`
        : 'Choose another plate thickness.',
  }),
  noThread: (width: number) => ({
    message: `Holes or slots of the rest are ${mm(width)} wide; no screw from M4 to M8 passes them and finds its length of thread in the base.`,
    fix: 'Take a thicker base, or correct the width in the pattern of the rest.',
  }),
  tappedFromBelow: (thread: string) => ({
    message: `The holes of the rest are tapped ${thread}; this base is screwed on from below, through the rest, and finds no passage there.`,
    fix: 'Drill the thread out to a plain hole and state its diameter in the pattern of the rest.',
  }),
  headTooHigh: (thread: string, plate: number, least: number) => ({
    message: `Plate thickness is ${mm(plate)}; on a rest tapped ${thread} it must be at least ${mm(least)}, because the heads of such screws lie in the packer.`,
    fix: `Choose a plate of at least ${mm(least)}.`,
  }),
  patternMisses: (width: number, from: number, to: number) => ({
    message: `Fewer than two holes or slots of the rest, at least 40 mm apart, lie under the base (${mm(width)} wide, from ${mm(from)} to ${mm(to)} in front of the bare platen) and clear of its other holes.`,
    fix: 'Widen the base by the nose beyond the belt, or correct the pattern of the rest.',
  }),
  noBars: (from: number, to: number, back: number) => ({
    message: `Two clamp bars at least 40 mm apart find no room: the rest reaches from ${mm(from)} to ${mm(to)} in front of the bare platen and the base ends at ${mm(back)}.`,
    fix:
      to < back
        ? 'Draw the tool arm further out, or use a deeper table or another fixture: this rest ends before the base does.'
        : 'Lengthen the guide.',
  }),
  otherMount: (way: 'pattern' | 'bars', holds: boolean, fix: string) => {
    const { label, options } = parameters.mount;
    return holds
      ? `Set ${label.toLowerCase()} to “${options[way]}”: there is room for that. Or else: ${fix}`
      : `${fix} The other mounting, “${options[way]}”, finds no room either.`;
  },
} as const;
