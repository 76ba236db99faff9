import type { Random } from '../random.ts';
import { drawn, type Input } from './sides.ts';

/** What a simulation found of one output. */
export interface Simulated {
  readonly mean: number;
  readonly deviation: number;
  /** 2.5 % of the draws lie below `low` and as many above `high`. */
  readonly low: number;
  readonly high: number;
}

export interface Simulation {
  readonly outputs: readonly Simulated[];
  readonly draws: number;
  /** Draws that the model could not follow; they are left out of the numbers. */
  readonly missed: number;
}

const summary = (values: number[]): Simulated => {
  const count = values.length;
  const mean = values.reduce((sum, value) => sum + value, 0) / count;
  const square = values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (count - 1);
  const sorted = values.sort((a, b) => a - b);
  const quantile = (share: number): number => {
    const at = share * (count - 1);
    const [low, high] = [sorted[Math.floor(at)] ?? NaN, sorted[Math.ceil(at)] ?? NaN];
    return low + (high - low) * (at - Math.floor(at));
  };
  return { mean, deviation: Math.sqrt(square), low: quantile(0.025), high: quantile(0.975) };
};

/**
 * Monte Carlo propagation (JCGM 101): the exact model at chance inputs. Undefined when fewer than
 * half of the draws can be followed.
 */
export const simulate = (
  model: (inputs: readonly number[]) => readonly number[] | undefined,
  inputs: readonly Input[],
  draws: number,
  random: Random,
): Simulation | undefined => {
  const rows: (readonly number[])[] = [];
  for (let i = 0; i < draws; i += 1) {
    const row = model(drawn(inputs, random));
    if (row !== undefined) rows.push(row);
  }
  if (rows.length < Math.max(2, draws / 2)) return undefined;
  const outputs = (rows[0] ?? []).map((_, k) => summary(rows.map((row) => row[k] ?? NaN)));
  return { outputs, draws, missed: draws - rows.length };
};
