/** Times of a bench and what to make of them. */

export interface Timed<T> {
  /** Processor time of all threads, those that compile and collect beside included, ms. */
  readonly ms: number;
  /** What passed by the clock, ms. */
  readonly passed: number;
  readonly value: T;
}

/** The time of a piece of work. */
export const timed = async <T>(run: () => T | Promise<T>): Promise<Timed<T>> => {
  const start = process.cpuUsage();
  const since = performance.now();
  const value = await run();
  const passed = performance.now() - since;
  const { user, system } = process.cpuUsage(start);
  return { ms: (user + system) / 1000, passed, value };
};

/** The value at a share of the sorted ones; NaN for none. */
export const quantile = (values: readonly number[], share: number): number => {
  const sorted = values.slice().sort((p, q) => p - q);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? NaN;
};
export const median = (values: readonly number[]): number => quantile(values, 0.5);
