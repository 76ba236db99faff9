import { hollowDepth, radians, sin } from '../../src/family/index.ts';
import type { Layout } from './layout.ts';

/** Where feelers lie from the middle of a face at most, and how far they stay from its ends, mm. */
const MOST = 50;
const END = 5;

/**
 * How an arc is tried with a straight edge on two feelers: how far from the middle of the face they
 * lie (whole tens) and how thick they are, mm, so that the straight edge just touches the middle. The
 * sagitta of the chord between them, R - sqrt(R^2 - a^2).
 */
export const arcCheck = ({
  radius,
  half,
}: NonNullable<Layout['round']>): { readonly at: number; readonly feeler: number } => {
  const at = Math.min(MOST, 10 * Math.floor((radius * sin(radians(half)) - END) / 10));
  return { at, feeler: hollowDepth(radius, 2 * at) };
};
