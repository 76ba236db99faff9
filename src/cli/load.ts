import { readFileSync, statSync } from 'node:fs';
import { registry } from '../../jigs/registry.ts';
import { fail, type Result } from '../core/result.ts';
import { MAX_DESIGN_BYTES, openDesign } from '../document/open.ts';
import type { Design } from '../document/schema.ts';
import { text } from '../text/index.ts';
import { issueOf } from './answer.ts';

/** Reads and opens a design file. A file over the limit is not even read. */
export const loadDesign = (file: string): Result<Design> => {
  try {
    // One byte over the limit is enough for `openDesign` to refuse it by size.
    const size = statSync(file).size;
    const bytes = readFileSync(file);
    return openDesign(
      size > MAX_DESIGN_BYTES ? bytes.subarray(0, MAX_DESIGN_BYTES + 1) : bytes,
      registry,
    );
  } catch (error) {
    const why = error instanceof Error && 'code' in error ? String(error.code) : String(error);
    return fail(issueOf('file-unreadable', text.cli.unreadable(file, why)));
  }
};
