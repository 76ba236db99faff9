import { momentsOf } from './contributor.ts';
import type { Input } from './sides.ts';

/** Correlation of two contributors, -1 to 1. */
export interface Correlation {
  readonly between: readonly [string, string];
  readonly coefficient: number;
}

/** What one contributor does to one output. */
export interface Effect {
  readonly id: string;
  readonly label: string;
  readonly source: string;
  /** Output for each unit of the contributor, with the sign of the first side. */
  readonly sensitivity: number;
  /** Greatest effect alone. */
  readonly most: number;
  /** Standard uncertainty of the output by it alone. */
  readonly uncertainty: number;
  /** Its share of the variance, of independent contributors. */
  readonly share: number;
}

/** Correlation coefficients of the inputs; those of one contributor's two sides stay apart. */
export const matrixOf = (
  inputs: readonly Input[],
  correlations: readonly Correlation[],
): number[][] =>
  inputs.map((a) =>
    inputs.map((b) => {
      const same = a.side === undefined || b.side === undefined || a.side === b.side;
      const found = correlations.find(
        ({ between }) =>
          same && between.includes(a.contributor.id) && between.includes(b.contributor.id),
      );
      return a === b ? 1 : (found?.coefficient ?? 0);
    }),
  );

/** Effects by contributor: the two inputs of one that acts on each side are put together. */
export const effectsOf = (inputs: readonly Input[], row: readonly number[]): Effect[] => {
  const alone = inputs.map(({ contributor }, i) => {
    const c = row[i] ?? NaN;
    const { minus, plus } = contributor;
    return {
      sensitivity: c,
      most: Math.abs(c) * Math.max(minus, plus),
      uncertainty: Math.abs(c) * momentsOf(contributor).deviation,
    };
  });
  const total = Math.hypot(...alone.map(({ uncertainty }) => uncertainty));
  const ids = [...new Set(inputs.map(({ contributor }) => contributor.id))];
  return ids
    .flatMap((id): Effect[] => {
      const own = alone.filter((_, i) => inputs[i]?.contributor.id === id);
      const contributor = inputs.find((input) => input.contributor.id === id)?.contributor;
      const strongest = [...own].sort(
        (a, b) => Math.abs(b.sensitivity) - Math.abs(a.sensitivity),
      )[0];
      if (contributor === undefined || strongest === undefined) return [];
      const uncertainty = Math.hypot(...own.map((part) => part.uncertainty));
      return [
        {
          id,
          label: contributor.label,
          source: contributor.source,
          sensitivity: strongest.sensitivity,
          most: own.reduce((sum, { most }) => sum + most, 0),
          uncertainty,
          share: total > 0 ? (uncertainty / total) ** 2 : 0,
        },
      ];
    })
    .sort((a, b) => b.share - a.share);
};
