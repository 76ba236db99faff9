import {
  chain,
  dowelPinPart,
  ok,
  type PinDiameter,
  type HardwarePart,
  type Result,
} from '../../../src/family/index.ts';

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
export const boughtWithPin = (
  items: readonly Placed[],
  { diameter, length }: { readonly diameter: PinDiameter; readonly length: number },
): Result<HardwarePart[]> =>
  chain(dowelPinPart(diameter, length), (pin) => ok(boughtParts(items, pin)));
