import { text } from '../../text/index.ts';

export type Word = keyof typeof text.glossary;

/** Every word, in the order of the alphabet. */
export const words: readonly Word[] = (Object.keys(text.glossary) as Word[]).sort((a, b) =>
  text.glossary[a].term.localeCompare(text.glossary[b].term),
);

/** The words of the glossary that are used in a text, whole and however they are written. */
export const wordsIn = (said: string): readonly Word[] => {
  const plain = said.toLowerCase();
  return words.filter((word) =>
    new RegExp(`\\b${text.glossary[word].term.toLowerCase()}s?\\b`).test(plain),
  );
};
