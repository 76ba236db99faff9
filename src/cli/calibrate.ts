import { Command } from 'commander';
import { text } from '../text/index.ts';
import type { ExitCode } from './answer.ts';

interface Options {
  readonly readings: string;
  readonly out?: string;
  readonly json?: boolean;
}

/** `calibrate FILE --readings READINGS`: from the readings of a test piece to the true offset. */
export const calibrateCommand = (
  end: (code: ExitCode) => void = (code) => {
    process.exitCode = code;
  },
): Command => {
  const words = text.setup.command;
  return new Command('calibrate')
    .description(words.about)
    .configureOutput({ writeErr: () => undefined })
    .exitOverride()
    .argument('<file>', text.cli.fileArgument)
    .requiredOption('--readings <file>', words.readingsOption)
    .option('--out <file>', words.outOption)
    .option('--json', text.cli.jsonOption)
    .action(async (file: string, { readings, out, json }: Options) =>
      end(
        await (
          await import('./commands/calibrate.ts')
        ).calibrateFile(file, readings, out, json === true),
      ),
    );
};
