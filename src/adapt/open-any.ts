import { chain, type Result } from '../core/result.ts';
import { parseJson } from '../document/json.ts';
import { MAX_LINK_CHARACTERS, openLink } from '../document/link.ts';
import { openDesign } from '../document/open.ts';
import type { Design, Families } from '../document/schema.ts';
import { isDraft } from '../document/version.ts';
import { findCarried } from '../export/carry.ts';
import { extractDesign, isListing } from '../export/extract.ts';

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

/** Largest report that is opened: some ten times that of a large design. */
const MAX_LISTING_BYTES = 8 * 1024 * 1024;

/** The design in a report or in the list of a package. */
const openListing = (bytes: Uint8Array, registry: Families): Result<Design> =>
  chain(parseJson(bytes, MAX_LISTING_BYTES), (value) => {
    const carried = isDraft(value) && typeof value.carried === 'string' ? value.carried : '';
    return chain(findCarried(carried), (design) => openDesign(design, registry));
  });

/**
 * Opens a design file, any exported file that carries its design (SVG, PDF, DXF, 3MF, report, list
 * of a package, packed package), or a link saved as text. The content decides which it is, not the
 * name; whatever it is, what it holds is checked like any design file. `open`: how a design file is.
 */
export const openAny = (
  bytes: Uint8Array,
  registry: Families,
  open = openDesign,
): Result<Design> => {
  if (bytes.find((byte) => !BEFORE.has(byte)) === BRACE)
    return isListing(bytes) ? openListing(bytes, registry) : open(bytes, registry);
  const fragment = linkIn(bytes);
  return fragment === undefined
    ? chain(extractDesign(bytes), (design) => openDesign(design, registry))
    : openLink(fragment, registry);
};
