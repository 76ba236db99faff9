import { mm } from '../rounded.ts';

/** What building and setting use up, or need at hand, that no drawing shows: the thing, and its use. */
export type Supply = readonly [what: string, use: string];

/** Supplies of several families. */
export const supplies = {
  cuttingOil: ['Cutting oil', 'taps and drills'],
  grease: ['Grease', 'thread of the feed screw'],
  paper: ['Writing paper, about 0.1 mm thick', 'air between strips and keepers'],
  shims: ['Shim stock, 0.05 to 0.5 mm', 'squaring the rest to the belt'],
  testBar: (thickness: number, height: number): Supply => [
    `Flat bar, ${mm(thickness)} thick and ${mm(height, 1)} high`,
    'test piece',
  ],
  testPiece: ['Flat bar as thick and as high as the blades', 'test piece'],
  lining: (part: string): Supply => ['Thin leather or adhesive tape', `lining of the ${part}`],
} as const;
