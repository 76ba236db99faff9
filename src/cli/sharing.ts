import { Command } from 'commander';
import { text } from '../text/index.ts';
import type { ExitCode } from './answer.ts';
import type { AdaptOptions } from './commands/adapt.ts';
import type { MendOptions } from './commands/mend.ts';

interface JsonOption {
  readonly json?: boolean;
}

/** The commands by which designs travel: open, link, compare, reach, mend, adapt. */
export const sharingCommands = (end: (code: ExitCode) => void): Command[] => {
  const words = text.adapt;
  const command = (name: string, about: string): Command =>
    new Command(name)
      .description(about)
      .configureOutput({ writeErr: () => undefined })
      .exitOverride()
      .argument('<file>', text.cli.fileArgument)
      .option('--json', text.cli.jsonOption);
  return [
    command('open', words.openAbout)
      .requiredOption('--out <file>', words.newFileOption)
      .action(async (file: string, options: JsonOption & { readonly out: string }) =>
        end(
          await (await import('./commands/open.ts')).open(file, options.out, options.json === true),
        ),
      ),
    command('link', words.linkAbout).action(async (file: string, options: JsonOption) =>
      end(await (await import('./commands/link.ts')).link(file, options.json === true)),
    ),
    command('compare', words.compareAbout)
      .argument('<other>', text.cli.fileArgument)
      .action(async (file: string, other: string, options: JsonOption) =>
        end(
          await (
            await import('./commands/compare.ts')
          ).compareFiles(file, other, options.json === true),
        ),
      ),
    command('reach', words.reachAbout)
      .option('--svg <file>', words.reachPicture)
      .action(async (file: string, options: JsonOption & { readonly svg?: string }) =>
        end(
          await (
            await import('./commands/reach.ts')
          ).reach(file, options.svg, options.json === true),
        ),
      ),
    command('mend', words.mend.about)
      .option('--out <file>', words.newFileOption)
      .action(async (file: string, options: MendOptions) =>
        end(await (await import('./commands/mend.ts')).mend(file, options)),
      ),
    command('adapt', words.adaptAbout)
      .option('--grinder <grinder>', words.grinderOption)
      .option('--blades <file>', words.bladesOption)
      .option('--out <file>', words.newFileOption)
      .action(async (file: string, options: AdaptOptions) =>
        end(await (await import('./commands/adapt.ts')).adaptFile(file, options)),
      ),
  ];
};
