import type { Result } from '../../src/core/result.ts';

/** What was found; throws what was wrong, for no bench goes on without it. */
export const valueOf = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(result.issues.map(({ message }) => message).join('\n'));
  return result.value;
};
