import {
  chain,
  dowelPinPart,
  ok,
  type HardwarePart,
  type Result,
} from '../../../src/family/index.ts';
import { SIZE } from '../layout/sizes.ts';

interface Placed {
  readonly bought?: HardwarePart;
}

/** Every bought piece that the items place, equal ones counted, and further pieces. */
export const boughtParts = (
  items: readonly Placed[],
  ...more: readonly HardwarePart[]
): HardwarePart[] => {
  const counts = new Map<string, HardwarePart>();
  for (const part of [...items.flatMap(({ bought }) => bought ?? []), ...more]) {
    const quantity = (counts.get(part.id)?.quantity ?? 0) + 1;
    counts.set(part.id, { ...part, quantity });
  }
  return [...counts.values()];
};

/** The same with the pin that the zero is taken with. */
export const boughtWithPin = (items: readonly Placed[]): Result<HardwarePart[]> =>
  chain(dowelPinPart(SIZE.zeroPin, SIZE.zeroPinLength), (pin) => ok(boughtParts(items, pin)));
