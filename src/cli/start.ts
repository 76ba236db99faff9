import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join, relative } from 'node:path';
import { text } from '../text/index.ts';
import { issueOf, printIssues, printLine } from './answer.ts';
import { make } from './commands/make.ts';
import { root } from './root.ts';
import { serveFolder } from './serve.ts';

const EXAMPLE = 'jigs/spine-rest/examples/kitchen-210.jig.json';
const PORT = 4173;
const ONCE = '--once';

/**
 * `npm start`: the worked example's package and summary, then the app until it is stopped; with
 * `--once` it ends after the summary. Anything else asked of it is refused before it does a thing.
 */
export const start = async (args: readonly string[]): Promise<number> => {
  const unknown = args.filter((argument) => argument !== ONCE);
  if (unknown.length > 0) {
    const issues = unknown.map((argument) =>
      issueOf('unknown-argument', text.cli.startUnknown(argument, ONCE)),
    );
    printIssues(issues, false);
    return 2;
  }
  const out = join(root, 'exports', 'kitchen-210');
  const code = await make(join(root, EXAMPLE), relative(process.cwd(), out), false, false);
  if (code !== 0 || args.includes(ONCE)) return code;
  if (!existsSync(join(root, 'src', 'app', 'index.html'))) {
    printLine(text.cli.noApp);
    return 0;
  }
  const built = spawnSync('npx', ['vite', 'build', '--logLevel', 'warn'], {
    cwd: root,
    stdio: 'inherit',
    shell: process.platform === 'win32',
  });
  if (built.status !== 0) return 3;
  const { url } = await serveFolder(join(root, 'dist'), PORT);
  printLine(text.cli.serving(url));
  return 0;
};
