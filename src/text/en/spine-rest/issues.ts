import { said } from '../ids.ts';
import { mm } from '../rounded.ts';

/** Why this fixture cannot be built for a design: what is wrong, and what mends it. */
export const issues = {
  noseAtBelt: (gap: number, least: number, flutter: number, clearance: number) => ({
    message: `Gap at the belt is ${mm(gap)}; it must be at least ${mm(least)}: flutter and splice of the belt take ${mm(flutter)}, the running clearance is ${mm(clearance)}, and a platen that leans back comes nearer to the lower edge of the nose.`,
    fix: `Set the gap at the belt to at least ${mm(least)}, or ask for less running clearance.`,
  }),
  bearing: (gap: number, corner: number, bearing: number, setting: string) => ({
    message: `Gap at the belt is ${mm(gap)} and bearing on the nose ${mm(bearing)}, but at setting ${said(setting)} the spine corner stands only ${mm(corner)} from the belt: both cannot hold, since ${corner > bearing ? `the gap may be at most ${mm(corner - bearing)}` : 'the bearing alone takes more than that'}.`,
    fix: 'Reduce the gap or the bearing, grind at a steeper angle, keep a flat below the spine, or use another fixture for this blade.',
  }),
  lowerBevel: (
    gap: number,
    corner: number,
    side: string,
    high: readonly {
      readonly blade: string;
      readonly most: number;
      readonly steep?: number;
    }[],
    family: boolean,
  ) => {
    const [lowest, ...others] = high.filter(({ most }) => most > 0);
    const up = ({ most, steep }: (typeof high)[number]): string =>
      steep === undefined ? `up to about ${mm(most)} high` : `of at least about ${steep} degrees`;
    const rest = others.map((other) => `, one ${up(other)} “${other.blade}”`).join('');
    const lower = lowest
      ? `a bevel ${up(lowest)} leaves “${lowest.blade}”${rest} that room on the ${side} side.${family ? ' One setting serves all blades, so each must be as low.' : ''} Grind ${high.length > 1 ? 'them' : 'it'} ${lowest.steep === undefined ? 'lower' : 'steeper'}, ask for less bearing`
      : 'grind a lower bevel, ask for less bearing';
    return `The gap cannot be less than ${mm(gap)}, so the corner must stand at least ${mm(corner)} from the belt: ${lower}, or use another fixture for ${family ? 'these blades' : 'this blade'}.`;
  },
  stepTooLow: (contact: number, plate: number, most: number, setting: string) => ({
    message: `Plate thickness is ${mm(plate)}, so the step is as high; at setting ${said(setting)} the spine touches it ${mm(contact)} above the seat, and at most ${mm(most)} are allowed.`,
    fix: `Choose a plate of at least ${mm(contact + plate - most)}, or a smaller spine radius.`,
  }),
  /** `thinnest`: the least plate thickness there is, mm; `plate`: the one asked for. */
  padTooLow: (pad: number, least: number, plate: number, thinnest: number) => ({
    message: `The push must act ${mm(pad)} above the seat; the pad cannot stand lower than ${mm(least)}, because its groove and the foot of the push block lie below it.`,
    fix:
      plate - (least - pad) >= thinnest
        ? `Use a plate thinner by ${mm(least - pad)}, or a carriage: this blade is too low for the spine rest.`
        : `Use a carriage: this blade is too low for the spine rest, even with a plate of ${mm(thinnest)}, the thinnest that it takes.`,
  }),
  notSettled: (blade: string, u: number) => ({
    message: `${blade} at ${mm(u)} from the plunge does not settle into nose, step and belt at some stop of the sequence, so nothing can be measured there.`,
    fix: 'Correct the sequence, or use another fixture for this blade.',
  }),
  noLine: 'No grind line was solved for this place.',
} as const;
