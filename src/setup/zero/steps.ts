import { text } from '../../text/index.ts';
import { fenceBlock } from './carriage-gauges.ts';
import { lipBackAtPin, lipFeeler, type WheelAtSeat } from './lip-pin.ts';
import { stepAtPin } from './step-pin.ts';

/** One action of finding zero. */
export interface ZeroStep {
  readonly id: string;
  readonly text: string;
}

const words = text.setup.zero;

/** Steps of finding zero on a spine rest need; mm and degrees. */
export interface SpineRestZero {
  readonly pinRadius: number;
  readonly lean: number;
  /** Gap of nose and belt, set with a feeler, and the most it may ever be. */
  readonly noseGap: number;
  readonly noseGapMost: number;
  /** What 0.1 mm of setoff does at the bevel place of the last setting. */
  readonly perTenth: { readonly degrees: number; readonly bevelHeight: number };
}

/** Finding zero on a spine rest by a pin, in order. */
export const spineRestZero = (of: SpineRestZero): ZeroStep[] => [
  { id: 'still', text: words.still },
  { id: 'square', text: words.square(of.lean) },
  { id: 'nose', text: words.nose(of.noseGap, of.noseGapMost) },
  { id: 'parallel', text: words.parallelStep },
  { id: 'pin', text: words.pin(2 * of.pinRadius, stepAtPin(of.pinRadius, of.lean)) },
  { id: 'approach', text: words.approach },
  { id: 'lock', text: words.lock },
  { id: 'again', text: words.again },
  { id: 'wear', text: words.wearStep(of.perTenth.degrees, of.perTenth.bevelHeight) },
];

/** Steps of finding zero on an edge rest need; mm. */
export interface EdgeRestZero extends WheelAtSeat {
  readonly pinRadius: number;
  readonly lipThickness: number;
  readonly lipHeight: number;
  readonly noseGap: number;
  readonly noseGapMost: number;
  /** Move of the hollow for 0.1 mm of lip. */
  readonly climbPerTenth: number;
}

/** Finding zero on an edge rest by a pin, checked by a feeler, in order. */
export const edgeRestZero = (of: EdgeRestZero): ZeroStep[] => {
  const back = lipBackAtPin(of, of.pinRadius);
  return [
    { id: 'still', text: words.still },
    { id: 'level', text: words.level(of.drop) },
    { id: 'nose', text: words.nose(of.noseGap, of.noseGapMost) },
    { id: 'parallel', text: words.parallelLip },
    { id: 'pin', text: words.lipPin(2 * of.pinRadius, back + of.lipThickness) },
    { id: 'feeler', text: words.lipFeeler(lipFeeler(of, back, of.lipHeight)) },
    { id: 'approach', text: words.approach },
    { id: 'lock', text: words.lock },
    { id: 'again', text: words.again },
    { id: 'wear', text: words.wearLip(of.climbPerTenth) },
  ];
};

/** Steps of finding zero on a carriage need; mm and degrees. */
export interface CarriageZero {
  readonly footRadius: number;
  /** Of the finished edge's belt-side corner from the foot's centre, and its height. */
  readonly forward: number;
  readonly height: number;
  /** The first setting, for which the fence is set. */
  readonly angle: number;
  /** Distance of the two feelers along the upright. */
  readonly feelersApart: number;
  /** Move of the fence for one degree there. */
  readonly fencePerDegree: number;
}

/** Finding zero on a carriage by square, feelers and a block, in order. */
export const carriageZero = (of: CarriageZero): ZeroStep[] => [
  { id: 'still', text: words.still },
  { id: 'square', text: words.square(0) },
  { id: 'heel', text: words.heel(of.feelersApart) },
  { id: 'parallel', text: words.parallelFence },
  {
    id: 'fence',
    text: words.fence(fenceBlock(of.forward, of.height, of.footRadius, of.angle), of.angle),
  },
  { id: 'approach', text: words.approach },
  { id: 'lock', text: words.lock },
  { id: 'again', text: words.again },
  { id: 'angle', text: words.fenceAgain(of.fencePerDegree) },
];
