const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&apos;',
};

/**
 * Text for an XML element or attribute: markup escaped, line breaks as spaces, characters that
 * XML 1.0 cannot hold (control characters, lone surrogates) as the replacement character.
 */
export const xmlText = (value: string): string =>
  value
    .replace(/[\t\n\r]+/g, ' ')
    .replace(/[\p{Cc}\p{Cs}\uFFFE\uFFFF]/gu, '\uFFFD')
    .replace(/[&<>"']/g, (character) => ENTITIES[character] ?? character);
