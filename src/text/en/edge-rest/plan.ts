import { deg, mm } from '../lengths.ts';

/** Words of the edge-rest solver: why a hollow cannot be ground, and what to watch. */
export const edgeRestPlan = {
  unknownWheel: (id: string, known: string) => ({
    message: `The fixture asks for wheel "${id}"; this grinder has ${known}.`,
    fix: `Choose one of ${known}, or add the wheel to the grinder.`,
  }),
  notWrapped: (id: string) => ({
    message: `The belt does not lie on wheel "${id}"; a hollow is ground where wheel and belt are together.`,
    fix: 'Choose a wheel that the belt runs over at the front, or correct the wheels of the grinder.',
  }),
  backingOnWheel: (id: string) => ({
    message: `The sequence asks for backing "${id}"; a backing lies on the platen, and a wheel takes none.`,
    fix: 'Choose the bare backing for every belt on a wheel.',
  }),
  nothing: {
    message: 'No side of any blade is wanted hollow; an edge rest has nothing to do.',
    fix: 'Give at least one side a hollow, or choose a fixture for the platen.',
  },
  tooLow: (blade: string) => ({
    message: `"${blade}" is lower than 4 mm at its bevel place; there is no room for a hollow.`,
    fix: 'Correct the outline of the blade.',
  }),
  depthLeft: (blade: string, side: string, left: number, depth: number) => ({
    message: `Hollow left is ${mm(left)}; it must be less than the depth of the hollow of "${blade}", ${side}, ${mm(depth)}, or this pass grinds nothing.`,
    fix: `Leave less than ${mm(depth)}.`,
  }),
  outOfReach: (
    blade: string,
    side: string,
    lip: number,
    lips: readonly [number, number] | undefined,
  ) => ({
    message: `With the lip ${mm(lip)} from the wheel's foremost point the wheel does not reach the ${side} side of "${blade}"; ${
      lips === undefined
        ? 'the seat must be at a height at which it can, and at this one no lip does'
        : `the lip must be from ${mm(lips[0])} to ${mm(lips[1])}`
    }.`,
    fix: 'Change the centre of the hollow or the height of the rest.',
  }),
  atSpine: (blade: string, side: string, height: number) => ({
    message: `The hollow of "${blade}", ${side}, runs out over the spine, ${mm(height)} above the edge; both its limits must lie on the blade.`,
    fix: 'Lower the centre of the hollow, make it shallower, or use a smaller wheel.',
  }),
  through: (blade: string, side: string, web: number, at: number) => ({
    message: `The hollow of "${blade}", ${side}, leaves ${mm(web)} of steel at ${mm(at)} above the edge; it must be more than 0 mm, or the blade is broken through.`,
    fix: 'Make the hollow shallower, raise its centre in the bevel, or use thicker stock.',
  }),
  thinWeb: (blade: string, side: string, web: number, at: number, least: number) => ({
    message: `The hollow of "${blade}", ${side}, leaves ${mm(web)} of steel at ${mm(at)} above the edge; the least wanted is ${mm(least)}.`,
    fix: 'Make the hollow shallower, raise its centre in the bevel, or ask for less steel left.',
  }),
  lipTooThick: (thickness: number, most: number, room: number, growth: number) => ({
    message: `Lip thickness is ${mm(thickness)}; at the lip's top the wheel leaves ${mm(room)}, of which flutter and splice take ${mm(growth)} and the running clearance its part, so it must be at most ${mm(Math.max(0, most))}.`,
    fix: 'Use a thinner or lower strip, pads beside the belt, a smaller wheel, or a higher centre of the hollow.',
  }),
  noRoom: (centre: number, room: number, least: number, growth: number, higher?: number) => ({
    message: `Height of the hollow's centre is ${mm(centre)}: there the wheel leaves ${mm(room)} at the front of the seat; with flutter and splice of ${mm(growth)} and the running clearance it must leave at least ${mm(least)}${higher === undefined ? '' : `, which it does from ${mm(higher)} on`}.`,
    fix: `Raise the centre of the hollow${higher === undefined ? '' : ` to at least ${mm(higher)}`}, make it shallower, or use a smaller wheel.`,
  }),
  lifts: (share: number) => ({
    message: `The wheel lifts the blade off the seat: the seat carries ${Number(share.toPrecision(3))} of the wheel's force at the worst friction, and it must carry more than 0.`,
    fix: 'Turn the belt to run down, or lower the seat against the wheel.',
  }),
  offWheel: (id: string, margin: number) => ({
    message: `The hollow reaches ${deg(-margin)} beyond the belt's lie on wheel "${id}"; it must end on the wheel, because the free belt gives way.`,
    fix: 'Move the seat nearer to the height of the wheel, or lower the centre of the hollow.',
  }),
  noWindow: (from: number, to: number) => ({
    message: `The push must act from ${mm(from)}, so that the wheel gets its share, to ${mm(to)}, so that the lip keeps its reserve; no height does both.`,
    fix: 'Ask for less reserve, or raise the centre of the hollow.',
  }),
  lastLeaves: (left: number) => ({
    message: `The last belt is asked to leave ${mm(left)} of the hollow; it must be 0 mm, because the last belt grinds the hollow wanted. The hollow wanted is set.`,
    fix: 'Let the last belt leave 0 mm.',
  }),
  edgeOverLip: (
    blade: string,
    side: string,
    guided: number,
    length: number,
    reach: number,
    lip: 'strip' | 'pads',
  ) => ({
    message: `The lip guides ${mm(guided)} of the ${mm(length)} of "${blade}", ${side}: elsewhere the edge ends or rises above the lip within ${mm(reach)} of the belt's middle.`,
    fix: `Finish the rest by hand, or use ${lip === 'strip' ? '' : 'a strip, '}a higher lip, or a straighter edge.`,
  }),
  undercuts: (belt: string, step: number, side: string, blade: string, margin: number) => ({
    message: `Belt "${belt}" (step ${step}, ${side}) comes ${mm(-margin)} too near the finished hollow of "${blade}", scratches and setting tolerance counted; the margin must be 0 mm or more.`,
    fix: 'Let this belt leave more of the hollow, or set the lip more truly.',
  }),
  certainty: {
    edge: 'the edge is curved over seat, lip and belt',
    taper: 'the taper is uneven where the hollow lies in the flat',
    free: 'the lip does not hold the edge here: the hand does',
    rubber: 'the rubber wheel gives way by an amount that is not known until it is calibrated',
  },
} as const;
