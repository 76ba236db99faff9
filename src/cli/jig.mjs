// The command line. Plain JavaScript, so that Node alone can start it.
import { program } from './built.mjs';

const { run } = await program('main');
await run(process.argv.slice(2));
