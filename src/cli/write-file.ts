import { linkSync, rmSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import type { Issue } from '../core/issue.ts';
import { text } from '../text/index.ts';
import { issueOf } from './answer.ts';

/**
 * Writes a file that does not exist yet, whole or not at all: into a file beside it, which then
 * gets its name. Killed at any moment, the file is whole or missing. An existing file is never
 * replaced; an issue names the option that asked for it.
 */
export const writeNew = (file: string, content: string, option = '--out'): Issue | undefined => {
  const beside = join(dirname(file), `.${basename(file)}.${String(process.pid)}.new`);
  try {
    writeFileSync(beside, content, { flag: 'wx' });
    // A second name for the same bytes: unlike a rename, it fails where that name is taken.
    linkSync(beside, file);
    return;
  } catch (error) {
    const why = error instanceof Error && 'code' in error ? String(error.code) : String(error);
    return why === 'EEXIST'
      ? issueOf('output-exists', text.cli.exists(file), option)
      : issueOf('output-unwritable', text.cli.fileUnwritable(file, why), option);
  } finally {
    rmSync(beside, { force: true });
  }
};
