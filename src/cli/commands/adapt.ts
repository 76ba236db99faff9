import { existsSync } from 'node:fs';
import { registry } from '../../../jigs/registry.ts';
import { adapt, type Adaptation, type Target } from '../../adapt/adapt.ts';
import { chain, fail, ok, type Result } from '../../core/result.ts';
import { MAX_GRINDER_BYTES, openGrinder } from '../../document/open.ts';
import { saveDesign } from '../../document/save.ts';
import { grinderPresets } from '../../grinder/presets/index.ts';
import type { Grinder } from '../../grinder/schema.ts';
import { text } from '../../text/index.ts';
import { issueOf, printIssues, printJson, printLine, type ExitCode } from '../answer.ts';
import { loadDesign, readBytes } from '../load.ts';
import { printConsequence, printDifferences, printFailed } from '../print-change.ts';
import { writeNew } from '../write-file.ts';

const words = text.adapt;

/** A preset by its name, or the grinder in a file. */
const loadGrinder = (name: string): Result<Grinder> => {
  if (Object.hasOwn(grinderPresets, name)) {
    const preset = grinderPresets[name];
    if (preset) return ok(preset);
  }
  if (!existsSync(name)) {
    const presets = Object.keys(grinderPresets).join(', ');
    return fail(issueOf('grinder-unknown', words.unknownGrinder(name, presets), '--grinder'));
  }
  return chain(readBytes(name, MAX_GRINDER_BYTES), openGrinder);
};

const loadTarget = (grinder: string | undefined, blades: string | undefined): Result<Target> => {
  if (grinder === undefined && blades === undefined)
    return fail(issueOf('nothing-to-adapt', words.nothingToAdapt));
  const machine: Result<Target> =
    grinder === undefined ? ok({}) : chain(loadGrinder(grinder), (one) => ok({ grinder: one }));
  return chain(machine, (target) =>
    blades === undefined
      ? ok(target)
      : chain(loadDesign(blades), (other) => ok({ ...target, blades: other })),
  );
};

const print = (adaptation: Adaptation): void => {
  const { design, grinder, notes, differences, failed, checks } = adaptation;
  printLine(words.adaptTitle(design, grinder));
  for (const { message, fix } of notes) {
    printLine(`  ${message}`);
    if (fix !== '') printLine(`        ${fix}`);
  }
  printDifferences(differences);
  printConsequence(adaptation);
  printLine(words.checksTitle(failed.length, checks));
  printFailed(failed);
};

export interface AdaptOptions {
  readonly grinder?: string;
  readonly blades?: string;
  readonly out?: string;
  readonly json?: boolean;
}

/**
 * `adapt FILE`: fits a design to another grinder or other blades and reports what it means; with
 * `out`, writes the adapted design. Ends with 1 when a check of the adapted fixture fails.
 */
export const adaptFile = async (
  file: string,
  { grinder, blades, out, json = false }: AdaptOptions,
): Promise<ExitCode> => {
  const adapted = chain(loadTarget(grinder, blades), (target) =>
    chain(loadDesign(file), (design) => adapt(design, target, registry)),
  );
  if (!adapted.ok) {
    printIssues(adapted.issues, json);
    return 2;
  }
  const { design, adaptation } = adapted.value;
  const problem = out === undefined ? undefined : writeNew(out, saveDesign(design));
  if (problem) {
    printIssues([problem], json);
    return 2;
  }
  if (json) printJson(adaptation);
  else {
    // What the file of the grinder warns of holds for the adapted design as well, and is told once.
    const { issues } = adapted;
    const first = (one: string): number => issues.findIndex(({ message }) => message === one);
    printIssues(
      issues.filter(({ message }, i) => first(message) === i),
      false,
    );
    print(adaptation);
    printLine(out === undefined ? words.notWritten : words.restored(design.name, out));
  }
  return adaptation.passed ? 0 : 1;
};
