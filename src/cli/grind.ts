import { Command } from 'commander';
import { text } from '../text/index.ts';
import type { ExitCode } from './answer.ts';
import type { GrindOptions } from './commands/grind.ts';

/** `jig grind`: the blades of a design as the belt leaves them. */
export const grindCommand = (end: (code: ExitCode) => void): Command => {
  const words = text.virtual.command;
  return new Command('grind')
    .description(words.about)
    .configureOutput({ writeErr: () => undefined })
    .exitOverride()
    .argument('<file>', text.cli.fileArgument)
    .option('--blade <name>', words.bladeOption)
    .option('--grid <mm>', words.gridOption)
    .option('--cure', words.cureOption)
    .option('--advice', words.adviceOption)
    .option('--out <file>', words.outOption)
    .option('--accept-failing', text.cli.acceptOption)
    .option('--json', text.cli.jsonOption)
    .action(async (path: string, options: GrindOptions) =>
      end(await (await import('./commands/grind.ts')).grindFile(path, options)),
    );
};
