import { Command } from 'commander';
import { text } from '../text/index.ts';
import type { ExitCode } from './answer.ts';

interface Options {
  readonly blade?: string;
  readonly json?: boolean;
}

/** `jig suit`: which fixture suits a blade. */
export const suitCommand = (end: (code: ExitCode) => void): Command =>
  new Command('suit')
    .description(text.virtual.suit.about)
    .configureOutput({ writeErr: () => undefined })
    .exitOverride()
    .argument('<file>', text.cli.fileArgument)
    .option('--blade <name>', text.virtual.command.bladeOption)
    .option('--json', text.cli.jsonOption)
    .action(async (path: string, { blade, json }: Options) =>
      end(await (await import('./commands/suit.ts')).suitFile(path, blade, json === true)),
    );
