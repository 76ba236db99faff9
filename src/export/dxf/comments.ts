import { carried } from '../carry.ts';

/** Comment lines for the head of a file: what it says of itself, then the design it carries. */
export const comments = (says: string, carry?: string): string[] => [
  says,
  // Pieces that the oldest readers take as one line.
  ...(carry === undefined ? [] : (carried(carry).match(/.{1,200}/g) ?? [])),
];
