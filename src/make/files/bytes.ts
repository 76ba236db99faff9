const encoder = new TextEncoder();

/** The UTF-8 bytes of a text. */
export const utf8 = (content: string): Uint8Array => encoder.encode(content);
