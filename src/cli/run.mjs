// Runs a project command on a fresh clone: installs the dependencies when they are missing
// or older than the lock file, then hands over. Plain JavaScript, so that Node alone can start it.
import { spawnSync } from 'node:child_process';
import { existsSync, statSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { dirname, join } from 'node:path';

const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
const installed = join(root, 'node_modules', '.package-lock.json');
const wanted = join(root, 'package-lock.json');

const run = (command, args) => {
  const done = spawnSync(command, args, {
    cwd: root,
    stdio: 'inherit',
    shell: process.platform === 'win32',
  });
  if (done.status !== 0) process.exit(done.status ?? 3);
};

if (!existsSync(installed) || statSync(installed).mtimeMs < statSync(wanted).mtimeMs) {
  console.log('Installing the dependencies (once, and again when they change) ...');
  run('npm', ['ci', '--no-audit', '--no-fund']);
}

const [task, ...rest] = process.argv.slice(2);
if (task === 'start') {
  // Only now are the libraries there that it needs.
  const { program } = await import('./built.mjs');
  const { start } = await program('start');
  process.chdir(root);
  process.exitCode = await start(rest);
} else if (task === 'test') run('npm', ['run', '-s', 'verify', '--', ...rest]);
else {
  console.error(`run.mjs knows "start" and "test", not "${task ?? ''}"`);
  process.exit(2);
}
