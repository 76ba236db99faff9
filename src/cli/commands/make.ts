import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { registry } from '../../../jigs/registry.ts';
import { usesInches } from '../../document/uses-inches.ts';
import { CHECKS_FAILED, makePackage } from '../../make/package.ts';
import type { Report } from '../../make/report.ts';
import { text } from '../../text/index.ts';
import { issueOf, printIssues, printJson, printLine, type ExitCode } from '../answer.ts';
import { loadDesign } from '../load.ts';
import { refusal, sha256, writePackage } from '../package-folder.ts';
import { printChecks, printSettings } from '../print.ts';

const font = (name: string): Uint8Array =>
  readFileSync(fileURLToPath(import.meta.resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`)));

/** `make FILE --out DIR`: the complete package, whole or not at all. */
export const make = async (
  file: string,
  out: string,
  acceptFailing: boolean,
  json: boolean,
): Promise<ExitCode> => {
  // A folder that will be refused is known before the work is done.
  const refused = refusal(out);
  if (refused) {
    printIssues([refused], json);
    return 2;
  }
  const loaded = loadDesign(file);
  if (!loaded.ok) {
    printIssues(loaded.issues, json);
    return 2;
  }
  const made = await makePackage(loaded.value, {
    registry,
    fonts: { regular: font('DejaVuSans'), bold: font('DejaVuSans-Bold') },
    acceptFailing,
    digest: sha256,
  });
  if (!made.ok) {
    const failed = made.issues.filter((issue) => issue.code === CHECKS_FAILED);
    const closing =
      failed.length > 0 ? [issueOf(CHECKS_FAILED, text.cli.checksFailed(failed.length))] : [];
    printIssues([...made.issues, ...closing], json);
    return failed.length > 0 ? 1 : 2;
  }
  const problem = writePackage(out, made.value);
  if (problem) {
    printIssues([problem], json);
    return 2;
  }
  const bytes = made.value.find((entry) => entry.kind === 'report')?.bytes;
  const report = JSON.parse(new TextDecoder().decode(bytes)) as Report;
  if (json) printJson({ out, passed: report.passed, files: made.value.map(({ path }) => path) });
  else {
    printIssues([...loaded.issues, ...made.issues], false);
    printSettings(report.settings, usesInches(loaded.value));
    printChecks(report.checks, false);
    printLine(text.cli.filesTitle);
    printLine(`  ${text.cli.written(made.value.length, out)}`);
  }
  return report.passed ? 0 : 1;
};
