import { strFromU8 } from 'fflate';
import { chain, fail, ok, type Result } from '../core/result.ts';
import { text } from '../text/index.ts';
import { findCarried } from './carry.ts';
import { readDxf } from './lint/dxf-reader.ts';
import { lintIssue } from './lint/lint-issue.ts';
import { DESIGN_KIND, readPackage } from './package.ts';
import { MODEL_PATH } from './threemf.ts';
import { unzip } from './zip.ts';

/** Largest file that is opened, bytes. */
export const LARGEST_FILE = 50_000_000;

const isZip = (bytes: Uint8Array): boolean => bytes[0] === 0x50 && bytes[1] === 0x4b;

const fromZip = (bytes: Uint8Array): Result<string> => {
  const model = unzip(bytes, (path) => path === MODEL_PATH);
  if (!model.ok) return model;
  const content = model.value.get(MODEL_PATH);
  if (content !== undefined) return findCarried(strFromU8(content));
  return chain(readPackage(bytes), (files) => {
    const design = files.find(({ kind }) => kind === DESIGN_KIND);
    return design === undefined
      ? fail(lintIssue('no-design', text.exporting.noDesign))
      : ok(strFromU8(design.bytes));
  });
};

/** How a report and the list of a package begin; a design and a grinder begin otherwise. */
const LISTING = /^\s*\{\s*"format"\s*:\s*"platenwright-(?:report|package)"/;

/** Whether bytes are a report or the list of a package, which hold their design as one of their values. */
export const isListing = (bytes: Uint8Array): boolean =>
  LISTING.test(strFromU8(bytes.subarray(0, 200), true).replace('\u00EF\u00BB\u00BF', ''));

/**
 * The text of the design that an exported file carries: SVG, PDF, DXF, 3MF or a packed package.
 * The content decides which it is, not the name. Nothing in the file is trusted: sizes are
 * limited, archives checked before they are unpacked, and the text is yet to be validated.
 */
export const extractDesign = (bytes: Uint8Array): Result<string> => {
  if (bytes.length > LARGEST_FILE)
    return fail(lintIssue('too-large', text.exporting.tooLarge(LARGEST_FILE)));
  if (isZip(bytes)) return fromZip(bytes);
  // The carried form is plain ASCII, so any bytes around it may be read as Latin-1.
  const content = strFromU8(bytes, true);
  return /^ *999\r?\n/.test(content)
    ? findCarried(readDxf(content).comments.join(''))
    : findCarried(content);
};
