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
import { basename, dirname, join, resolve } from 'node:path';
import type { Issue } from '../core/issue.ts';
import { messageOf } from '../core/message-of.ts';
import { text } from '../text/index.ts';
import { issueOf } from './answer.ts';

/** A file of a package, its path relative to the package folder, with forward slashes. */
export interface FileBytes {
  readonly path: string;
  readonly bytes: Uint8Array;
}

export const sha256 = (bytes: Uint8Array): string =>
  createHash('sha256').update(bytes).digest('hex');

const filesBelow = (dir: string, prefix = ''): string[] =>
  readdirSync(dir, { withFileTypes: true }).flatMap((entry) =>
    entry.isDirectory()
      ? filesBelow(join(dir, entry.name), `${prefix}${entry.name}/`)
      : [`${prefix}${entry.name}`],
  );

const manifestEntries = (dir: string): Map<string, string> | undefined => {
  try {
    const read: unknown = JSON.parse(readFileSync(join(dir, 'manifest.json'), 'utf8'));
    if (typeof read !== 'object' || read === null || !('format' in read) || !('files' in read))
      return;
    if (read.format !== 'platenwright-package' || !Array.isArray(read.files)) return;
    return new Map(
      read.files.map((file: { path: string; sha256: string }) => [file.path, file.sha256]),
    );
  } catch {
    return;
  }
};

/**
 * Why a folder must not be replaced, or nothing when it may: it is missing, empty, or holds a
 * package in which every file is as it was written.
 */
export const refusal = (dir: string): Issue | undefined => {
  if (!existsSync(dir)) return;
  if (!statSync(dir).isDirectory()) return issueOf('output-not-a-folder', text.cli.notAFolder(dir));
  const files = filesBelow(dir);
  if (files.length === 0 && readdirSync(dir).length === 0) return;
  const known = manifestEntries(dir);
  for (const file of files) {
    if (known && file === 'manifest.json') continue;
    const sum = known?.get(file);
    if (sum === undefined)
      return issueOf('output-folder-foreign', text.cli.foreignFolder(dir, file));
    if (sha256(readFileSync(join(dir, file))) !== sum) {
      return issueOf('output-file-changed', text.cli.changedFile(dir, file));
    }
  }
  if (!known)
    return issueOf('output-folder-foreign', text.cli.foreignFolder(dir, readdirSync(dir)[0] ?? ''));
  return;
};

/** Removes a folder of our own as far as there is one; a path that leads nowhere is no failure. */
const discard = (dir: string): void => {
  try {
    rmSync(dir, { recursive: true, force: true });
  } catch {
    // Below something that is no folder: there is nothing to remove.
  }
};

/**
 * Writes a package whole or not at all: into a folder beside the target, which then takes the
 * target's place. Killed at any moment, the target is the old package, the new one or missing, and
 * a missing one is put back before the next write. The folders beside it bear this program's name, so
 * that nobody else's is taken for one.
 */
export const writePackage = (target: string, files: readonly FileBytes[]): Issue | undefined => {
  const dir = resolve(target);
  const beside = (suffix: string): string => join(dirname(dir), `.${basename(dir)}.${suffix}`);
  const [fresh, old] = [beside('platenwright-new'), beside('platenwright-old')];
  try {
    // Leftovers of a run that was killed.
    if (!existsSync(dir) && existsSync(old)) renameSync(old, dir);
    const refused = refusal(dir);
    if (refused) return refused;
    discard(fresh);
    discard(old);
    for (const { path, bytes } of files) {
      const file = join(fresh, path);
      mkdirSync(dirname(file), { recursive: true });
      writeFileSync(file, bytes);
    }
    if (existsSync(dir)) renameSync(dir, old);
    renameSync(fresh, dir);
    discard(old);
    return;
  } catch (error) {
    if (!existsSync(dir) && existsSync(old)) renameSync(old, dir);
    discard(fresh);
    const why = messageOf(error);
    return issueOf('output-unwritable', text.cli.unwritable(target, why));
  }
};
