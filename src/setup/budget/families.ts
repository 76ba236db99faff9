import type { Result } from '../../core/result.ts';
import { seeded } from '../random.ts';
import { budget, type Budget, type BudgetQuestion } from './budget.ts';
import {
  CARRIAGE_KEYS,
  carriageContributors,
  carriageModel,
  type CarriageAt,
  type CarriageCause,
  type CarriageKnown,
} from './carriage.ts';
import {
  EDGE_REST_KEYS,
  edgeRestContributors,
  edgeRestModel,
  type EdgeRestAt,
  type EdgeRestCause,
  type EdgeRestKnown,
} from './edge-rest.ts';
import {
  SPINE_REST_KEYS,
  spineRestModel,
  type SpineRestAt,
  type SpineRestCause,
} from './spine-rest.ts';
import { spineRestContributors, type SpineRestKnown } from './spine-rest-contributors.ts';

/** How a budget is simulated: the same numbers give the same budget. */
export interface Simulating {
  readonly draws: number;
  readonly seed: number;
}

/** A blade that is ground on one side has none to compare it with, which is the last output. */
const keysOf = <Key>(keys: readonly Key[], sides: 1 | 2): readonly Key[] =>
  sides === 1 ? keys.slice(0, -1) : keys;

/** What the budget of a spine rest is made of: the usual contributors. */
export const spineRestQuestion = (
  at: SpineRestAt,
  known: Omit<SpineRestKnown, 'push'>,
): BudgetQuestion<SpineRestCause> => ({
  contributors: spineRestContributors({ ...known, push: at.push }),
  keys: keysOf(SPINE_REST_KEYS, at.second ? 2 : 1),
  model: spineRestModel(at),
});

/** What the budget of an edge rest is made of: the usual contributors. */
export const edgeRestQuestion = (
  at: EdgeRestAt,
  known: EdgeRestKnown,
): BudgetQuestion<EdgeRestCause> => ({
  contributors: edgeRestContributors(known),
  keys: keysOf(EDGE_REST_KEYS, at.sides),
  model: edgeRestModel(at),
});

/** What the budget of a carriage is made of: the usual contributors. */
export const carriageQuestion = (
  at: CarriageAt,
  known: CarriageKnown,
): BudgetQuestion<CarriageCause> => ({
  contributors: carriageContributors(known),
  keys: keysOf(CARRIAGE_KEYS, at.sides),
  model: carriageModel(at),
});

/** The tolerance budget that a question asks for. */
export const simulatedBudget = <Id extends string>(
  question: BudgetQuestion<Id>,
  { draws, seed }: Simulating,
): Result<Budget> => budget(question, draws, seeded(seed));
