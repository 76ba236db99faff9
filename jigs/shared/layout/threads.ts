import { capScrew } from '../../../src/family/index.ts';

/** Threads of the fixture, metric coarse. */
export const THREAD = { main: 'M6', lug: 'M5', collar: 'M4' } as const;

/** Screw tapped through a keeper: some thread stays above it, to press with. */
export const keeperLockLength = (plate: number): number =>
  capScrew(THREAD.main).lengths.find((length) => length >= plate + 3) ?? plate + 3;
