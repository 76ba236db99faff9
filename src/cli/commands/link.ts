import { linkFragment } from '../../document/link.ts';
import { printIssues, printJson, printLine, type ExitCode } from '../answer.ts';
import { loadDesign } from '../load.ts';

/** `link FILE`: the whole design as the fragment of a link. */
export const link = async (file: string, json: boolean): Promise<ExitCode> => {
  const loaded = loadDesign(file);
  if (!loaded.ok) {
    printIssues(loaded.issues, json);
    return 2;
  }
  const fragment = linkFragment(loaded.value);
  if (json) printJson({ fragment, characters: fragment.length, issues: loaded.issues });
  else {
    printIssues(loaded.issues, false);
    printLine(`#${fragment}`);
  }
  return 0;
};
