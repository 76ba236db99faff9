import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
} from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';

/** What the page is made from. */
const SOURCES = ['src', 'jigs', 'vite.config.ts', 'package-lock.json'];
const KEPT = join('.cache', 'page');

/** A build that takes longer was given up, ms. */
const PATIENCE = 100_000;

/** What was built so long ago no test looks at any more, ms. */
const OLD = 3_600_000;

const filesIn = (path: string): string[] =>
  statSync(path).isDirectory()
    ? readdirSync(path)
        .sort()
        .flatMap((name) => filesIn(join(path, name)))
    : [path];

const fingerprint = (): string => {
  const hash = createHash('sha256');
  for (const file of SOURCES.flatMap(filesIn)) hash.update(file).update(readFileSync(file));
  return hash.digest('hex').slice(0, 16);
};

const build = async (folder: string): Promise<void> => {
  const work = `${folder}.work`;
  const built = spawn(
    'npx',
    ['vite', 'build', '--outDir', join(process.cwd(), work), '--emptyOutDir', '--logLevel', 'warn'],
    { env: { ...process.env, VITEST: undefined, NODE_ENV: 'production' } },
  );
  let said = '';
  built.stderr.on('data', (data: Buffer) => (said += data.toString()));
  const code = await new Promise((resolve) => built.on('close', resolve));
  if (code !== 0) throw new Error(`the app does not build: ${said}`);
  renameSync(work, folder);
};

/** Whether this process may build; false where another is at it. */
const taken = (lock: string): boolean => {
  try {
    mkdirSync(lock);
    return true;
  } catch {
    const age = existsSync(lock) ? Date.now() - statSync(lock).mtimeMs : 0;
    if (age > PATIENCE) rmSync(lock, { recursive: true, force: true });
    return false;
  }
};

/**
 * The folder with the app as a user builds it, made once for all tests that open it and anew when
 * anything it is made from has changed.
 */
export const builtPage = async (): Promise<string> => {
  mkdirSync(KEPT, { recursive: true });
  const folder = join(KEPT, fingerprint());
  const lock = `${folder}.lock`;
  while (!existsSync(folder)) {
    if (!taken(lock)) {
      await pause(200);
      continue;
    }
    try {
      if (!existsSync(folder)) await build(folder);
      const others = readdirSync(KEPT).map((name) => join(KEPT, name));
      for (const other of others)
        if (!other.startsWith(folder) && statSync(other).mtimeMs < Date.now() - OLD)
          rmSync(other, { recursive: true });
    } finally {
      rmSync(lock, { recursive: true, force: true });
    }
  }
  return folder;
};
