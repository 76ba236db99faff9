import { Command } from 'commander';
import { text } from '../text/index.ts';
import type { ExitCode } from './answer.ts';
import type { OutlineOptions } from './commands/outline.ts';

/** `outline FILE --length MM`: the outline of a DXF or SVG file as a blade. */
export const outlineCommand = (end: (code: ExitCode) => void): Command => {
  const words = text.outline.command;
  return new Command('outline')
    .description(words.about)
    .configureOutput({ writeErr: () => undefined })
    .exitOverride()
    .argument('<file>', words.file)
    .requiredOption('--length <mm>', words.length)
    .option('--plunge <mm>', words.plunge)
    .option('--turn <deg>', words.turn)
    .option('--other-end', words.otherEnd)
    .option('--other-edge', words.otherEdge)
    .option('--points', words.points)
    .option('--into <design>', words.into)
    .option('--out <file>', words.out)
    .option('--json', text.cli.jsonOption)
    .action(async (file: string, options: OutlineOptions) =>
      end(await (await import('./commands/outline.ts')).outlineFile(file, options)),
    );
};
