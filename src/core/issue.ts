import { gridDown, gridUp } from './units.ts';

/** How bad an issue is: an error stops the work, a warning is printed with it, a note informs. */
export type Severity = 'error' | 'warning' | 'note';

/**
 * Something a person has to know or mend. Expected failures are values of this type, never
 * exceptions: only bugs throw.
 */
export interface Issue {
  /** Stable, kebab-case name of the kind of issue, for programs. */
  readonly code: string;
  readonly severity: Severity;
  /** Where in the document: `blades.0.edge.wanted`; empty for the whole. */
  readonly path: string;
  /** Names the parameter, its value, the allowed range and the reason. */
  readonly message: string;
  /** What mends it, as an instruction. */
  readonly fix: string;
  /** A value that mends it, where one is known: it satisfies the rule that was broken. */
  readonly mend?: Mend;
}

/** One value to set in a document: a number, or an option of a choice. */
export interface Mend {
  readonly path: string;
  readonly value: number | string;
}

/** An issue with the words of the catalogue. */
export const problem = (
  code: string,
  path: string,
  words: { readonly message: string; readonly fix: string },
  severity: Severity = 'error',
): Issue => ({ code, severity, path, message: words.message, fix: words.fix });

/** The issue with the value of its own path that mends it. */
export const mendedBy = (issue: Issue, value: Mend['value']): Issue => ({
  ...issue,
  mend: { path: issue.path, value },
});

/** The issue with the least value of its own path that mends it. */
export const raisedTo = (issue: Issue, least: number): Issue => mendedBy(issue, gridUp(least));

/** The issue with the greatest value of its own path that mends it. */
export const loweredTo = (issue: Issue, most: number): Issue => mendedBy(issue, gridDown(most));

/** Whether any of the issues stops the work. */
export const hasError = (issues: readonly Issue[]): boolean =>
  issues.some((issue) => issue.severity === 'error');
