import type { Issue } from '../../core/issue.ts';

/** An error of the clearance check; `path` names the body or pair it concerns. */
export const problem = (
  code: string,
  path: string,
  words: { readonly message: string; readonly fix: string },
): Issue => ({ code, severity: 'error', path, ...words });
