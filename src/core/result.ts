import type { Issue } from './issue.ts';

/** A value with the warnings met on the way, or the issues that prevented it. */
export type Result<T> =
  | { readonly ok: true; readonly value: T; readonly issues: readonly Issue[] }
  | { readonly ok: false; readonly issues: readonly Issue[] };

export const ok = <T>(value: T, issues: readonly Issue[] = []): Result<T> => ({
  ok: true,
  value,
  issues,
});

export const fail = (...issues: readonly Issue[]): { ok: false; issues: readonly Issue[] } => ({
  ok: false,
  issues,
});

/**
 * Continues with the value of a result, keeping the warnings of both. (Not named `then`: a module
 * that exports a function of that name counts as a promise that never settles when imported.)
 */
export const chain = <A, B>(result: Result<A>, next: (value: A) => Result<B>): Result<B> => {
  if (!result.ok) return result;
  const following = next(result.value);
  if (result.issues.length === 0) return following;
  const issues = [...result.issues, ...following.issues];
  return following.ok ? ok(following.value, issues) : { ok: false, issues };
};

/** All values in order, or every issue of those that failed. */
export const all = <T>(results: readonly Result<T>[]): Result<T[]> => {
  const values: T[] = [];
  const issues: Issue[] = [];
  let failed = false;
  for (const result of results) {
    if (result.ok) values.push(result.value);
    else failed = true;
    issues.push(...result.issues);
  }
  return failed ? { ok: false, issues } : ok(values, issues);
};
