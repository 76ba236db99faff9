import { deg, mm } from '../lengths.ts';

/** Words of the carriage's solver. */
export const plan = {
  noPlaten: {
    message: 'The platen is "none"; a carriage cuts a plane and needs a platen behind the belt.',
    fix: 'State the platen, or use a fixture for a wheel.',
  },
  edgeTooLow: (height: number, least: number) => ({
    message: `Edge height is ${mm(height)}; it must be above ${mm(least)}, the foot of the carriage.`,
    fix: 'Clamp the blade higher.',
  }),
  hollow: (blade: string, side: string) => ({
    message: `The ${side} side of "${blade}" is wanted as a hollow with a depth and a centre of its own; a carriage grinds what its platen is: flat, or a little hollow on a radiused one.`,
    fix: 'Choose a fixture for a wheel, or give this side a bevel by height, angle or full.',
  }),
  nothingGround: {
    message: 'No side of any blade is to be ground flat; a carriage has nothing to do.',
    fix: 'Give at least one side a bevel by height, angle or full.',
  },
  tilt: (belt: string, side: string, tilt: number, most: number) => ({
    message: `On belt "${belt}", ${side} side, the carriage would have to tip by ${deg(tilt)}; it can tip from 0 to ${deg(most)}.`,
    fix: 'Change the bevel, or square the platen.',
  }),
  behindStop: {
    message: 'The plunge stop keeps the belt off the place where the bevel is promised.',
    fix: 'Set the plunge stop nearer to the plunge.',
  },
  steepLast: (steeper: number) => ({
    message: `The last belt grinds ${deg(steeper)} steeper than the bevel wanted; it must be 0 degrees, because the last belt makes the final bevel.`,
    fix: 'Set the last belt to 0 degrees steeper.',
  }),
  jaw: (beside: number, over: number) => ({
    message: `The jaw comes ${mm(-beside)} over the belt at the plunge stop and would be ${mm(over)} from it; it must stay beside the belt or clear of it.`,
    fix: 'Set the jaw farther behind the plunge.',
  }),
  push: (height: number, most: number) => ({
    message: `The push acts ${mm(height)} above the base; at most ${mm(most)} leaves the reserve on the heel screw, higher it lifts.`,
    fix: 'Push lower, lengthen the carriage or clamp the blade higher.',
  }),
  lifts: (share: number) => ({
    message: `The belt lifts the carriage with ${Number((-share).toPrecision(2))} of the push at the worst friction; its weight and your hand must hold it down.`,
    fix: 'Turn the belt to run down, or press the carriage down as you push.',
  }),
  uneven: (blade: string, side: string, left: number, most: number, settings: number) => ({
    message: `One plane leaves the edge of "${blade}" up to ${mm(left)} thicker on the ${side} side where the edge falls (more than ${mm(most)}), with ${String(settings)} setting(s) for the tip.`,
    fix: 'Clamp the blade again with the tip raised (more settings for the tip), finish the tip by hand, or use a spine rest.',
  }),
  thin: (blade: string, side: string, short: number, most: number) => ({
    message: `The edge of "${blade}" comes out ${mm(short)} too thin on the ${side} side (more than ${mm(most)}): thickness or taper under the jaw turns its midplane or moves it off the first blade's.`,
    fix: 'Clamp where the blade is even, shim the taper, or grind this blade in a design of its own.',
  }),
} as const;

export const certainty = {
  yaw: 'a taper under the jaw turns the blade',
} as const;
