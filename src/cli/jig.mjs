// The command line. Plain JavaScript, so that Node alone can start it.
import { existsSync } from 'node:fs';
import { program } from './built.mjs';

if (existsSync(new URL('../../node_modules', import.meta.url))) {
  const { run } = await program('main');
  await run(process.argv.slice(2));
} else {
  console.error('The libraries are not installed yet. Run "npm ci" once in this checkout.');
  process.exitCode = 2;
}
