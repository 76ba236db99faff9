import { closeSync, existsSync, openSync, readSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { registry } from '../../jigs/registry.ts';
import { fragmentIn, openAny } from '../adapt/open-any.ts';
import { chain, fail, ok, type Result } from '../core/result.ts';
import { openLink } from '../document/link.ts';
import { openDesign } from '../document/open.ts';
import type { Design } from '../document/schema.ts';
import { LARGEST_FILE } from '../export/extract.ts';
import { text } from '../text/index.ts';
import { issueOf } from './answer.ts';

const whyOf = (error: unknown): string => {
  if (!(error instanceof Error && 'code' in error)) return String(error);
  const code = String(error.code);
  return text.cli.notRead[code] ?? code;
};

const unreadable = (file: string, why: string) =>
  fail(issueOf('file-unreadable', text.cli.unreadable(file, why)));

/**
 * The bytes of a regular file; of one over the limit just enough to be refused by its size. Devices
 * and pipes are refused: they may never end.
 */
export const readBytes = (file: string, limit: number): Result<Uint8Array> => {
  try {
    const found = statSync(file);
    if (!found.isFile()) return unreadable(file, text.cli.notAFile);
    const bytes = new Uint8Array(Math.min(found.size, limit + 1));
    const handle = openSync(file, 'r');
    try {
      let at = 0;
      for (let read = -1; read !== 0 && at < bytes.length; at += read)
        read = readSync(handle, bytes, at, bytes.length - at, at);
      return ok(bytes.subarray(0, at));
    } finally {
      closeSync(handle);
    }
  } catch (error) {
    return unreadable(file, whyOf(error));
  }
};

/** The design file of a package folder, or the file itself. */
const inFolder = (file: string): string => {
  const design = join(file, text.make.designFile);
  return existsSync(file) && statSync(file).isDirectory() && existsSync(design) ? design : file;
};

/**
 * Opens the design in a design file, an exported file, a package folder, or a link given in the
 * place of a file. `open`: how a design file is opened.
 */
export const loadDesign = (file: string, open = openDesign): Result<Design> => {
  const fragment = existsSync(file) ? undefined : fragmentIn(file);
  return fragment === undefined
    ? chain(readBytes(inFolder(file), LARGEST_FILE), (bytes) => openAny(bytes, registry, open))
    : openLink(fragment, registry);
};
