// The programs of this folder, transpiled and joined once for what their sources say now: a start
// then reads a few files instead of transpiling some hundred. Plain JavaScript, so that Node alone
// can start it.
import { createHash } from 'node:crypto';
import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { setFlagsFromString } from 'node:v8';

const PROGRAMS = ['main', 'start'];
const DAY = 24 * 60 * 60 * 1000;

const textsBelow = (folder) =>
  readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) return textsBelow(path);
    return path.endsWith('.ts') ? [path, readFileSync(path)] : [];
  });

/** What a build depends on, by content: times of files say nothing after a checkout. */
const keyOf = (root) => {
  const hash = createHash('sha256').update(root);
  const files = [fileURLToPath(import.meta.url), join(root, 'package-lock.json')];
  const texts = [...files.map((file) => readFileSync(file)), ...textsBelow(join(root, 'src'))];
  for (const text of [...texts, ...textsBelow(join(root, 'jigs'))]) hash.update(text).update('\0');
  return hash.digest('hex').slice(0, 32);
};

/** The files of a build. Libraries stay where they are; commands stay apart until they are asked. */
const joined = async (root, into) => {
  const { buildSync } = await import('esbuild');
  const source = (program) => join(root, 'src', 'cli', `${program}.ts`);
  return buildSync({
    absWorkingDir: root,
    entryPoints: PROGRAMS.map(source).filter(existsSync),
    outdir: into,
    write: false,
    bundle: true,
    splitting: true,
    packages: 'external',
    platform: 'node',
    format: 'esm',
    target: 'node20',
    outExtension: { '.js': '.mjs' },
    sourcemap: true,
    sourcesContent: false,
    // Files beside the sources are found from where the sources are.
    define: { 'import.meta.url': JSON.stringify(pathToFileURL(source('main')).href) },
  }).outputFiles;
};

/** Writes a build whole or not at all; another process may write the same at the same time. */
const keep = (files, folder) => {
  const own = `${folder}.${process.pid}`;
  rmSync(own, { recursive: true, force: true });
  mkdirSync(own, { recursive: true });
  for (const { path, contents } of files) writeFileSync(join(own, basename(path)), contents);
  try {
    renameSync(own, folder);
  } catch (error) {
    rmSync(own, { recursive: true });
    if (!existsSync(folder)) throw error;
  }
  // A program that started from an older build may still fetch commands from it.
  for (const name of readdirSync(dirname(folder))) {
    const other = join(dirname(folder), name);
    if (other !== folder && statSync(other).mtimeMs < Date.now() - DAY)
      rmSync(other, { recursive: true, force: true });
  }
};

/**
 * A command has many functions that run some thousand times each. The engine's own measure optimises
 * all of them, which took near half of the time of a package: 7.2 s of processor time, 4.4 s with a
 * function optimised after eight times as long, and with less than half as much joined into it.
 */
const THRIFT = ['--interrupt-budget=540672', '--max-inlined-bytecode-size-cumulative=400'];

/**
 * A program of this folder as a module, of the sources as they are now. Errors name the places of
 * the sources. Where nothing can be kept, as in a checkout that is read-only, each file is
 * transpiled as it is read.
 */
export const program = async (
  name,
  root = join(dirname(fileURLToPath(import.meta.url)), '../..'),
) => {
  const folder = join(root, 'node_modules', '.cache', 'platenwright', keyOf(root));
  process.setSourceMapsEnabled(true);
  THRIFT.forEach((flag) => setFlagsFromString(flag));
  if (!existsSync(folder)) {
    const files = await joined(root, folder);
    try {
      keep(files, folder);
    } catch {
      (await import('tsx/esm/api')).register();
      return import(pathToFileURL(join(root, 'src', 'cli', `${name}.ts`)).href);
    }
  }
  return import(pathToFileURL(join(folder, `${name}.mjs`)).href);
};
