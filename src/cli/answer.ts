import type { Issue } from '../core/issue.ts';
import { text } from '../text/index.ts';

/** What a command ends with: 0 done, 1 a check failed, 2 bad input, 3 a defect of the program. */
export type ExitCode = 0 | 1 | 2 | 3;

export const issueOf = (
  code: string,
  words: { message: string; fix: string },
  path = '',
): Issue => ({
  code,
  severity: 'error',
  path,
  ...words,
});

export const printJson = (value: unknown): void => {
  process.stdout.write(`${JSON.stringify(value, null, 2)}\n`);
};

export const printLine = (line = ''): void => {
  process.stdout.write(`${line}\n`);
};

/** Prints issues: as JSON on standard output, or as text on standard error. */
export const printIssues = (issues: readonly Issue[], json: boolean): void => {
  if (json) return printJson({ issues });
  for (const { severity, path, message, fix } of issues) {
    process.stderr.write(`${text.cli.issueLine(severity, path, message, fix)}\n`);
  }
};
