import { text } from '../../text/index.ts';

export type Word = keyof typeof text.glossary;

/** Every word, in the order of the alphabet. */
export const words: readonly Word[] = (Object.keys(text.glossary) as Word[]).sort((a, b) =>
  text.glossary[a].term.localeCompare(text.glossary[b].term),
);

const forms = words.map((word) => {
  const term = text.glossary[word].term.toLowerCase();
  return { word, term, whole: new RegExp(`\\b${term}s?\\b`) };
});

/** The words of the glossary that are used in a text, whole and however they are written. */
export const wordsIn = (said: string): readonly Word[] => {
  const plain = said.toLowerCase();
  // Asked anew at every step of a drag: a plain search first, for most are not there.
  return forms
    .filter(({ term, whole }) => plain.includes(term) && whole.test(plain))
    .map(({ word }) => word);
};
