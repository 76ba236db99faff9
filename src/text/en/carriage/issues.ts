import { rules } from '../model-rules.ts';
import { orOf, type Spans } from '../shared/issues.ts';
import { mm, n } from '../rounded.ts';

/** Why this fixture cannot be built for a design: what is wrong, and what mends it. */
export const issues = {
  tabsNeedCut: (process: keyof typeof rules.process) => ({
    message: `Upright is of plates with tabs and slots, and plates are made by "${rules.process[process]}"; the slots take laser or water jet.`,
    fix: 'Choose the bought angle, or cut the plates by laser or water jet.',
  }),
  gapAtBelt: (gap: number, least: number) => ({
    message: `Gap at the belt is ${mm(gap)}; it must be at least ${mm(least)}: flutter, splice and running clearance, and what a leaning platen takes.`,
    fix: `Set the gap at the belt to at least ${mm(least)}, or ask for less running clearance.`,
  }),
  strokeShort: (overlap: number, most: number, length: number, stroke: number) => ({
    message: `Blade on the belt at the tip is ${mm(overlap)}; with a longest blade of ${mm(length)} it must be at most ${mm(most)}, because the stroke must be at least ${mm(stroke)} long.`,
    fix:
      most > 0 ? `Set it to at most ${mm(most)}.` : 'Choose another fixture for so short a blade.',
  }),
  jawAtBelt: (gap: number, least: number) => ({
    message: `Plunge to jaw is ${mm(gap)}; it must be at least ${mm(least)}, or a wandering belt comes within the running clearance of the jaw.`,
    fix: `Set plunge to jaw to at least ${mm(least)}.`,
  }),
  tangShort: (blade: string, have: number, need: number) => ({
    message: `Ricasso and tang of "${blade}" reach ${mm(have)} behind the plunge; gap and jaw take ${mm(need)}.`,
    fix: 'Use a narrower jaw or a smaller gap, or leave the tang longer until the blade is ground.',
  }),
  tangThin: (blade: string, thickest: number, tang: number, behind: number) => ({
    message: `Tang thickness of "${blade}" is ${mm(tang)}, and the jaw holds it by the tang; it must be at least ${mm(thickest)}, as thick as the blade, or the blade stands in the upright that its tang lies on.`,
    fix: `Grind the tang thinner after the bevels, or leave ${mm(behind)} or more of ricasso for the jaw to hold.`,
  }),
  jawStraddles: (blade: string, ricasso: number, tang: number) => ({
    message: `The jaw lies half on the ricasso of "${blade}" (${mm(ricasso)} thick) and half on its tang (${mm(tang)}); it must lie on one of them, or on an even thickness.`,
    fix: 'Change plunge to jaw or the width of the jaw.',
  }),
  edgeTooLow: (height: number, least: number) => ({
    message: `Edge height is ${mm(height)}; it must be at least ${mm(least)}, because the jaw is screwed below the tang and above the sole.`,
    fix: `Set the edge height to at least ${mm(least)}.`,
  }),
  noScrew: (thread: string, what: string, base: number, plate: number, spans: Spans) => ({
    message: `Base thickness is ${mm(base)}; no listed ${thread} screw, with up to four washers, ends in it with enough thread and without standing out of it (${what}, plates of ${mm(plate)})${spans.length > 0 ? `: it must be ${orOf(spans)}` : ', whatever its thickness'}.`,
    fix:
      spans.length > 0
        ? `Set base thickness to ${orOf(spans)}.`
        : 'Choose another plate thickness, or the other mounting.',
  }),
  soleDips: (tilt: number, most: number, base: number, spans: Spans) => ({
    message: `Base thickness is ${mm(base)}, in which the fence screws take so many washers that the front of the sole meets their heads when the carriage tips by more than ${n(most)} degrees; it tips by ${n(tilt)}. It must be ${orOf(spans)}.`,
    fix: `Set base thickness to ${orOf(spans)}.`,
  }),
  soleDipsSteep: (tilt: number, most: number, angle: number) => ({
    message: `The carriage would tip by ${n(tilt)} degrees for an angle of ${n(angle)}; it must tip by at most ${n(most)} to leave air between the front of its sole and the fence screws.`,
    fix: `Grind at most ${n(angle - tilt + most)} degrees in the steepest pass: a lower angle, a higher bevel, or less in "steeper"; or use another fixture for this blade.`,
  }),
  tangSinks: (drop: number, height: number, least: number) => ({
    message: `With the tip raised the tang sinks by ${mm(drop)}; edge height is ${mm(height)} and must be at least ${mm(least)}, or the jaw stands on the sole.`,
    fix: `Set the edge height to at least ${mm(least)}, or ask for fewer settings for the tip and lead it by hand.`,
  }),
  noAngle: (from: number, to: number) => ({
    message: `No equal angle of the table ends between ${mm(from)} (over the jaw) and ${mm(to)} (below the edge) above the base.`,
    fix: 'Change the edge height, or choose the upright of plates.',
  }),
  angleTooLow: (room: number) => ({
    message: `Upright is a bought angle, which must end over the jaw and below the edge; between them ${mm(room)} are left, and it must be 0 mm or more, because the blade is so low above its tang.`,
    fix: 'Choose the upright of plates, cut by laser or water jet, or another fixture for so low a blade.',
  }),
  angleTurned: (settings: number) => ({
    message: `Settings for the tip is ${String(settings)} and the upright a bought angle, where it must be 0: the turned tang needs the clamp slot of a cut upright.`,
    fix: 'Choose the upright of plates, or no further settings for the tip.',
  }),
  fixedPattern: (shift: number) => ({
    message: `Belts and backings of the sequence move the abrasive face by ${mm(shift)}, and the holes of the rest do not let the base follow.`,
    fix: 'Use belts and backings of one thickness, or a rest whose slots run towards the belt.',
  }),
  patternMisses: (width: number, depth: number) => ({
    message: `Fewer than two slots of the rest, at least 40 mm apart, lie under the base (${mm(width)} wide, ${mm(depth)} deep) and clear of its other holes.`,
    fix: 'Correct the pattern of the rest.',
  }),
  noBars: (from: number, to: number, front: number, back: number) => ({
    message: `Two clamp bars at least 40 mm apart find no room: the rest reaches from ${mm(from)} to ${mm(to)} in front of the bare platen, the base from ${mm(front)} to ${mm(back)}.`,
    fix: 'Draw the tool arm further out, or make the carriage longer.',
  }),
  notSettled: (blade: string, u: number) => ({
    message: `${blade} at ${mm(u)} from the plunge cannot be measured on the finished parts.`,
    fix: 'Correct the sequence, or use another fixture for this blade.',
  }),
  noLine: 'No grind line was solved for this place.',
} as const;
