import type { Vec2 } from '../geometry/vector.ts';
import type { Box } from './box.ts';

/** Trimmed sheet sizes, short side first, mm: ISO 216, and ASME Y14.1 sizes A, B and C (8.5 x 11, 11 x 17, 17 x 22 in). */
export const PAPER = {
  A4: [210, 297],
  A3: [297, 420],
  A2: [420, 594],
  Letter: [215.9, 279.4],
  Tabloid: [279.4, 431.8],
  C: [431.8, 558.8],
} as const satisfies Readonly<Record<string, Vec2>>;

export type PaperName = keyof typeof PAPER;

/** Which papers a maker's printer or print shop has. */
export type PaperFamily = 'iso' | 'us';

/** A paper as it lies on the drawing board. */
export interface Paper {
  readonly name: PaperName;
  readonly orientation: 'portrait' | 'landscape';
}

export const portrait = (name: PaperName): Paper => ({ name, orientation: 'portrait' });
export const landscape = (name: PaperName): Paper => ({ name, orientation: 'landscape' });

/** Drawing sheets from small to large: the smallest upright, the others lying, as ISO 5457 has them. */
export const SHEETS: Readonly<Record<PaperFamily, readonly Paper[]>> = {
  iso: [portrait('A4'), landscape('A3'), landscape('A2')],
  us: [portrait('Letter'), landscape('Tabloid'), landscape('C')],
};

/** The family's page for tables and templates on a home printer. */
export const page = (family: PaperFamily): Paper => portrait(family === 'iso' ? 'A4' : 'Letter');

export const sizeOf = ({ name, orientation }: Paper): Vec2 => {
  const [short, long] = PAPER[name];
  return orientation === 'portrait' ? [short, long] : [long, short];
};

/** Margins of ISO 5457: 20 mm at the filing edge, 10 mm elsewhere. */
const FILING = 20;
const MARGIN = 10;

/** The drawing space: inside the frame. */
export const spaceOf = (paper: Paper): Box => {
  const [width, height] = sizeOf(paper);
  return { x0: FILING, y0: MARGIN, x1: width - MARGIN, y1: height - MARGIN };
};
