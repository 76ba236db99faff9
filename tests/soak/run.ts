// `npm run soak -- [--count N] [--drags N] [--files N] [--packages N] [--kills N] [--seed N]
// [--only NAME,NAME] [--lanes N] [--ledger FILE] [--told]`: random designs of every family, drags from
// one design to the next, damaged files of every format and killed runs of `make`, on two processes.
// Defaults: 10000 designs a family (geometry, cut files and prints read back), 200 steps of drags with
// all checks, 20 whole packages a family with checks and PDFs, 1000 damaged files a format, 20 kills.
// Ends with 1 when anything was wrong.
// Runs add up: each whole batch that came to its end is written to the ledger, and the same command goes
// on where the last run was stopped. `--told` prints the ledger's table and tries nothing.
import { execFileSync, spawn } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { tmpdir } from 'node:os';
import { registry } from '../../jigs/registry.ts';
import { familyTable, readLedger, triedBatches, withBatch, writeLedger } from './ledger.ts';
import { told, type Tally } from './tally.ts';

const option = (name: string, initial: string): string => {
  const at = process.argv.indexOf(`--${name}`);
  return at < 0 ? initial : (process.argv[at + 1] ?? initial);
};

const [count, files, packages, seed, kills, drags] = [
  ['count', '10000'],
  ['files', '1000'],
  ['packages', '20'],
  ['seed', '1'],
  ['kills', '20'],
  ['drags', '200'],
].map(([name = '', initial = '']) => Number(option(name, initial)));
const only = option('only', '')
  .split(',')
  .filter((name) => name !== '');
const file = option('ledger', 'tests/soak/ledger.json');
let ledger = readLedger(file);
if (process.argv.includes('--told')) {
  process.stdout.write(`${familyTable(ledger).join('\n')}\n`);
  process.exit(0);
}
const lanes = Number(option('lanes', '2'));
/** Designs and files of one process: short enough to see progress, long enough to warm up. */
const BATCH = { family: 50, drag: 20, format: 1000, kill: 20 } as const;
/** A process that says nothing for so long hangs, ms. */
const PATIENCE = 30 * 60_000;

const FORMATS = ['design', 'link', 'svg', 'pdf', 'dxf', 'dxf-r12', '3mf', 'package', 'grinder'];

interface Job {
  readonly what: keyof typeof BATCH;
  readonly name: string;
  readonly seed: number;
  readonly count: number;
  readonly packages: number;
  /** Which batch of its name it is. */
  readonly turn: number;
}

const batches = (what: Job['what'], name: string, total: number, whole: number): Job[] =>
  Array.from({ length: Math.ceil(total / BATCH[what]) }, (_, i) => ({
    what,
    name,
    // Seeds far apart: the generator's neighbouring seeds give related streams.
    seed: ((seed ?? 1) * 7919 + i * 104729 + name.length * 15485863) % 2147483647,
    count: Math.min(BATCH[what], total - i * BATCH[what]),
    packages: i === 0 ? whole : 0,
    turn: i,
  }));

const families = [...Object.keys(registry.families), 'bevel-gauge'];
const jobs = [
  ...batches('kill', 'make', kills ?? 0, 0),
  ...FORMATS.flatMap((name) => batches('format', name, files ?? 0, 0)),
  ...families.flatMap((name) => batches('drag', name, drags ?? 0, 0)),
  ...families.flatMap((name) => batches('family', name, count ?? 0, packages ?? 0)),
]
  .filter(({ name }) => only.length === 0 || only.includes(name))
  .filter(({ what, name, turn }) => !triedBatches(ledger, what, name, seed ?? 1).has(turn))
  // Batches of all families by turns, so that an early end has seen each.
  .sort((a, b) => (a.what === b.what ? a.turn - b.turn : a.what === 'family' ? 1 : -1));

const git = (...args: string[]): string => execFileSync('git', args, { encoding: 'utf8' }).trim();
const commit = `${git('rev-parse', '--short', 'HEAD')}${git('status', '--porcelain', 'src', 'jigs') === '' ? '' : '+'}`;

const failed = (job: Job, why: string): Tally => ({
  ...job,
  ends: { crashed: 1 },
  codes: {},
  slowest: 0,
  defects: [{ at: 0, found: [why], sample: '' }],
});

const run = (job: Job): Promise<Tally> =>
  new Promise((resolve) => {
    const { what, name } = job;
    const numbers = [job.seed, job.count, job.packages].map(String);
    const child = spawn(
      process.execPath,
      ['--import', 'tsx', 'tests/soak/worker.ts', what, name, ...numbers],
      { stdio: ['ignore', 'pipe', 'pipe'] },
    );
    const written = { out: '', err: '' };
    child.stdout.on('data', (chunk: Buffer) => (written.out += chunk.toString()));
    child.stderr.on('data', (chunk: Buffer) => (written.err += chunk.toString()));
    const patience = setTimeout(() => child.kill('SIGKILL'), PATIENCE);
    child.once('close', (code) => {
      clearTimeout(patience);
      try {
        resolve(JSON.parse(written.out) as Tally);
      } catch {
        resolve(failed(job, `ended with ${String(code)}: ${written.err.slice(-400)}`));
      }
    });
  });

const tallies: Tally[] = [];
const waiting = [...jobs];
const dir = join(tmpdir(), `soak-${String(seed)}`);
mkdirSync(dir, { recursive: true });

const lane = async (): Promise<void> => {
  for (let job = waiting.shift(); job !== undefined; job = waiting.shift()) {
    const tally = await run(job);
    tallies.push(tally);
    // Whole batches only: a short one would pass for tried when more are asked for.
    if (job.count === BATCH[job.what]) {
      const { what, name, turn } = job;
      const date = new Date().toISOString().slice(0, 10);
      ledger = withBatch(ledger, { what, name, seed: seed ?? 1, commit, date }, turn, tally);
      writeLedger(file, ledger);
    }
    writeFileSync(
      join(dir, `${job.what}-${job.name}-${String(job.seed)}.json`),
      JSON.stringify(tally),
    );
    process.stdout.write(`${told([tally]).join('\n')}\n`);
  }
};

await Promise.all(Array.from({ length: lanes }, lane));
process.stdout.write(`\nTally, seed ${String(seed)} (samples of defects in ${dir})\n`);
process.stdout.write(`${told(tallies).join('\n')}\n`);
process.exitCode = tallies.some(({ defects }) => defects.length > 0) ? 1 : 0;
