import { registry } from '../../../jigs/registry.ts';
import { compare, WORDS_ALONE, type Comparison } from '../../adapt/compare.ts';
import type { Issue } from '../../core/issue.ts';
import { all } from '../../core/result.ts';
import { text } from '../../text/index.ts';
import { printIssues, printJson, printLine, type ExitCode } from '../answer.ts';
import { loadDesign } from '../load.ts';
import { printConsequence, printDifferences } from '../print-change.ts';

const words = text.adapt;

const isError = ({ severity }: Issue): boolean => severity === 'error';

const print = ({ differences, consequence, issues, areas }: Comparison): void => {
  printDifferences(differences);
  if (differences.length === 0) return;
  if (consequence) {
    printLine(words.consequenceTitle);
    printConsequence(consequence, '  ');
  }
  printIssues(issues, false);
  for (const { area, consequence: alone, issues: why } of areas) {
    if (WORDS_ALONE.has(area)) continue;
    const label = differences.find((one) => one.area === area)?.areaLabel ?? area;
    printLine(words.consequenceOf(label));
    if (alone) printConsequence(alone, '  ');
    else printLine(`  ${words.cannotAlone(why.find(isError)?.message ?? '')}`);
  }
};

/** `compare FILE1 FILE2`: the difference between two designs in words, with its consequence. */
export const compareFiles = async (
  first: string,
  second: string,
  json: boolean,
): Promise<ExitCode> => {
  const loaded = all([loadDesign(first), loadDesign(second)]);
  const [from, to] = loaded.ok ? loaded.value : [];
  if (!from || !to) {
    printIssues(loaded.issues, json);
    return 2;
  }
  const comparison = compare(from, to, registry);
  if (json) printJson(comparison);
  else {
    printIssues(loaded.issues, false);
    print(comparison);
  }
  return 0;
};
