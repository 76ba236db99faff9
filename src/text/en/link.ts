/** What is said of a link that does not open. */
export const link = {
  tooLong: (length: number, most: number) => ({
    message: `The link is ${length} characters long; at most ${most} are looked at.`,
    fix: 'Ask for the design as a file instead.',
  }),
  unknownVersion: (version: string) => ({
    message: `The link was made in version ${version} of the link format, which this program does not know.`,
    fix: 'Open it with a newer program, or ask for the design as a file.',
  }),
  damaged: () => ({
    message: 'The link is damaged or cut short; nothing was opened and nothing changed.',
    fix: 'Copy the whole link again, or ask for the design as a file.',
  }),
} as const;
