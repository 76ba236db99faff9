/** Words as they begin a sentence. */
export const upper = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
