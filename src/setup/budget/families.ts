import type { Result } from '../../core/result.ts';
import { seeded } from '../random.ts';
import { budget, type Budget } from './budget.ts';
import {
  CARRIAGE_KEYS,
  carriageContributors,
  carriageModel,
  type CarriageAt,
  type CarriageKnown,
} from './carriage.ts';
import {
  EDGE_REST_KEYS,
  edgeRestContributors,
  edgeRestModel,
  type EdgeRestAt,
  type EdgeRestKnown,
} from './edge-rest.ts';
import { SPINE_REST_KEYS, spineRestModel, type SpineRestAt } from './spine-rest.ts';
import { spineRestContributors, type SpineRestKnown } from './spine-rest-contributors.ts';

/** How a budget is simulated: the same numbers give the same budget. */
export interface Simulating {
  readonly draws: number;
  readonly seed: number;
}

/** Tolerance budget of a spine rest with the usual contributors. */
export const spineRestBudget = (
  at: SpineRestAt,
  known: Omit<SpineRestKnown, 'push'>,
  { draws, seed }: Simulating,
): Result<Budget> =>
  budget(
    {
      contributors: spineRestContributors({ ...known, push: at.push }),
      keys: SPINE_REST_KEYS,
      model: spineRestModel(at),
    },
    draws,
    seeded(seed),
  );

/** Tolerance budget of an edge rest with the usual contributors. */
export const edgeRestBudget = (
  at: EdgeRestAt,
  known: EdgeRestKnown,
  { draws, seed }: Simulating,
): Result<Budget> =>
  budget(
    { contributors: edgeRestContributors(known), keys: EDGE_REST_KEYS, model: edgeRestModel(at) },
    draws,
    seeded(seed),
  );

/** Tolerance budget of a carriage with the usual contributors. */
export const carriageBudget = (
  at: CarriageAt,
  known: CarriageKnown,
  { draws, seed }: Simulating,
): Result<Budget> =>
  budget(
    { contributors: carriageContributors(known), keys: CARRIAGE_KEYS, model: carriageModel(at) },
    draws,
    seeded(seed),
  );
