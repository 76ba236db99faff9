import { registry } from '../../../jigs/registry.ts';
import { mendAll, type MendReport } from '../../adapt/mend-all.ts';
import { chain } from '../../core/result.ts';
import { openToMend } from '../../document/open.ts';
import { saveDesign } from '../../document/save.ts';
import { text } from '../../text/index.ts';
import { printIssues, printJson, printLine, type ExitCode } from '../answer.ts';
import { loadDesign } from '../load.ts';
import { printDifferences, printFailed } from '../print-change.ts';
import { writeNew } from '../write-file.ts';

export interface MendOptions {
  readonly out?: string;
  readonly json?: boolean;
}

/**
 * `mend FILE`: sets every value that refusals, warnings and failed checks name as their mend and
 * tells which; with `out`, writes the mended design, if any value was set. Ends with 1 when a check
 * fails nonetheless.
 */
export const mend = async (file: string, { out, json = false }: MendOptions): Promise<ExitCode> => {
  const mended = chain(loadDesign(file, openToMend), (design) => mendAll(design, registry));
  if (!mended.ok) {
    if (!json) printLine(text.adapt.mend.left);
    printIssues(mended.issues, json);
    return 2;
  }
  const { design, differences, failed } = mended.value;
  const { nothing, still } = text.adapt.mend;
  const changed = differences.length > 0;
  // A design that stays as it is need not be written again.
  const to = changed ? out : undefined;
  const problem = to === undefined ? undefined : writeNew(to, saveDesign(design));
  if (problem) {
    printIssues([problem], json);
    return 2;
  }
  const report: MendReport = {
    format: 'platenwright-mended',
    design: design.name,
    differences,
    failed,
  };
  if (json) printJson(report);
  else {
    if (changed) printDifferences(differences);
    else printLine(`${nothing.message} ${nothing.fix}`);
    if (failed.length > 0) printLine(still(failed.length));
    printFailed(failed);
    const written = to === undefined ? text.adapt.notWritten : text.adapt.restored(design.name, to);
    if (changed) printLine(written);
  }
  return failed.length === 0 ? 0 : 1;
};
