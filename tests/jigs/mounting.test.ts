import { describe, expect, it } from 'vitest';
import { threadFor } from '../../jigs/shared/layout/choose-mount.ts';
import { barPlaces, patternPlaces, type PlacedRest } from '../../jigs/shared/layout/mount.ts';

/** A table with holes every 10 mm, as a fixture sees it. */
const table: PlacedRest = {
  kind: 'table',
  half: 60,
  front: 2,
  back: 102,
  thickness: 10,
  pattern: {
    kind: 'holes',
    hole: { kind: 'plain', diameter: 9 },
    at: Array.from({ length: 9 }, (_, i) => (i - 4) * 10).flatMap((x) =>
      Array.from({ length: 9 }, (_, k): [number, number] => [x, 10 + k * 10]),
    ),
  },
  offset: 0,
};

describe('the screw that holds a base to a rest', () => {
  // ISO 273, close: M8 in 8.4, M6 in 6.4, M5 in 5.3, M4 in 4.3. Thread in steel at least 0.8 of the
  // diameter (common practice, no source): 6.4, 4.8, 4.0 and 3.2 mm of base.
  it.each([
    [9, 8, 'M8'],
    [9, 6, 'M6'],
    [8.3, 8, 'M6'],
    [8.4, 6.4, 'M8'],
    [6.3, 8, 'M5'],
    [9, 4.5, 'M5'],
    [9, 3.5, 'M4'],
    [9, 3, undefined],
    [4.2, 8, undefined],
  ])(
    'in a passage of %s mm under a base of %s mm passes the one and holds in the other',
    (width, base, thread) => {
      expect(threadFor(width, base)).toBe(thread);
    },
  );
});

describe('places of mounting screws', () => {
  const base = { half: 45, front: 4, back: 96 };
  const radius = 4;
  const taken = [
    { at: [-40, 10], radius: 3 },
    { at: [30, 84], radius: 3 },
  ] as const;
  const away = ([x, y]: readonly [number, number], t: (typeof taken)[number]): number =>
    Math.hypot(x - t.at[0], y - t.at[1]) - t.radius - radius;

  it('leave 4 mm of metal to what is in the base and to its edges, and no more is asked', () => {
    const at = patternPlaces(table, base, taken, radius);
    expect(at).toHaveLength(4);
    for (const place of at) {
      for (const t of taken) expect(away(place, t)).toBeGreaterThanOrEqual(4);
      expect(Math.abs(place[0]) + radius + 4).toBeLessThanOrEqual(base.half);
      expect(place[1] - radius - 4).toBeGreaterThanOrEqual(base.front);
      expect(place[1] + radius + 4).toBeLessThanOrEqual(base.back);
    }
    // A hole at 11 mm from a taken place of 3 mm has 4 mm of metal left, one at 10 mm has 3 mm.
    const near = (y: number) =>
      patternPlaces(
        {
          ...table,
          pattern: {
            ...table.pattern,
            at: [
              [0, 20],
              [0, 80],
            ],
          } as PlacedRest['pattern'],
        },
        base,
        [{ at: [0, y], radius: 3 }],
        radius,
      );
    expect(near(31)).toHaveLength(2);
    expect(near(30)).toEqual([]);
  });

  it('of clamp bars stand beside the rest, where nothing is taken', () => {
    const rest: PlacedRest = { ...table, half: 25, pattern: { kind: 'edges' } };
    const at = barPlaces(rest, base, taken, 3, 0, 20);
    expect(at).toHaveLength(4);
    for (const [x, y] of at) {
      expect(Math.abs(x) - 3).toBeGreaterThanOrEqual(rest.half);
      // The whole bar under the rest and the base.
      expect(y - 10).toBeGreaterThanOrEqual(Math.max(base.front, rest.front));
      expect(y + 10).toBeLessThanOrEqual(Math.min(base.back, rest.back));
      for (const t of taken)
        expect(Math.hypot(x - t.at[0], y - t.at[1])).toBeGreaterThanOrEqual(t.radius + 3 + 4);
    }
  });
});
