import { chain, ok, type Part, type Result, type StripFound } from '../../../src/family/index.ts';
import type { Context } from '../../shared/parts/context.ts';
import { roundedStep } from './rounded-step.ts';

/** The rounded step for a strip that was found, and the strips themselves, each once. */
export const stripParts = (
  c: Context,
  { found: { cure }, wish }: { readonly found: StripFound; readonly wish: { stepRadius: number } },
): Result<Part[]> => {
  const contact = Math.max(...cure.sides.map(({ measures }) => measures.contact));
  const strips = cure.sides
    .map(({ part }) => part)
    .filter(({ id }, i, list) => list.findIndex((part) => part.id === id) === i);
  return chain(roundedStep(c, wish.stepRadius, contact), (step) => ok([step, ...strips]));
};
