/**
 * Everything a person reads, in one catalogue. Entries are strings or functions of the values
 * they mention; another language is another set of areas of the same types. It is a namespace of
 * modules rather than one object, so that a bundle holds only the areas that its code mentions.
 */
export * as text from './areas.ts';
