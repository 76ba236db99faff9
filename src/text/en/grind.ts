import { calc } from './calc.ts';

const mm = (value: number): string => `${Number(value.toPrecision(6))} mm`;
const deg = (value: number): string => `${Number(value.toPrecision(6))} degrees`;

/** Words of the solver: its parameters, and why a question has no answer. */
export const grind = {
  calc,
  missing: (label: string, range: string) => ({
    message: `${label} is missing; it must be a number ${range}.`,
    fix: `Give a number ${range} for ${label}.`,
  }),
  edgeTooThick: (edge: number, thickness: number) => ({
    message: `Edge thickness is ${mm(edge)} and spine thickness ${mm(thickness)}; the edge must be from 0 to less than the spine, or there is nothing to grind.`,
    fix: 'Set an edge thickness below the spine thickness.',
  }),
  radiusTooLarge: (radius: number, most: number) => ({
    message: `Spine corner radius is ${mm(radius)}; it must be from 0 to ${mm(most)}, because two rounded corners fill at most the whole spine.`,
    fix: `Set the spine corner radius to at most ${mm(most)}.`,
  }),
  bevelTooHigh: (height: number, most: number) => ({
    message: `Bevel height is ${mm(height)}; it must be more than 0 and at most the blade's height, ${mm(most)}, which is full height.`,
    fix: `Set the bevel height to at most ${mm(most)}, or give the angle.`,
  }),
  bevelOutOfReach: (height: number, from: number, to: number) => ({
    message: `Bevel height is ${mm(height)}; this section can be given from ${mm(from)} to ${mm(to)}, because the angle stays within the rest's range and a rounded spine runs out before full height.`,
    fix: `Set the bevel height from ${mm(from)} to ${mm(to)}, or change thickness, edge or spine radius.`,
  }),
  angleOutOfReach: (angle: number, from: number, to: number) => ({
    message: `Angle is ${deg(angle)}; on this rest it must be from ${deg(from)} to ${deg(to)}: below, the blade no longer leans on the belt; above, it would lie down and the step no longer holds it.`,
    fix: `Set the angle from ${deg(from)} to ${deg(to)}, or change lean, height or thickness.`,
  }),
  setoffOutOfReach: (setoff: number, from: number, to: number) => ({
    message: `Step to belt is ${mm(setoff)}; this section can stand from ${mm(from)} to ${mm(to)}: nearer, its flank lies on the belt; farther, it does not reach the belt or lies down.`,
    fix: `Set the step from ${mm(from)} to ${mm(to)} to the belt, or change height, thickness or edge.`,
  }),
  neverLeans: (lean: number) => ({
    message: `The platen leans ${deg(lean)}; no angle in the rest's range then tilts the blade towards the belt (angle plus lean must be above 0 degrees and the setoff must grow with the angle).`,
    fix: 'Reduce the lean, or use a guided-angle carriage for this blade.',
  }),
  hollowAtLip: (room: number, centre: number, halfChord: number) => ({
    message: `Height of the hollow's centre is ${mm(centre)} and half its chord ${mm(halfChord)}: the wheel leaves ${mm(room)} at the edge, and a lip needs room above 0 mm.`,
    fix: 'Raise the centre of the hollow, make it shallower, or use a smaller wheel.',
  }),
  depthTooGreat: (depth: number, radius: number) => ({
    message: `Depth of the hollow is ${mm(depth)}; it must be from 0 to less than the wheel's radius, ${mm(radius)}.`,
    fix: 'Set a shallower hollow.',
  }),
  dropTooGreat: (drop: number, most: number) => ({
    message: `Drop from wheel centre to seat is ${mm(drop)}; it must be within -${mm(most)} and ${mm(most)}, or the wheel does not reach the blade on this seat.`,
    fix: 'Move the seat nearer to the height of the wheel centre.',
  }),
} as const;
