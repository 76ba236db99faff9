/** Proportions of lip and seat that no one sets, mm. */
export const LIP = {
  thread: 'M4',
  /** From the lip's face to the axis of a screw, and to the rear of wear strip and leg. */
  screw: 6.5,
  depth: 12,
  /** From the axis of a screw to the end of the piece it holds: half its head, and metal. */
  screwRoom: 5,
  /** Metal under a lip screw's end, and room of collar and foot to what is below and behind. */
  screwEnd: 0.4,
  collarRoom: 0.7,
  footRoom: 0.5,
  /** From the end of the push block to the stop collar. */
  blockRoom: 2,
  /** Room between a pad and the wandering belt. */
  padRoom: 1.5,
  /** Length of a stop collar plate below the edge. */
  collarReach: 5,
} as const;
