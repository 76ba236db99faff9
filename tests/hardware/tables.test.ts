import { describe, expect, it } from 'vitest';
import {
  buttonScrew,
  capScrew,
  clearanceHole,
  counterbore,
  countersink,
  countersunkScrew,
  diameterOf,
  dowelPin,
  nut,
  pitchOf,
  setScrew,
  tapDrill,
  THREADS,
  washer,
  type Thread,
} from '../../src/hardware/index.ts';

/** Calls `check` for every row of a table, each row with one value a thread. */
const each = (
  rows: readonly (readonly [Thread, ...number[]])[],
  check: (t: Thread, v: number[]) => void,
): void => {
  expect(rows.map(([thread]) => thread)).toEqual([...THREADS]);
  for (const [thread, ...values] of rows) check(thread, values);
};

describe('screws', () => {
  // ISO 4762: d, pitch, head plain and knurled, height, key, socket depth, thread length. Three
  // open transcriptions of the standard agree (knurled heads: one of them).
  it('has the rows of ISO 4762', () => {
    each(
      [
        ['M3', 0.5, 5.5, 5.68, 3, 2.5, 1.3, 18],
        ['M4', 0.7, 7.0, 7.22, 4, 3, 2.0, 20],
        ['M5', 0.8, 8.5, 8.72, 5, 4, 2.5, 22],
        ['M6', 1.0, 10.0, 10.22, 6, 5, 3.0, 24],
        ['M8', 1.25, 13.0, 13.27, 8, 6, 4.0, 28],
        ['M10', 1.5, 16.0, 16.27, 10, 8, 5.0, 32],
        ['M12', 1.75, 18.0, 18.27, 12, 10, 6.0, 36],
      ],
      (thread, values) => {
        const s = capScrew(thread);
        expect([
          pitchOf(thread),
          s.plainDiameter,
          s.headDiameter,
          s.headHeight,
          s.key,
          s.socketDepth,
          s.threadLength,
        ]).toEqual(values);
        expect(s.headHeight).toBe(diameterOf(thread));
        expect(s.threadLength).toBe(2 * diameterOf(thread) + 12);
      },
    );
  });

  // ISO 7380-1, an open table: head diameter and height.
  it('has the rows of ISO 7380-1', () => {
    each(
      [
        ['M3', 5.7, 1.65],
        ['M4', 7.6, 2.2],
        ['M5', 9.5, 2.75],
        ['M6', 10.5, 3.3],
        ['M8', 14, 4.4],
        ['M10', 17.5, 5.5],
        ['M12', 21, 6.6],
      ],
      (thread, values) => {
        expect([buttonScrew(thread).headDiameter, buttonScrew(thread).headHeight]).toEqual(values);
      },
    );
  });

  // ISO 10642, an open table; 90 degrees make the sharp head d + 2 k wide.
  it('has the rows of ISO 10642', () => {
    each(
      [
        ['M3', 6.72, 1.86],
        ['M4', 8.96, 2.48],
        ['M5', 11.2, 3.1],
        ['M6', 13.44, 3.72],
        ['M8', 17.92, 4.96],
        ['M10', 22.4, 6.2],
        ['M12', 26.88, 7.44],
      ],
      (thread, values) => {
        const s = countersunkScrew(thread);
        expect([s.headDiameter, s.headHeight]).toEqual(values);
        expect(s.headDiameter).toBeCloseTo(diameterOf(thread) + 2 * s.headHeight, 9);
        expect(countersink(thread)).toMatchObject({ diameter: s.headDiameter, angle: 90 });
      },
    );
  });

  // ISO 4026 keys, an open table.
  it('has the rows of ISO 4026', () => {
    each(
      [
        ['M3', 1.5],
        ['M4', 2],
        ['M5', 2.5],
        ['M6', 3],
        ['M8', 4],
        ['M10', 5],
        ['M12', 6],
      ],
      (thread, [key]) => {
        expect(setScrew(thread).key).toBe(key);
      },
    );
  });

  // The lengths an open table lists for ISO 4762 and ISO 4017.
  it('offers standard lengths only, in rising order', () => {
    const standard = [
      3, 4, 5, 6, 8, 10, 12, 16, 20, 25, 30, 35, 40, 45, 50, 55, 60, 65, 70, 80, 90, 100, 110, 120,
    ];
    for (const thread of THREADS)
      for (const { lengths } of [
        capScrew(thread),
        buttonScrew(thread),
        countersunkScrew(thread),
        setScrew(thread),
      ]) {
        expect(lengths.length).toBeGreaterThan(2);
        expect(standard).toEqual(expect.arrayContaining([...lengths]));
        expect([...lengths].sort((a, b) => a - b)).toEqual([...lengths]);
      }
    expect(capScrew('M6').lengths).toEqual([10, 12, 16, 20, 25, 30, 35, 40, 45, 50, 55, 60]);
  });
});

