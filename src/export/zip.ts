import { unzipSync, zipSync, type Zippable } from 'fflate';
import { fail, ok, type Result } from '../core/result.ts';
import { text } from '../text/index.ts';
import { lintIssue } from './lint/lint-issue.ts';

/**
 * The time stamp of every entry: the first that the format can say. It is made from local parts
 * because the format stores local parts; so it is the same in every time zone.
 */
const STAMP = new Date(1980, 0, 1, 0, 0, 0);

/** An archive of named files, the same bytes for the same files. */
export const zip = (files: readonly { path: string; bytes: Uint8Array }[]): Uint8Array => {
  const entries: Zippable = {};
  for (const { path, bytes } of files) entries[path] = [bytes, { mtime: STAMP, level: 6 }];
  return zipSync(entries);
};

const LIMITS = {
  archive: 50_000_000,
  entries: 1000,
  entry: 100_000_000,
  total: 200_000_000,
  /** Deflate of repetitive drawings reaches tens; hundreds come from bombs. */
  ratio: 200,
};

/** Relative, forward slashes, no step upwards, no name that means something to the language. */
const isPlainPath = (path: string): boolean =>
  /^[\w.[-][\w .()[\]/-]{0,199}$/.test(path) &&
  path
    .split('/')
    .every((part) => part !== '' && part !== '.' && part !== '..' && part !== '__proto__');

/**
 * The files of an archive. Its names, count, sizes and compression ratios are checked before
 * anything is unpacked; `wanted` can leave entries packed.
 */
export const unzip = (
  archive: Uint8Array,
  wanted: (path: string) => boolean = () => true,
): Result<ReadonlyMap<string, Uint8Array>> => {
  if (archive.length > LIMITS.archive)
    return fail(lintIssue('too-large', text.exporting.tooLarge(LIMITS.archive)));
  const seen = new Set<string>();
  let total = 0;
  let refused = '';
  try {
    const files = unzipSync(archive, {
      filter: ({ name, size, originalSize }) => {
        total += originalSize;
        if (!isPlainPath(name) || seen.has(name)) refused = text.exporting.zipPath;
        seen.add(name);
        const bomb = originalSize > 100_000 && originalSize > size * LIMITS.ratio;
        if (
          seen.size > LIMITS.entries ||
          originalSize > LIMITS.entry ||
          total > LIMITS.total ||
          bomb
        )
          refused = text.exporting.zipSize;
        return refused === '' && wanted(name);
      },
    });
    if (refused !== '') return fail(lintIssue('archive', text.exporting.archive(refused)));
    return ok(new Map(Object.entries(files)));
  } catch {
    return fail(lintIssue('archive', text.exporting.archive(text.exporting.zipDamaged)));
  }
};
