import { chain, type Result } from '../core/result.ts';
import { MAX_LINK_CHARACTERS, openLink } from '../document/link.ts';
import { openDesign } from '../document/open.ts';
import type { Design, Families } from '../document/schema.ts';
import { extractDesign } from '../export/extract.ts';

/** Blanks and the marks of a byte order that may stand before JSON. */
const BEFORE = new Set([0x20, 0x09, 0x0a, 0x0d, 0xef, 0xbb, 0xbf]);
const BRACE = 0x7b;

/** What may stand around a link that was saved as a file, characters. */
const AROUND_LINK = 4096;

/** The fragment in a text that is a link to a design or such a fragment alone. */
export const fragmentIn = (content: string): string | undefined =>
  /^(?:(?:https?|file):\/\/[^\s#]*)?#?(\d+\.[\w-]{40,})$/.exec(content.trim())?.[1];

const linkIn = (bytes: Uint8Array): string | undefined =>
  bytes.length > MAX_LINK_CHARACTERS + AROUND_LINK
    ? undefined
    : fragmentIn(new TextDecoder().decode(bytes));

/**
 * Opens a design file, any exported file that carries its design (SVG, PDF, DXF, 3MF, packed
 * package), or a link saved as text. The content decides which it is, not the name; whatever it
 * is, what it holds is checked like any design file.
 */
export const openAny = (bytes: Uint8Array, registry: Families): Result<Design> => {
  if (bytes.find((byte) => !BEFORE.has(byte)) === BRACE) return openDesign(bytes, registry);
  const fragment = linkIn(bytes);
  return fragment === undefined
    ? chain(extractDesign(bytes), (design) => openDesign(design, registry))
    : openLink(fragment, registry);
};
