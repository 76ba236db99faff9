import type { Issue } from '../../core/issue.ts';

/** An error about a whole file; the words come from the catalogue. */
export const lintIssue = (
  code: string,
  { message, fix }: { readonly message: string; readonly fix: string },
): Issue => ({ code, severity: 'error', path: '', message, fix });
