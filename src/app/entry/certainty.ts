import type { Certainty } from '../../core/certainty.ts';
import type { Unit } from '../../core/parameter.ts';
import { text } from '../../text/index.ts';
import { rounded } from './format.ts';
import type { Display } from './unit.ts';

/** How far a number can be trusted, in words; nothing for what is exact within the model. */
export const certaintyWords = (certainty: Certainty, unit: Unit, display: Display): string => {
  if (certainty.kind === 'exact') return '';
  return certainty.kind === 'bounded'
    ? text.app.certainty.bounded(rounded(certainty.by, unit, display), certainty.reason)
    : text.app.certainty.estimate(certainty.basis);
};
