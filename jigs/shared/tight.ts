import {
  closeness,
  degrees,
  felt,
  sensed,
  text,
  type Acting,
  type BudgetQuestion,
  type Part,
  type Result,
} from '../../src/family/index.ts';
import type { Layout } from './layout/layout.ts';
import { SIZE } from './layout/sizes.ts';
import type { Values } from './parameters.ts';

/** What must be nearer than the general class allows, in words, by part. */
export type Tight = Readonly<Record<string, readonly string[]>>;

const words = text.family.shared.tight;

/** As near as is asked of a shop where no budget says more, mm. */
const NEAREST = 0.02;

/** Parts with what is singled out on them, after what they say themselves. */
export const withTight = (parts: readonly Part[], tight: Tight): Part[] =>
  parts.map((part): Part => ({ ...part, tight: [...part.tight, ...(tight[part.id] ?? [])] }));

/**
 * Words about features by a tolerance budget. `near`: how near a feature must be made, by what a
 * millimetre of it does to causes of the budget; nothing where the general class will do. `given`:
 * what a nearness that is chosen otherwise comes to, `off` mm.
 */
export const singledOut = <Id extends string>(question: Result<BudgetQuestion<Id>>) => {
  const budget = question.ok ? sensed(question.value) : undefined;
  return {
    near: (feature: string, acting: Acting<Id>): string[] => {
      const found = budget && closeness(budget, acting);
      if (found === 'general') return [];
      return found === undefined
        ? [words.noBudget(feature, NEAREST)]
        : [words.near(feature, found.within, found, found.enough)];
    },
    given: (feature: string, off: number, acting: Acting<Id>): string[] => {
      const found = budget && felt(budget, acting, off);
      return [found === undefined ? feature : words.given(feature, found)];
    },
  };
};

/** Degrees that a face is turned by, for each mm of error over a length, mm. */
export const turnOver = (length: number): number => degrees(1 / length);

/** How far either end of the belt's contact moves when a guide turns by 1 mm over its length. */
export const yawGain = ({ guideLength }: Values, beltWidth: number): number =>
  beltWidth / 2 / guideLength;

/** What pins that guide a slide ask of its slot and of the plates that hold them. */
export const guideTight = <Id extends string>(
  { v, l }: { readonly v: Values; readonly l: Layout },
  { near, given }: ReturnType<typeof singledOut<Id>>,
  acting: Acting<Id>,
): { readonly slide: string[]; readonly pins: string[] } =>
  v.guide === 'slots'
    ? {
        slide: given(words.guideSlot(l.slide.slotWidth, v.guidePlay), v.guidePlay, acting),
        pins: [words.pinHoles((SIZE.guidePin - SIZE.pinHole) / 2)],
      }
    : { slide: near(words.edges, acting), pins: [] };
