import { Command } from 'commander';
import { text } from '../text/index.ts';
import type { ExitCode } from './answer.ts';

interface Options {
  readonly draws?: string;
  readonly seed?: string;
  readonly json?: boolean;
}

/** `budget FILE`: what errors of setting, belt and blade do to the bevel. */
export const budgetCommand = (end: (code: ExitCode) => void): Command => {
  const words = text.setup.budgetCommand;
  return new Command('budget')
    .description(words.about)
    .configureOutput({ writeErr: () => undefined })
    .exitOverride()
    .argument('<file>', text.cli.fileArgument)
    .option('--draws <number>', words.drawsOption)
    .option('--seed <number>', words.seedOption)
    .option('--json', text.cli.jsonOption)
    .action(async (file: string, { draws, seed, json }: Options) =>
      end(
        await (await import('./commands/budget.ts')).budgetFile(file, draws, seed, json === true),
      ),
    );
};
