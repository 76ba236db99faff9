import { Command, CommanderError } from 'commander';
import { messageOf } from '../core/message-of.ts';
import { text } from '../text/index.ts';
import { issueOf, printIssues, type ExitCode } from './answer.ts';
import type { CheckOptions } from './commands/check.ts';
import { sharingCommands } from './sharing.ts';

interface JsonOption {
  readonly json?: boolean;
}

interface MakeOptions extends JsonOption {
  readonly out: string;
  readonly acceptFailing?: boolean;
}

/**
 * Every command loads only what it needs, so that a quick sum does not wait for the modellers.
 * Usage errors are answered like any other bad input.
 */
const buildProgram = (end: (code: ExitCode) => void): Command => {
  const words = text.cli;
  const program = new Command(words.name).description(words.about).exitOverride();
  const quiet = (command: Command): Command =>
    command.configureOutput({ writeErr: () => undefined }).exitOverride();
  quiet(program);
  const file = (command: Command): Command =>
    quiet(command).argument('<file>', words.fileArgument).option('--json', words.jsonOption);

  file(program.command('solve').description(words.solveAbout)).action(
    async (path: string, options: JsonOption) =>
      end(await (await import('./commands/solve.ts')).solve(path, options.json === true)),
  );
  file(program.command('check').description(words.checkAbout))
    .option('--range', text.make.range.rangeOption)
    .option('--only <paths>', text.make.range.onlyOption)
    .action(async (path: string, options: CheckOptions) =>
      end(await (await import('./commands/check.ts')).check(path, options)),
    );
  file(program.command('make').description(words.makeAbout))
    .requiredOption('--out <dir>', words.outOption)
    .option('--accept-failing', words.acceptOption)
    .action(async (path: string, options: MakeOptions) =>
      end(
        await (
          await import('./commands/make.ts')
        ).make(path, options.out, options.acceptFailing === true, options.json === true),
      ),
    );
  quiet(program.command('list').description(words.listAbout))
    .option('--json', words.jsonOption)
    .action(async (options: JsonOption) =>
      end(await (await import('./commands/list.ts')).list(options.json === true)),
    );
  quiet(program.command('schema').description(words.schemaAbout))
    .argument('<name>')
    .action(async (name: string) => end(await (await import('./commands/schema.ts')).schema(name)));
  sharingCommands(end).forEach((command) => program.addCommand(command));
  return program;
};

/** Runs the command line and answers with the exit code; nothing is thrown at the caller. */
export const main = async (argv: readonly string[]): Promise<ExitCode> => {
  const json = argv.includes('--json');
  let code: ExitCode = 0;
  try {
    const { calcCommand } = await import('./calc.ts');
    const { budgetCommand } = await import('./budget.ts');
    const { calibrateCommand } = await import('./calibrate.ts');
    const { grindCommand } = await import('./grind.ts');
    const { suitCommand } = await import('./suit.ts');
    const { outlineCommand } = await import('./outline.ts');
    const end = (ended: ExitCode): void => {
      code = ended;
    };
    await buildProgram(end)
      .addCommand(calcCommand(end))
      .addCommand(budgetCommand(end))
      .addCommand(calibrateCommand(end))
      .addCommand(grindCommand(end))
      .addCommand(suitCommand(end))
      .addCommand(outlineCommand(end))
      .parseAsync(argv, { from: 'user' });
    return code;
  } catch (error) {
    if (error instanceof CommanderError) {
      if (error.exitCode === 0) return 0;
      if (error.code === 'commander.help') return 2;
      const message = error.message.replace(/^error: /, '');
      printIssues([issueOf('usage', text.cli.usage(message))], json);
      return 2;
    }
    const detail = messageOf(error);
    printIssues([issueOf('internal', text.cli.internal(detail))], json);
    return 3;
  }
};

/** The program itself: `main` with its exit code, once its output is read or unwanted. */
export const run = async (argv: readonly string[]): Promise<void> => {
  // A reader that has seen enough (`| head`) closes the pipe: that is no failure of ours.
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
    process.exit(0);
  });
  process.exitCode = await main(argv);
};
