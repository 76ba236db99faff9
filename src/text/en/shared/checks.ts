import { contactOpen, sameRoom, unmended } from './unmended.ts';
import { said } from '../ids.ts';

/** What limits of checks rest on. */
export const basis = {
  geometry: 'geometry of the fixture',
  setting: 'parameter of this fixture',
  practice: 'common practice, no source',
  wheelRest:
    'published limit for work rests at abrasive wheels, 3.175 mm (1/8 inch): the nearest written rule',
  plan: 'solution of this design',
  rating: 'rating in the grinder file',
  blade: 'wish in the blade file',
} as const;

/** Labels, mends and names of checks that several families have. */
export const checks = {
  basis,
  labels: {
    pair: (a: string, b: string) => `${said(a)} to ${said(b)}`,
    contact: (a: string, b: string) => `Contact of ${said(a)} and ${said(b)}`,
    inside: 'Parts of the fixture among each other',
    fits: 'Parts that touch, and screws in their holes',
    fit: (a: string, b: string) => `Fit of ${said(a)} and ${said(b)}`,
    edge: 'Edge thickness at the stop',
    undercut: 'Distance of every pass before the last from the finished face',
    stick: 'Hand on the push stick behind its nose, which the blade holds off the belt',
    speed: 'Speed of the belt',
  },
  fix: {
    collar: 'Let the nose reach further beyond the belt.',
    convexLine:
      'Have a flat face behind the last belt; on a convex one grind the blades virtually, which counts the curve, and measure the first blade before the others.',
    hand: 'Give the hand more room: move or shorten the part named.',
    contactOpen,
    inside: sameRoom,
    crowded:
      'Make the guide of the sliding plate longer: what locks and feeds the plate then stands farther behind the push block.',
    fit: unmended('A hole is not where its screw or pin goes, or a part is sunk into another'),
    edge: 'Stop at a thicker edge and finish by hand, or lower the least edge thickness knowingly.',
    undercut: 'Leave more at the edge of this pass, or make it steeper.',
    stick: 'Ask for more distance of the hand from the belt.',
    stickAway:
      'Move or shorten the part named, or lead the last of the tip without the stick, by another fixture.',
    yaw: 'Make the guide longer or its play smaller.',
    speed: 'Use a smaller drive wheel or a slower motor, or belts and wheels of a higher rating.',
  },
  fitMessage: (apart: number, seated: number, held: number, crossing: number): string =>
    `Of the parts that are said to touch, ${String(seated)} pairs touch and come free, ${String(apart)} pass with room, ${String(held)} are held in a thread, a reamed hole or a hole drilled across; ${String(crossing)} cross.`,
  insideMessage: (passed: number, failed: number, apart: number, everySetting: boolean): string =>
    `${String(passed)} pairs of parts keep ${apart.toFixed(1)} mm apart at ${everySetting ? 'every' : 'the first'} setting; ${String(failed)} do not.`,
  unasked: {
    ground:
      'the belt is checked thicker than it is, by flutter and splice, so it would meet the blade beside the bevel as well; what it grinds is measured on the finished solids',
    flush: 'ends flush with the face that is asked about',
    pressed: 'the hand presses it on: it gives way until they touch',
    holds: 'the hand holds it',
    clamped: 'clamped together: they move as one',
    onePiece: 'one piece of steel',
    wholeRest: 'the rest is taken as a whole block; its holes are where the grinder file has them',
  },
  worstAt: (message: string, setting: string): string =>
    `${message} It is worst at pass ${said(setting)}.`,
  place: (setting: string, u: number, rocked: boolean): string =>
    `pass ${said(setting)}, ${String(Math.round(10 * u) / 10)} mm from the plunge${rocked ? ', rocked' : ''}`,
  names: { collar: 'stop collar', nose: 'nose' },
} as const;

/** Bodies of the machine, and what is held, in the words of checks. */
export const bodies = {
  blade: 'blade',
  tang: 'tang',
  belt: 'belt',
  platen: 'platen',
  wheels: 'wheels',
  rest: 'rest',
  guards: 'keep-outs',
  hand: 'hand',
  stick: 'push stick',
  handOnStick: 'hand on the push stick',
} as const;
