// Run by the tests in a process of its own, to be killed at any moment: writes packages of many
// files to one folder, over and over, each as different from the last as two designs would be.
// With a number it kills itself before that rename of the first write.
import fs from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';

const [target = '', last] = process.argv.slice(2);
const content = (round: number, i: number): Uint8Array =>
  new TextEncoder().encode(`${String(round)} ${String(i)}\n`.repeat(400));

const rename = fs.renameSync;
let renames = 0;
fs.renameSync = (from, to) => {
  renames += 1;
  if (renames === Number(last)) process.kill(process.pid, 'SIGKILL');
  rename(from, to);
};
syncBuiltinESMExports();

const { withManifest } = await import('../../src/export/index.ts');
const { writePackage } = await import('../../src/cli/package-folder.ts');

process.stdout.write('started\n');
for (let round = 0; ; round += 1) {
  const files = Array.from({ length: 40 }, (_, i) => ({
    path: `part-${String(i % 7)}/file-${String(i)}.txt`,
    kind: 'sample',
    bytes: content(round, i),
  }));
  const problem = writePackage(target, withManifest(files, { design: 'x', passed: true }));
  if (problem) throw new Error(problem.message);
}
