/** A drawing scale: paper length over real length is `paper / real`. */
export interface Scale {
  readonly paper: number;
  readonly real: number;
}

const enlarged = (paper: number): Scale => ({ paper, real: 1 });
const reduced = (real: number): Scale => ({ paper: 1, real });

export const FULL_SIZE: Scale = { paper: 1, real: 1 };

/** The scales of ISO 5455 from large to small, as far as fixtures need them. 1:3 and 1:4 are not among them. */
export const SCALES: readonly Scale[] = [
  ...[10, 5, 2].map(enlarged),
  FULL_SIZE,
  ...[2, 5, 10, 20, 50].map(reduced),
];

export const factor = ({ paper, real }: Scale): number => paper / real;

export const scaleText = ({ paper, real }: Scale): string => `${String(paper)}:${String(real)}`;