describe('nuts and washers', () => {
  // Across flats, ISO 4032, ISO 4035 and ISO 7040 heights, and s / cos 30 computed to 4 places.
  it('has the rows of ISO 4032, 4035 and 7040', () => {
    each(
      [
        ['M3', 5.5, 2.4, 1.8, 4.5, 6.3509],
        ['M4', 7, 3.2, 2.2, 6, 8.0829],
        ['M5', 8, 4.7, 2.7, 6.8, 9.2376],
        ['M6', 10, 5.2, 3.2, 8, 11.547],
        ['M8', 13, 6.8, 4, 9.5, 15.0111],
        ['M10', 16, 8.4, 5, 11.9, 18.4752],
        ['M12', 18, 10.8, 6, 14.9, 20.7846],
      ],
      (thread, [flats, full, thin, lock, corners = 0]) => {
        expect(nut(thread).acrossFlats).toBe(flats);
        expect([
          nut(thread).height,
          nut(thread, 'thin').height,
          nut(thread, 'lock').height,
        ]).toEqual([full, thin, lock]);
        expect(nut(thread).acrossCorners).toBeCloseTo(corners, 4);
      },
    );
  });

  // ISO 7089, two open tables: hole, outside, thickness, greatest thickness.
  it('has the rows of ISO 7089', () => {
    each(
      [
        ['M3', 3.2, 7, 0.5, 0.55],
        ['M4', 4.3, 9, 0.8, 0.9],
        ['M5', 5.3, 10, 1.0, 1.1],
        ['M6', 6.4, 12, 1.6, 1.8],
        ['M8', 8.4, 16, 1.6, 1.8],
        ['M10', 10.5, 20, 2.0, 2.2],
        ['M12', 13, 24, 2.5, 2.7],
      ],
      (thread, values) => {
        const w = washer(thread);
        expect([w.innerDiameter, w.outerDiameter, w.thickness, w.greatestThickness]).toEqual(
          values,
        );
      },
    );
  });

  // ISO 7093, an open table with the greatest thickness; the M12 row is from memory.
  it('has the rows of ISO 7093', () => {
    each(
      [
        ['M3', 3.2, 9, 0.9],
        ['M4', 4.3, 12, 1.1],
        ['M5', 5.3, 15, 1.4],
        ['M6', 6.4, 18, 1.8],
        ['M8', 8.4, 24, 2.2],
        ['M10', 10.5, 30, 2.7],
        ['M12', 13, 37, 3.3],
      ],
      (thread, values) => {
        const w = washer(thread, 'large');
        expect([w.innerDiameter, w.outerDiameter, w.greatestThickness]).toEqual(values);
      },
    );
  });
});

describe('threads and holes', () => {
  // ISO 2306, three published thread tables. An inch-based table would give 10.3 for M12.
  it('has the drills of ISO 2306', () => {
    each(
      [
        ['M3', 2.5],
        ['M4', 3.3],
        ['M5', 4.2],
        ['M6', 5.0],
        ['M8', 6.8],
        ['M10', 8.5],
        ['M12', 10.2],
      ],
      (thread, [drill]) => {
        expect(tapDrill(thread).diameter).toBe(drill);
      },
    );
  });

  // ISO 273, an open table: close (H12), normal (H13), loose (H14).
  it('has the clearance holes of ISO 273', () => {
    each(
      [
        ['M3', 3.2, 3.4, 3.6],
        ['M4', 4.3, 4.5, 4.8],
        ['M5', 5.3, 5.5, 5.8],
        ['M6', 6.4, 6.6, 7],
        ['M8', 8.4, 9, 10],
        ['M10', 10.5, 11, 12],
        ['M12', 13, 14, 15],
      ],
      (thread, values) => {
        const fits = ['close', 'normal', 'loose'] as const;
        expect(fits.map((fit) => clearanceHole(thread, fit).diameter)).toEqual(values);
        expect(clearanceHole(thread).standard).toBe('ISO 273, normal');
      },
    );
  });

  it('clears the knurled head with every counterbore', () => {
    for (const thread of THREADS) {
      const { diameter, depth } = counterbore(thread);
      expect(diameter).toBeGreaterThan(capScrew(thread).headDiameter);
      expect(depth).toBeGreaterThan(capScrew(thread).headHeight);
    }
  });

  // ISO 8734: two open tables agree; m6 by a published ISO 286 table.
  it('has the rows of ISO 8734', () => {
    const rows = ([3, 4, 5, 6, 8, 10, 12] as const).map((d) => {
      const { chamfer, lengths, over } = dowelPin(d);
      return [d, chamfer, lengths[0], lengths.at(-1), ...over];
    });
    expect(rows).toEqual([
      [3, 0.5, 8, 30, 0.002, 0.008],
      [4, 0.63, 10, 40, 0.004, 0.012],
      [5, 0.8, 12, 50, 0.004, 0.012],
      [6, 1.2, 14, 60, 0.004, 0.012],
      [8, 1.6, 18, 80, 0.006, 0.015],
      [10, 2, 22, 100, 0.006, 0.015],
      [12, 2.5, 26, 100, 0.007, 0.018],
    ]);
  });
});
