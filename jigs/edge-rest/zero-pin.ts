import { dowelPin, type PinDiameter } from '../../src/family/index.ts';
import { SIZE } from '../shared/layout/sizes.ts';

/** Pins that the zero may be taken with, the thinnest first: no other is as easily had. */
const DIAMETERS = [6, 8, 10] as const satisfies readonly PinDiameter[];
/** How far the pin lies on either pad, without its chamfered end, mm. */
const ON_PAD = 3;

export interface ZeroPin {
  readonly diameter: PinDiameter;
  readonly length: number;
}

/**
 * The thinnest pin that lies on both pads, `end` from the belt's middle, or before a strip; none
 * where the pads stand too far apart for any.
 */
export const zeroPinOf = (pads: boolean, end: number): ZeroPin | undefined => {
  for (const diameter of DIAMETERS) {
    const { lengths, chamfer } = dowelPin(diameter);
    const least = pads ? 2 * (end + ON_PAD + chamfer) : SIZE.zeroPinLength;
    const length = lengths.find((one) => one >= Math.max(least, SIZE.zeroPinLength));
    if (length !== undefined) return { diameter, length };
  }
  return undefined;
};

/** The farthest from the belt's middle that pads may begin for a pin to lie on both, mm. */
export const FARTHEST_PAD = Math.max(
  ...DIAMETERS.map((diameter) => {
    const { lengths, chamfer } = dowelPin(diameter);
    return Math.max(...lengths) / 2 - ON_PAD - chamfer;
  }),
);
