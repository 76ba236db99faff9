import type { Fixture } from '../../src/family/index.ts';

/** The planes that show how a step is fed and how it is guided. */
export const cutsOf = (guide: string): NonNullable<Fixture['cuts']> => [
  { through: 'feed-screw', across: 'x' },
  { through: guide === 'strips' ? 'guide-screw-1' : 'guide-pin-1', across: 'y' },
];
