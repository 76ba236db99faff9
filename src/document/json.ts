import { problem } from '../core/issue.ts';
import { fail, ok, type Result } from '../core/result.ts';
import { text } from '../text/index.ts';

/** Deepest nesting of a file; ours need eight levels. */
export const MAX_DEPTH = 32;

/** Keys that reach into the language's own objects. */
const FORBIDDEN = new Set(['__proto__', 'constructor', 'prototype']);

const words = text.document.open;

const decode = (input: Uint8Array | string): string | undefined => {
  if (typeof input === 'string') return input;
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(input);
  } catch {
    return undefined;
  }
};

/** Deepest nesting of brackets outside strings, without parsing. */
const depthOf = (source: string): number => {
  let depth = 0;
  let deepest = 0;
  let quoted = false;
  for (let i = 0; i < source.length; i += 1) {
    const c = source[i];
    if (quoted) {
      if (c === '\\') i += 1;
      else if (c === '"') quoted = false;
    } else if (c === '"') quoted = true;
    else if (c === '{' || c === '[') deepest = Math.max(deepest, (depth += 1));
    else if (c === '}' || c === ']') depth -= 1;
  }
  return deepest;
};

/** Path of the first forbidden key; the depth is bounded before this is called. */
const forbiddenKey = (value: unknown, path: string): string | undefined => {
  if (typeof value !== 'object' || value === null) return undefined;
  for (const [key, inner] of Object.entries(value) as [string, unknown][]) {
    const at = path === '' ? key : `${path}.${key}`;
    const found = FORBIDDEN.has(key) ? at : forbiddenKey(inner, at);
    if (found !== undefined) return found;
  }
  return undefined;
};

/**
 * Parses text or UTF-8 bytes of at most `maxBytes` into plain data. Refused before parsing: too
 * large, not UTF-8, nested deeper than MAX_DEPTH; after it: keys that reach prototypes.
 */
export const parseJson = (input: Uint8Array | string, maxBytes: number): Result<unknown> => {
  const refuse = (code: string, because: { message: string; fix: string }, path = '') =>
    fail(problem(code, path, because));
  // A character takes at least one byte, so a longer string is too large without counting.
  const size =
    typeof input === 'string' && input.length <= maxBytes
      ? new TextEncoder().encode(input).length
      : input.length;
  if (size > maxBytes) return refuse('too-large', words.tooLarge(size, maxBytes));
  const source = decode(input);
  if (source === undefined) return refuse('not-utf8', words.notUtf8());
  const depth = depthOf(source);
  if (depth > MAX_DEPTH) return refuse('too-deep', words.tooDeep(depth, MAX_DEPTH));
  let value: unknown;
  try {
    // A byte order mark is no part of JSON, but some editors write one.
    value = JSON.parse(source.replace(/^\uFEFF/, ''));
  } catch (error) {
    return refuse('not-json', words.notJson(error instanceof Error ? error.message : ''));
  }
  const forbidden = forbiddenKey(value, '');
  return forbidden === undefined
    ? ok(value)
    : refuse('forbidden-key', words.forbidden(forbidden), forbidden);
};
