/** What is wrong with a layout, where no value is known that mends it, and what is left to do. */
export const unmended = (wrong: string): string =>
  `${wrong}. No value is known that mends it: take back the last change, or compare the fixtures.`;

export const contactOpen = unmended('Parts that must touch do not');
export const sameRoom = unmended('Two parts claim the same room');
