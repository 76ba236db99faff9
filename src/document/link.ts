import { strFromU8, strToU8, unzlibSync, zlibSync } from 'fflate';
import { problem } from '../core/issue.ts';
import { fail, type Result } from '../core/result.ts';
import { text } from '../text/index.ts';
import { LINK_DICTIONARY_1, LINK_DICTIONARY_2 } from './link-dictionary.ts';
import { MAX_DESIGN_BYTES, openDesign } from './open.ts';
import { saveDesign } from './save.ts';
import type { Design, Families } from './schema.ts';

/** Dictionary of each version of a link; the last is written, all are read for ever. */
const DICTIONARIES = new Map([
  ['1', strToU8(LINK_DICTIONARY_1)],
  ['2', strToU8(LINK_DICTIONARY_2)],
]);
const VERSION = '2';

/** Longest fragment that is looked at; the largest design that passes the schema needs less. */
export const MAX_LINK_CHARACTERS = 64 * 1024;

const toBase64Url = (bytes: Uint8Array): string => {
  const binary = Array.from(bytes, (byte) => String.fromCharCode(byte)).join('');
  return btoa(binary).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '');
};

const fromBase64Url = (coded: string): Uint8Array =>
  Uint8Array.from(atob(coded.replaceAll('-', '+').replaceAll('_', '/')), (c) => c.charCodeAt(0));

/** Adler-32 of bytes, RFC 1950 section 9: what a zlib stream ends with. The library skips it. */
const adler32 = (bytes: Uint8Array): number => {
  let a = 1;
  let b = 0;
  for (const byte of bytes) {
    a = (a + byte) % 65521;
    b = (b + a) % 65521;
  }
  return b * 65536 + a;
};

/** Inflates a zlib stream and throws where its checksum does not fit. */
const inflate = (packed: Uint8Array, dictionary: Uint8Array): Uint8Array => {
  // A room of the largest file bounds what a crafted link can inflate to.
  const out = new Uint8Array(MAX_DESIGN_BYTES);
  const bytes = unzlibSync(packed, { out, dictionary });
  const view = new DataView(packed.buffer, packed.byteOffset, packed.byteLength);
  if (view.getUint32(packed.length - 4) !== adler32(bytes)) throw new Error('checksum');
  return bytes;
};

/**
 * The whole design as the fragment of a link: the saved text without its white space, deflated
 * against a dictionary that both ends know, in URL-safe base 64. The zlib checksum inside tells
 * a damaged link from a whole one.
 */
export const linkFragment = (design: Design): string => {
  const compact = strToU8(JSON.stringify(JSON.parse(saveDesign(design))));
  const dictionary = DICTIONARIES.get(VERSION) ?? new Uint8Array();
  return `${VERSION}.${toBase64Url(zlibSync(compact, { level: 9, dictionary }))}`;
};

/**
 * Opens the design in a link's fragment (with or without its leading #). A damaged, oversized or
 * newer link is refused with an issue; what it holds is checked like any file.
 */
export const openLink = (fragment: string, registry: Families): Result<Design> => {
  const words = text.document.link;
  const coded = fragment.replace(/^#/, '');
  if (coded.length > MAX_LINK_CHARACTERS) {
    return fail(problem('link-too-long', '', words.tooLong(coded.length, MAX_LINK_CHARACTERS)));
  }
  const version = /^(\d+)\./.exec(coded)?.[1];
  const dictionary = DICTIONARIES.get(version ?? '');
  if (version !== undefined && dictionary === undefined) {
    return fail(problem('link-too-new', '', words.unknownVersion(version)));
  }
  try {
    if (version === undefined || dictionary === undefined) throw new Error('no version');
    const json = inflate(fromBase64Url(coded.slice(version.length + 1)), dictionary);
    return openDesign(strFromU8(json), registry);
  } catch {
    return fail(problem('link-damaged', '', words.damaged()));
  }
};
