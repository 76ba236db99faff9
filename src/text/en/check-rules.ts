const mm = (value: number): string => `${value.toFixed(2)} mm`;

/** Text of the fabrication rules. */
export const rules = {
  basis: 'common practice of cutting and printing shops',
  web: (part: string) => `${part}: least material between holes and edges`,
  wall: (part: string) => `${part}: thinnest wall`,
  hole: (part: string) => `${part}: smallest hole`,
  at: (x: number, y: number) => ` near x ${x.toFixed(1)}, y ${y.toFixed(1)}`,
  named: (id: string) => ` (${id})`,
  measured: (label: string, found: number, least: number, where: string) =>
    `${label} is ${mm(found)}${where}; at least ${mm(least)} are wanted.`,
  notMeasured: (label: string) => `${label} could not be measured, so it counts as failed.`,
  widen: 'Move the holes apart or make the part wider.',
  drill: 'Make the hole larger, use thinner sheet, or drill it.',
} as const;
