import type { Thread, ThreadTable } from './threads.ts';

/** A screw with a head: sizes of the standard, mm. */
export interface HeadedScrew {
  readonly thread: Thread;
  readonly standard: string;
  readonly headHeight: number;
  /** Nominal lengths under the head (of a countersunk screw: overall) that the standard lists. */
  readonly lengths: readonly number[];
}

/** ISO 4762 hexagon socket head cap screw. */
export interface CapScrew extends HeadedScrew {
  /** Greatest diameter of a plain head. */
  readonly plainDiameter: number;
  /** Greatest diameter of a knurled head: what a counterbore has to clear. */
  readonly headDiameter: number;
  readonly key: number;
  /** Least depth of the socket. */
  readonly socketDepth: number;
  /** Thread length of long screws, 2 d + 12. */
  readonly threadLength: number;
}

/** ISO 7380-1 button head screw. */
export interface ButtonScrew extends HeadedScrew {
  readonly headDiameter: number;
}

/** ISO 10642 countersunk screw, 90 degrees. */
export interface CountersunkScrew extends HeadedScrew {
  /** Head diameter at the sharp rim, d + 2 k. */
  readonly headDiameter: number;
}

/** ISO 4026 socket set screw with flat point. */
export interface SetScrew {
  readonly thread: Thread;
  readonly standard: string;
  readonly key: number;
  readonly lengths: readonly number[];
}

/** Nominal screw lengths, mm: ISO 888 (from memory; the same in the open table of ISO 4017). */
export const PREFERRED_LENGTHS: readonly number[] = [
  3, 4, 5, 6, 8, 10, 12, 16, 20, 25, 30, 35, 40, 45, 50, 55, 60, 65, 70, 80, 90, 100, 110, 120,
];

const between = (least: number, most: number): readonly number[] =>
  PREFERRED_LENGTHS.filter((length) => length >= least && length <= most);

// ISO 4762: plain and knurled head, height, key, least socket depth, thread length; shortest and
// longest usual length (from memory, inside the range of an open table).
const CAP: ThreadTable<readonly [number, number, number, number, number, number, number, number]> =
  {
    M3: [5.5, 5.68, 3, 2.5, 1.3, 18, 5, 30],
    M4: [7, 7.22, 4, 3, 2, 20, 6, 40],
    M5: [8.5, 8.72, 5, 4, 2.5, 22, 8, 50],
    M6: [10, 10.22, 6, 5, 3, 24, 10, 60],
    M8: [13, 13.27, 8, 6, 4, 28, 12, 80],
    M10: [16, 16.27, 10, 8, 5, 32, 16, 100],
    M12: [18, 18.27, 12, 10, 6, 36, 20, 120],
  };

export const capScrew = (thread: Thread): CapScrew => {
  const [plainDiameter, headDiameter, headHeight, key, socketDepth, threadLength, least, most] =
    CAP[thread];
  return {
    thread,
    standard: 'ISO 4762',
    plainDiameter,
    headDiameter,
    headHeight,
    key,
    socketDepth,
    threadLength,
    lengths: between(least, most),
  };
};

// ISO 7380-1: head diameter, head height; shortest and longest length (from memory).
const BUTTON: ThreadTable<readonly [number, number, number, number]> = {
  M3: [5.7, 1.65, 6, 12],
  M4: [7.6, 2.2, 8, 16],
  M5: [9.5, 2.75, 10, 30],
  M6: [10.5, 3.3, 10, 30],
  M8: [14, 4.4, 10, 40],
  M10: [17.5, 5.5, 16, 40],
  M12: [21, 6.6, 16, 50],
};

export const buttonScrew = (thread: Thread): ButtonScrew => {
  const [headDiameter, headHeight, least, most] = BUTTON[thread];
  return {
    thread,
    standard: 'ISO 7380-1',
    headDiameter,
    headHeight,
    lengths: between(least, most),
  };
};

// ISO 10642: theoretical head diameter, head height; shortest and longest length.
const COUNTERSUNK: ThreadTable<readonly [number, number, number, number]> = {
  M3: [6.72, 1.86, 8, 30],
  M4: [8.96, 2.48, 8, 40],
  M5: [11.2, 3.1, 8, 50],
  M6: [13.44, 3.72, 8, 60],
  M8: [17.92, 4.96, 10, 80],
  M10: [22.4, 6.2, 12, 100],
  M12: [26.88, 7.44, 20, 100],
};

export const countersunkScrew = (thread: Thread): CountersunkScrew => {
  const [headDiameter, headHeight, least, most] = COUNTERSUNK[thread];
  return {
    thread,
    standard: 'ISO 10642',
    headDiameter,
    headHeight,
    lengths: between(least, most),
  };
};

// ISO 4026: key; shortest and longest length, an open table and memory agreeing.
const SET: ThreadTable<readonly [number, number, number]> = {
  M3: [1.5, 3, 16],
  M4: [2, 4, 20],
  M5: [2.5, 5, 25],
  M6: [3, 6, 30],
  M8: [4, 8, 40],
  M10: [5, 10, 40],
  M12: [6, 16, 40],
};

export const setScrew = (thread: Thread): SetScrew => {
  const [key, least, most] = SET[thread];
  return { thread, standard: 'ISO 4026', key, lengths: between(least, most) };
};
