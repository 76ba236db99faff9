/** Millimetres as a person reads them: up to three decimals. */
const mm = (value: number): string => `${String(Math.round(value * 1000) / 1000)} mm`;

export const model = {
  filletTooLarge: (corner: number, radius: number, needed: number, edge: number) => ({
    message: `The radius ${mm(radius)} at corner ${String(corner + 1)} does not fit: its edge is ${mm(edge)} long and the roundings at its ends need ${mm(needed)}.`,
    fix: 'Make the radius smaller or the edge longer.',
  }),
} as const;
