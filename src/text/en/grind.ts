import { calc } from './calc.ts';
import { edgeRestPlan } from './edge-rest/plan.ts';
import { deg, mm } from './lengths.ts';
import { upper } from './upper.ts';

/** Words of the solver: its parameters, and why a question has no answer. */
export const grind = {
  calc,
  edgeRest: edgeRestPlan,
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
  hollowAtLip: (room: number, centre: number, halfChord: number, higher?: number) => ({
    message: `Height of the hollow's centre is ${mm(centre)} and half its chord ${mm(halfChord)}: the wheel leaves ${mm(room)} at the edge, and a lip needs room above 0 mm.`,
    fix: `Raise the centre of the hollow${higher === undefined ? '' : ` to at least ${mm(Math.ceil(100 * higher) / 100)}`}, make it shallower, or use a smaller wheel.`,
  }),
  depthTooGreat: (depth: number, radius: number) => ({
    message: `Depth of the hollow is ${mm(depth)}; it must be from 0 to less than the wheel's radius, ${mm(radius)}.`,
    fix: 'Set a shallower hollow.',
  }),
  dropTooGreat: (drop: number, most: number) => ({
    message: `Drop from wheel centre to seat is ${mm(drop)}; it must be within -${mm(most)} and ${mm(most)}, or the wheel does not reach the blade on this seat.`,
    fix: `${drop > 0 ? 'Raise' : 'Lower'} the seat against the wheel by more than ${mm(Math.abs(drop) - most)}, or use a larger wheel.`,
  }),
  plan: {
    noBlades: {
      message: 'The design has no blade; a setting needs at least one.',
      fix: 'Add a blade to the design.',
    },
    noSequence: {
      message: 'The sequence is empty; a setting needs at least one belt.',
      fix: 'Add a belt with its backing and edge stop to the sequence.',
    },
    noPlaten: {
      message: 'The grinder has no platen; a spine rest grinds on a platen or its backing only.',
      fix: 'State the platen, or use a fixture for a wheel.',
    },
    unknownBelt: (id: string, known: string) => ({
      message: `The sequence asks for belt "${id}"; this grinder has ${known}.`,
      fix: `Choose one of ${known}, or add the belt to the grinder.`,
    }),
    unknownBacking: (id: string, known: string) => ({
      message: `The sequence asks for backing "${id}"; this grinder has ${known}.`,
      fix: `Choose one of ${known}, or add the backing to the grinder.`,
    }),
    hollow: (blade: string, side: string) => ({
      message: `The ${side} side of "${blade}" is wanted as a hollow with a depth and a centre of its own; a spine rest grinds what its platen is: flat, or a little hollow on a radiused one.`,
      fix: 'Choose a fixture for a wheel, or give this side a bevel by height, angle or full.',
    }),
    nothingGround: {
      message: 'No side of any blade is to be ground flat; a spine rest has nothing to do.',
      fix: 'Give at least one side a bevel by height, angle or full.',
    },
    tooLow: (blade: string, height: number) => ({
      message: `"${blade}" is ${mm(height)} high at its bevel place; a rest needs at least 4 mm of blade above the seat.`,
      fix: 'Use a guided-angle carriage for this blade.',
    }),
    outOfReach: (blade: string, belt: string, side: string, setoff: number, span: string) => ({
      message: `On belt "${belt}", ${side} side, "${blade}" would need the step ${mm(setoff)} from the belt at its bevel place; it can stand ${span}.`,
      fix: 'Change the bevel, the lean or the edge thickness, or grind this blade in a family of its own.',
    }),
    span: (from: number, to: number) => `from ${mm(from)} to ${mm(to)}`,
    nowhere: 'nowhere at this lean',
    beltUp: (share: number) => ({
      message: `The belt runs up and lifts the blade off the seat: the seat carries ${Number(share.toPrecision(3))} of the push at the worst friction, and it must carry more than 0.`,
      fix: 'Turn the belt to run down, or use a fixture that clamps the blade.',
    }),
    steepLast: (steeper: number) => ({
      message: `The last belt is asked to grind ${deg(steeper)} steeper than the final bevel; it must be 0 degrees, because the last belt makes the final bevel. The bevel wanted is set.`,
      fix: 'Set the last belt to 0 degrees steeper.',
    }),
    undercuts: (belt: string, step: number, side: string, blade: string, margin: number) => ({
      message: `Belt "${belt}" (step ${step}, ${side}) comes ${mm(-margin)} too near the finished face of "${blade}", scratches and setting tolerance counted; the margin must be 0 mm or more.`,
      fix: 'Stop this belt at a thicker edge, or set it steeper.',
    }),
    spineCorner: (blade: string, at: number, length: number) => ({
      message: `The spine of "${blade}" ends in a corner ${mm(Math.round(at))} from the plunge: the grind line is told up to there, and the rest up to ${mm(length)} is ground with the blade held as before.`,
      fix: 'Grind the blade virtually to see the rest of its bevel.',
    }),
    convexFace: (radius: number, lean: number) => ({
      message: `The face behind the belt is convex, with a radius of ${mm(radius)}; settings and grind lines are those of a flat one, but it leans by up to ${deg(lean)} at its ends. A line that the last belt grinds on it counts as not computed.`,
      fix: 'Grind the blades virtually, which counts the curve, and ask for the bevel that gives the height you want; or have a flat face behind the belt.',
    }),
    takesNothing: (belt: string, step: number, side: string, blade: string) => ({
      message: `Belt "${belt}" (step ${step}, ${side}) takes nothing off "${blade}": what is there lies behind its face already.`,
      fix: 'Leave it as it is to polish; stop it at a thinner edge to grind.',
    }),
    pushTooHigh: (from: number, to: number) => ({
      message: `The push must act from ${mm(from)} to hold the blade on the step with the reserve, and stay below the edge at ${mm(to)}; no height does both.`,
      fix: 'Ask for less reserve, a higher bevel, or a pass that is less steep, and watch the grind line.',
    }),
    offLine: (
      line: { readonly blade: string; readonly side: string; readonly family: boolean },
      deviation: number,
      allowed: number,
      way: { readonly height?: number | undefined; readonly follow?: string | undefined } = {},
    ) => {
      const { height, follow } = way;
      const ways = [
        ...(follow === undefined
          ? []
          : [`let the line follow ${follow.charAt(0).toLowerCase()}${follow.slice(1)}`]),
        ...(height === undefined
          ? []
          : [`ask for the bevel height that the setting gives it, ${mm(height)}`]),
      ].join(', and ');
      const first =
        ways === ''
          ? 'let the line follow something else, for which it is set otherwise, or allow more'
          : `${ways}; or allow more`;
      return {
        message: `The ${line.side} grind line of "${line.blade}" departs from the wanted line by up to ${mm(deviation)}; allowed are ${mm(allowed)}.${line.family ? ' All blades of a design are ground at one setting a side.' : ''}`,
        fix: `${upper(first)}, or ${line.family ? 'put this blade into a design of its own' : 'compare fixtures'}.`,
      };
    },
    side: { left: 'left', right: 'right' },
  },
  certainty: {
    spine: 'the spine is curved under the belt',
    taper: 'the blade tapers',
    window: 'the place shares the belt with others and is looked at in steps',
    soft: 'the backing gives way by an amount that is not known until it is calibrated',
    radius: 'the radiused face leaves a shallow hollow instead of a plane',
  },
} as const;
