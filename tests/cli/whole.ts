import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** Every file below a folder, sorted, relative to it. */
export const filesBelow = (folder: string): string[] =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name).slice(folder.length + 1))
    .sort();

/** Every byte of a folder, in one number. */
export const stateOf = (folder: string): string => {
  const hash = createHash('sha256');
  for (const file of filesBelow(folder)) hash.update(file).update(readFileSync(join(folder, file)));
  return hash.digest('hex');
};

/** Whether a folder is a whole package: every listed file there as listed, and no other. */
export const isWhole = (folder: string): boolean => {
  const manifest = JSON.parse(readFileSync(join(folder, 'manifest.json'), 'utf8')) as {
    files: { path: string; sha256: string }[];
  };
  const sum = (path: string): string =>
    createHash('sha256')
      .update(readFileSync(join(folder, path)))
      .digest('hex');
  const listed = manifest.files.map(({ path }) => path);
  return (
    JSON.stringify([...listed, 'manifest.json'].sort()) === JSON.stringify(filesBelow(folder)) &&
    manifest.files.every(({ path, sha256 }) => sum(path) === sha256)
  );
};
