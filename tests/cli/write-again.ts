// Run by the tests in a process of its own, to be killed at any moment: writes packages of many
// files to one folder, over and over, each as different from the last as two designs would be.
import { withManifest } from '../../src/export/index.ts';
import { writePackage } from '../../src/cli/package-folder.ts';

const target = process.argv[2] ?? '';
const content = (round: number, i: number): Uint8Array =>
  new TextEncoder().encode(`${String(round)} ${String(i)}\n`.repeat(400));

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
