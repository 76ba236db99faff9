import { cos } from '../core/trigonometry.ts';
import type { Thread, ThreadTable } from './threads.ts';

/** `full` is ISO 4032, `thin` ISO 4035, `lock` ISO 7040 (with a plastic insert). */
export type NutKind = 'full' | 'thin' | 'lock';

export interface Nut {
  readonly thread: Thread;
  readonly standard: string;
  readonly acrossFlats: number;
  /** Over sharp corners, s / cos 30: what a nut trap has to clear. */
  readonly acrossCorners: number;
  /** Greatest height. */
  readonly height: number;
}

const STANDARD: Readonly<Record<NutKind, string>> = {
  full: 'ISO 4032',
  thin: 'ISO 4035',
  lock: 'ISO 7040',
};

// Across flats (ISO 272), greatest heights of ISO 4032, ISO 4035 and ISO 7040.
const NUT: ThreadTable<{ readonly flats: number } & Readonly<Record<NutKind, number>>> = {
  M3: { flats: 5.5, full: 2.4, thin: 1.8, lock: 4.5 },
  M4: { flats: 7, full: 3.2, thin: 2.2, lock: 6 },
  M5: { flats: 8, full: 4.7, thin: 2.7, lock: 6.8 },
  M6: { flats: 10, full: 5.2, thin: 3.2, lock: 8 },
  M8: { flats: 13, full: 6.8, thin: 4, lock: 9.5 },
  M10: { flats: 16, full: 8.4, thin: 5, lock: 11.9 },
  M12: { flats: 18, full: 10.8, thin: 6, lock: 14.9 },
};

export const nut = (thread: Thread, kind: NutKind = 'full'): Nut => {
  const row = NUT[thread];
  return {
    thread,
    standard: STANDARD[kind],
    acrossFlats: row.flats,
    acrossCorners: row.flats / cos(Math.PI / 6),
    height: row[kind],
  };
};

/** `plain` is ISO 7089, `large` ISO 7093-1. */
export type WasherSeries = 'plain' | 'large';

export interface Washer {
  readonly thread: Thread;
  readonly standard: string;
  readonly innerDiameter: number;
  readonly outerDiameter: number;
  /** Nominal thickness; of the large series the greatest one, which the table gives. */
  readonly thickness: number;
  readonly greatestThickness: number;
}

type WasherRow = readonly [number, number, number, number];

// Hole, outside, thickness, greatest thickness.
const WASHER: Readonly<Record<WasherSeries, ThreadTable<WasherRow>>> = {
  plain: {
    M3: [3.2, 7, 0.5, 0.55],
    M4: [4.3, 9, 0.8, 0.9],
    M5: [5.3, 10, 1, 1.1],
    M6: [6.4, 12, 1.6, 1.8],
    M8: [8.4, 16, 1.6, 1.8],
    M10: [10.5, 20, 2, 2.2],
    M12: [13, 24, 2.5, 2.7],
  },
  large: {
    M3: [3.2, 9, 0.9, 0.9],
    M4: [4.3, 12, 1.1, 1.1],
    M5: [5.3, 15, 1.4, 1.4],
    M6: [6.4, 18, 1.8, 1.8],
    M8: [8.4, 24, 2.2, 2.2],
    M10: [10.5, 30, 2.7, 2.7],
    // From memory.
    M12: [13, 37, 3.3, 3.3],
  },
};

export const washer = (thread: Thread, series: WasherSeries = 'plain'): Washer => {
  const [innerDiameter, outerDiameter, thickness, greatestThickness] = WASHER[series][thread];
  return {
    thread,
    standard: series === 'plain' ? 'ISO 7089' : 'ISO 7093-1',
    innerDiameter,
    outerDiameter,
    thickness,
    greatestThickness,
  };
};
