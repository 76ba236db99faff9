/** Diameters of dowel pins in the table, mm. */
export const PIN_DIAMETERS = [3, 4, 5, 6, 8, 10, 12] as const;
export type PinDiameter = (typeof PIN_DIAMETERS)[number];

/** ISO 8734 hardened parallel pin, tolerance m6. */
export interface DowelPin {
  readonly diameter: PinDiameter;
  readonly standard: string;
  /** Length of the chamfer at each end, about, mm. */
  readonly chamfer: number;
  /** Limits of the diameter by m6 of ISO 286-2, mm over the nominal one. */
  readonly over: readonly [number, number];
  readonly lengths: readonly number[];
}

const LENGTHS: readonly number[] = [
  8, 10, 12, 14, 16, 18, 20, 22, 24, 26, 28, 30, 32, 35, 40, 45, 50, 55, 60, 65, 70, 75, 80, 85, 90,
  95, 100,
];

// ISO 8734, two open tables agreeing: chamfer, shortest and longest length; m6 of ISO 286-2.
const PIN: Readonly<
  Record<PinDiameter, readonly [number, number, number, readonly [number, number]]>
> = {
  3: [0.5, 8, 30, [0.002, 0.008]],
  4: [0.63, 10, 40, [0.004, 0.012]],
  5: [0.8, 12, 50, [0.004, 0.012]],
  6: [1.2, 14, 60, [0.004, 0.012]],
  8: [1.6, 18, 80, [0.006, 0.015]],
  10: [2, 22, 100, [0.006, 0.015]],
  12: [2.5, 26, 100, [0.007, 0.018]],
};

export const dowelPin = (diameter: PinDiameter): DowelPin => {
  const [chamfer, least, most, over] = PIN[diameter];
  return {
    diameter,
    standard: 'ISO 8734',
    chamfer,
    over,
    lengths: LENGTHS.filter((length) => length >= least && length <= most),
  };
};
