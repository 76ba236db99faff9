import { saveDesign } from '../../document/save.ts';
import { text } from '../../text/index.ts';
import { printIssues, printJson, printLine, type ExitCode } from '../answer.ts';
import { loadDesign } from '../load.ts';
import { writeNew } from '../write-file.ts';

/** `open FILE --out FILE2`: the design that any exported file, package folder or link carries. */
export const open = async (file: string, out: string, json: boolean): Promise<ExitCode> => {
  const loaded = loadDesign(file);
  if (!loaded.ok) {
    printIssues(loaded.issues, json);
    return 2;
  }
  const problem = writeNew(out, saveDesign(loaded.value));
  if (problem) {
    printIssues([problem], json);
    return 2;
  }
  const { name, revision, fixture } = loaded.value;
  if (json)
    printJson({ out, design: name, revision, family: fixture.family, issues: loaded.issues });
  else {
    printIssues(loaded.issues, false);
    printLine(text.adapt.restored(name, out));
  }
  return 0;
};
