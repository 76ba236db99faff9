import { strFromU8, strToU8 } from 'fflate';
import { fail, ok, type Result } from '../core/result.ts';
import { text } from '../text/index.ts';
import { lintIssue } from './lint/lint-issue.ts';

/**
 * How a file carries the design it was made from: this word and the design's text as base64 of
 * its UTF-8 bytes. The alphabet needs no escaping in any format, so no design can break out.
 */
const MARK = 'platenwright-design:';
const CARRIED = new RegExp(`${MARK}([A-Za-z0-9+/]*={0,2})`, 'g');

/** Largest design that is written or read, bytes. */
export const LARGEST_DESIGN = 1_000_000;

/** The carried form of a design: one line of plain ASCII. */
export const carried = (design: string): string => MARK + btoa(strFromU8(strToU8(design), true));

/**
 * The design carried somewhere in a text. A name or note may look like a carried design; the whole
 * design, which holds them, is longer than any of them.
 */
export const findCarried = (content: string): Result<string> => {
  const found = [...content.matchAll(CARRIED)].map(([, base64 = '']) => base64);
  const base64 = found.reduce((best, one) => (one.length > best.length ? one : best), '');
  if (base64 === '') return fail(lintIssue('no-design', text.exporting.noDesign));
  if (base64.length > LARGEST_DESIGN * 1.4)
    return fail(lintIssue('too-large', text.exporting.tooLarge(LARGEST_DESIGN)));
  try {
    return ok(new TextDecoder('utf-8', { fatal: true }).decode(strToU8(atob(base64), true)));
  } catch {
    return fail(lintIssue('damaged', text.exporting.damaged));
  }
};
