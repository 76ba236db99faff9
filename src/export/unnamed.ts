/** Of the tables of a font: where the list of them starts, and how long an entry of it is, bytes. */
const LIST = 12;
const ENTRY = 16;

const TABLE = 'post';

/** The version of the table "post" that names no glyphs (OpenType 1.9, "post", version 3.0). */
const NAMELESS = 0x00030000;

/**
 * A font in which no glyph has a name: the PDF library reads all of some six thousand, for every
 * document anew, and writes none of them. The rest of a font, and what is embedded of it, is the
 * same.
 */
export const unnamed = (font: Uint8Array): Uint8Array => {
  const copy = new Uint8Array(font);
  const view = new DataView(copy.buffer);
  for (let i = 0; i < view.getUint16(4); i += 1) {
    const entry = LIST + ENTRY * i;
    const tag = String.fromCharCode(...copy.subarray(entry, entry + 4));
    if (tag === TABLE) view.setUint32(view.getUint32(entry + 8), NAMELESS);
  }
  return copy;
};
