import { atan } from '../../core/trigonometry.ts';
import type { Blade } from '../../blade/schema.ts';
import { shapeOf } from '../../blade/shape.ts';
import { degrees } from '../../core/units.ts';
import { text } from '../../text/index.ts';

const words = text.virtual.suit;

/** Work without a fixture that holds the blade, and why it would be the honest answer. */
export interface ByHand {
  readonly id: 'freehand' | 'push-stick';
  readonly label: string;
  readonly about: string;
  /** What of this blade asks for it; empty where nothing does. */
  readonly reasons: readonly string[];
}

/** Places at which an edge is looked at, mm apart. */
const STEP = 1;
/** Hollow of an edge under the belt that a maker sees as a gap: common practice, no source, mm. */
const BRIDGED = 0.1;
/** Fall of an edge near the tip that no stroke square to the spine follows: common practice, no source, degrees, and where. */
const SHARP = 35;
const NEAR_TIP = 0.95;

/** Most by which a belt laid over the edge bridges it, mm: the middle of its width under the chord. */
export const bridged = (blade: Blade, width: number): number => {
  const { edge, length } = shapeOf(blade);
  let most = 0;
  for (let u = width / 2; u <= length - width / 2; u += STEP) {
    const chord = (edge.value(u - width / 2) + edge.value(u + width / 2)) / 2;
    most = Math.max(most, chord - edge.value(u));
  }
  return most;
};

/** How steeply the edge falls to the spine line near the tip, degrees. */
export const tipFall = (blade: Blade): number => {
  const { edge, length } = shapeOf(blade);
  return degrees(atan(-edge.slope(NEAR_TIP * length)));
};

/** Freehand and push-stick work for a blade, with what of it asks for them. */
export const byHand = (blade: Blade, beltWidth: number): ByHand[] => {
  const { length } = shapeOf(blade);
  const [gap, fall] = [bridged(blade, beltWidth), tipFall(blade)];
  const recurve = gap > BRIDGED ? [words.recurve(gap, beltWidth)] : [];
  const short = length < beltWidth ? [words.short(length, beltWidth)] : [];
  const tip = fall > SHARP ? [words.sharpTip(fall)] : [];
  return [
    { id: 'freehand', ...words.freehand, reasons: recurve },
    { id: 'push-stick', ...words.pushStick, reasons: [...short, ...tip] },
  ];
};
