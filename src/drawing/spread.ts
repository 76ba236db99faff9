/**
 * Positions as near as possible (least squares) to the wanted ones, in their order, at least
 * `pitch` apart and none below `low`: pool-adjacent-violators on the wanted positions less their
 * place in the row. `wanted` must ascend.
 */
export const spread = (wanted: readonly number[], pitch: number, low = -Infinity): number[] => {
  const pools: { sum: number; count: number }[] = [];
  const mean = (pool: { sum: number; count: number } | undefined): number =>
    pool ? pool.sum / pool.count : -Infinity;
  wanted.forEach((position, i) => {
    pools.push({ sum: position - i * pitch, count: 1 });
    while (pools.length > 1 && mean(pools.at(-2)) > mean(pools.at(-1))) {
      const last = pools.pop();
      const before = pools.pop();
      if (last && before)
        pools.push({ sum: before.sum + last.sum, count: before.count + last.count });
    }
  });
  return pools
    .flatMap((pool) => Array.from({ length: pool.count }, () => Math.max(low, mean(pool))))
    .map((position, i) => position + i * pitch);
};
