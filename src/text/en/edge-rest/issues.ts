import { said } from '../ids.ts';
import { mm } from '../rounded.ts';

/** Why an edge rest cannot be built for a design: what is wrong, and what mends it. */
export const issues = {
  noWheel: (role: string, found: string) => ({
    message: `The fixture asks for a wheel of the kind "${role}" at the front; this grinder has ${found}.`,
    fix: 'Choose the other kind of wheel, or add the wheel to the grinder.',
  }),
  gapAtWheel: (gap: number, least: number, growth: number, clearance: number) => ({
    message: `Gap at the wheel is ${mm(gap)}; it must be at least ${mm(least)}: flutter and splice of the belt take ${mm(growth)} and the running clearance is ${mm(clearance)}.`,
    fix: `Set the gap at the wheel to at least ${mm(least)}, or ask for less running clearance.`,
  }),
  wearTooThin: (wear: number, head: number, thread: string) => ({
    message: `Wear strip thickness is ${mm(wear)}; the head of a countersunk screw ${thread} is ${mm(head)} high and must lie below the seat with 0.3 mm to spare.`,
    fix: `Set the wear strip to at least ${mm(head + 0.3)}.`,
  }),
  padsTooShort: (wing: number, least: number) => ({
    message: `Seat beyond the belt is ${mm(wing)}; with pads beside the belt it must be at least ${mm(least)}, so that each pad keeps clear of the wandering belt and takes its screw.`,
    fix: `Set seat beyond the belt to at least ${mm(least)}, or choose the strip.`,
  }),
  noPin: (end: number, most: number) => ({
    message: `Pads would begin ${mm(end)} from the middle of the belt; for the zero a pin must lie on both, so it may be at most ${mm(most)}.`,
    fix: 'Choose the strip, or a narrower belt.',
  }),
  onePad: (blade: string, held: number, least: number) => ({
    message: `At the plunge stop ${mm(Math.max(0, held))} of the edge of "${blade}" lie on the pad on the side of its plunge; below ${mm(least)} the other pad alone keeps the blade in line there, and the push acts beside it.`,
    fix: 'Keep the heel in line by hand until both pads hold the edge, keep farther from the plunge, or choose the strip where the wheel leaves it room.',
  }),
  ricassoOnSeat: (blade: string, ricasso: number) => ({
    message: `"${blade}" has a ricasso of ${mm(ricasso)} beside a flat bevel; beside the belt it is thicker than the edge and would stand on the seat and meet the lip first. A bevelled blade must have a ricasso of 0 mm here.`,
    fix: 'Grind the hollow before the bevel, or relieve the ricasso at the edge and state it as 0 mm.',
  }),
  padTooLow: (push: number, least: number) => ({
    message: `The push must act ${mm(push)} above the seat; the pad of the push block cannot stand lower than ${mm(least)}.`,
    fix: `Raise the centre of the hollow, or use a wear strip thicker by ${mm(least - push)}.`,
  }),
  lipTooLow: (height: number, least: number, setting: string) => ({
    message: `Lip height is ${mm(height)}; at setting ${said(setting)} the edge's corner stands ${mm(least - 0.2)} above the seat and the lip must be at least 0.2 mm higher.`,
    fix: `Set the lip height to at least ${mm(least)}.`,
  }),
  builtTooShort: (label: string, built: number, needed: number) => ({
    message: `${label} is ${mm(built)}; the settings and their reserve need ${mm(needed)}.`,
    fix: 'Ask for less reserve of travel, or build a new base (0 mm).',
  }),
  noScrew: (thread: string, from: number, to: number) => ({
    message: `No ${thread} countersunk screw of the table holds the wear strip: its length would have to be from ${mm(from)} to ${mm(to)}.`,
    fix: 'Choose another plate or wear strip thickness.',
  }),
  notSettled: (blade: string, u: number) => ({
    message: `${blade} at ${mm(u)} from the plunge does not settle on seat, lip and wheel at some stop of the sequence, so nothing can be measured there.`,
    fix: 'Correct the sequence, or use another fixture for this blade.',
  }),
  noLine: 'No hollow was solved for this place.',
} as const;
