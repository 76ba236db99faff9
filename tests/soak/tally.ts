/** What came of one job of the soak, or of all jobs of one kind together. */
export interface Tally {
  readonly what: string;
  readonly name: string;
  readonly seed: number;
  readonly count: number;
  /** How many ended in which way. */
  readonly ends: Readonly<Record<string, number>>;
  /** How many were refused by which issue. */
  readonly codes: Readonly<Record<string, number>>;
  /** Longest single case, ms. */
  readonly slowest: number;
  readonly defects: readonly {
    readonly at: number;
    readonly found: readonly string[];
    readonly sample: string;
  }[];
}

/** Counts added up by their keys. */
export const added = (
  a: Readonly<Record<string, number>>,
  b: Readonly<Record<string, number>>,
): Record<string, number> => {
  const sum: Record<string, number> = { ...a };
  for (const [key, value] of Object.entries(b)) sum[key] = (sum[key] ?? 0) + value;
  return sum;
};

/** Tallies of the same kind and name added up, in the order of their first. */
export const together = (tallies: readonly Tally[]): Tally[] => {
  const found = new Map<string, Tally>();
  for (const tally of tallies) {
    const key = `${tally.what} ${tally.name}`;
    const before = found.get(key);
    found.set(
      key,
      before === undefined
        ? tally
        : {
            ...before,
            count: before.count + tally.count,
            ends: added(before.ends, tally.ends),
            codes: added(before.codes, tally.codes),
            slowest: Math.max(before.slowest, tally.slowest),
            defects: [...before.defects, ...tally.defects],
          },
    );
  }
  return [...found.values()];
};

const list = (counts: Readonly<Record<string, number>>): string =>
  Object.entries(counts)
    .sort(([, a], [, b]) => b - a)
    .map(([key, value]) => `${key} ${String(value)}`)
    .join(', ');

/** The tally as lines to read. */
export const told = (tallies: readonly Tally[]): string[] =>
  together(tallies).flatMap(({ what, name, count, ends, codes, slowest, defects }) => [
    `${what} ${name}: ${String(count)} tried: ${list(ends)}; slowest ${(slowest / 1000).toFixed(1)} s`,
    ...(Object.keys(codes).length > 0 ? [`  refused by: ${list(codes)}`] : []),
    ...defects
      .slice(0, 5)
      .map(
        ({ at, found }) =>
          `  DEFECT at ${String(at)}: ${found.slice(0, 2).join(' | ').slice(0, 400)}`,
      ),
  ]);
