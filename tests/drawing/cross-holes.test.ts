import { describe, expect, it } from 'vitest';
import { drilledLines } from '../../src/drawing/cross-holes.ts';
import { circle, polygon } from '../../src/geometry/loop.ts';
import type { CrossHole, StockPart } from '../../src/model/part.ts';
import { bar } from './parts.ts';

const hole = (over: Partial<CrossHole>): CrossHole => ({
  id: 'screw-1',
  face: 'y',
  at: [15, 10],
  size: 6,
  depth: 'through',
  purpose: '',
  ...over,
});

const part = (outer: StockPart['layers'][number]['profile']['outer']): StockPart => ({
  ...(bar as StockPart),
  layers: [{ profile: { outer, holes: [] }, from: 0, to: 50 }],
});

/** An angle 30 x 30 x 4, its datum corner at (0, 0). */
const angle = part(
  polygon([
    [0, 0],
    [30, 0],
    [30, 4],
    [4, 4],
    [4, 30],
    [0, 30],
  ]),
);

/** How far into the part the hidden lines of a hole reach, line by line. */
const hidden = (of: StockPart, one: CrossHole): number[][] =>
  drilledLines(of, one, [0, 0], 1, (along, into) => [along, into]).flatMap((item) =>
    item.kind === 'line' && item.stroke === 'hidden' && item.a[0] === item.b[0]
      ? [[item.a[1], item.b[1]]]
      : [],
  );

describe('a cross hole seen from its side (hidden edges are those of the part, ISO 128-3)', () => {
  it('ends with the leg of an angle that it goes through, from either face', () => {
    for (const face of ['x', 'y'] as const) {
      const [one, two] = hidden(angle, hole({ face }));
      expect([one, two]).toEqual([
        [0, 4],
        [0, 4],
      ]);
    }
  });

  it('is drawn in both walls of a channel, and not in the air between them', () => {
    const channel = part(
      polygon([
        [0, 0],
        [30, 0],
        [30, 5],
        [3, 5],
        [3, 15],
        [30, 15],
        [30, 20],
        [0, 20],
      ]),
    );
    expect(hidden(channel, hole({}))).toEqual([
      [0, 5],
      [0, 5],
      [15, 20],
      [15, 20],
    ]);
  });

  it('reaches as deep as it is drilled, and through a round bar by its diameter', () => {
    const round = part(circle([6, 6], 6));
    const [deep] = hidden(round, hole({ at: [6, 10], depth: 9 }));
    expect(deep?.[1]).toBe(9);
    const [through] = hidden(round, hole({ at: [6, 10] }));
    expect(through?.[0]).toBeCloseTo(0, 1);
    expect(through?.[1]).toBeCloseTo(12, 1);
  });
});
