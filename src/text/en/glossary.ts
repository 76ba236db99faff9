/** One-line meanings of every term that is ours or the trade's, by key. */
export const glossary = {
  setoff: {
    term: 'Step to belt',
    meaning:
      'Distance along the seat from the abrasive face to the step that locates the spine; it sets the angle.',
  },
} as const;
