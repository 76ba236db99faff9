import { readdirSync } from 'node:fs';
import { join, relative } from 'node:path';
import { registry } from '../../../jigs/registry.ts';
import { aidsLast } from '../../family/family.ts';
import { grinderPresets } from '../../grinder/presets/index.ts';
import { text } from '../../text/index.ts';
import { printJson, printLine, type ExitCode } from '../answer.ts';
import { root } from '../root.ts';

const jigs = join(root, 'jigs');

const workedDesigns = (): string[] =>
  readdirSync(jigs, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.jig.json'))
    .map((name) => relative(process.cwd(), join(jigs, name)))
    .sort();

/** `list`: what there is to start from. */
export const list = async (json: boolean): Promise<ExitCode> => {
  const families = Object.values(registry.families)
    .sort(aidsLast)
    .map(({ id, label, meaning }) => ({
      id,
      label,
      meaning,
    }));
  const presets = Object.entries(grinderPresets).map(([id, { name }]) => ({ id, name }));
  const designs = workedDesigns();
  if (json) {
    printJson({ families, presets, designs });
    return 0;
  }
  printLine(text.cli.familiesTitle);
  families.forEach(({ id, label, meaning }) => printLine(`  ${id}  ${label}. ${meaning}`));
  printLine(text.cli.presetsTitle);
  presets.forEach(({ id, name }) => printLine(`  ${id}  ${name}`));
  printLine(text.cli.examplesTitle);
  designs.forEach((design) => printLine(`  ${design}`));
  return 0;
};
