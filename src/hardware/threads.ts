import { text } from '../text/index.ts';

/** Metric coarse threads the tables cover, ISO 262. */
export const THREADS = ['M3', 'M4', 'M5', 'M6', 'M8', 'M10', 'M12'] as const;
export type Thread = (typeof THREADS)[number];

/** A size with the standard it comes from. */
export interface Sized {
  readonly diameter: number;
  readonly standard: string;
}

export type ThreadTable<T> = Readonly<Record<Thread, T>>;

/** Nominal (major) diameter, mm. */
export const diameterOf = (thread: Thread): number => Number(thread.slice(1));

/** Coarse pitch, mm: ISO 261. */
const PITCH: ThreadTable<number> = {
  M3: 0.5,
  M4: 0.7,
  M5: 0.8,
  M6: 1,
  M8: 1.25,
  M10: 1.5,
  M12: 1.75,
};

export const pitchOf = (thread: Thread): number => PITCH[thread];

/** ISO 2306 drills before tapping coarse threads, mm. */
const TAP_DRILL: ThreadTable<number> = {
  M3: 2.5,
  M4: 3.3,
  M5: 4.2,
  M6: 5,
  M8: 6.8,
  M10: 8.5,
  M12: 10.2,
};

/** The drill for a tapped hole. */
export const tapDrill = (thread: Thread): Sized => ({
  diameter: TAP_DRILL[thread],
  standard: 'ISO 2306',
});

export type HoleFit = 'close' | 'normal' | 'loose';

/** ISO 273 clearance holes, mm: fine (H12), medium (H13) and coarse (H14) series. */
const CLEARANCE: ThreadTable<Readonly<Record<HoleFit, number>>> = {
  M3: { close: 3.2, normal: 3.4, loose: 3.6 },
  M4: { close: 4.3, normal: 4.5, loose: 4.8 },
  M5: { close: 5.3, normal: 5.5, loose: 5.8 },
  M6: { close: 6.4, normal: 6.6, loose: 7 },
  M8: { close: 8.4, normal: 9, loose: 10 },
  M10: { close: 10.5, normal: 11, loose: 12 },
  M12: { close: 13, normal: 14, loose: 15 },
};

/** The through hole for a screw. */
export const clearanceHole = (thread: Thread, fit: HoleFit = 'normal'): Sized => ({
  diameter: CLEARANCE[thread][fit],
  standard: text.model.hardware.clearanceStandard(fit),
});
