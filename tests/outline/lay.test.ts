import { describe, expect, it } from 'vitest';
import { shapeOf } from '../../src/blade/shape.ts';
import type { Vec2 } from '../../src/geometry/vector.ts';
import { tipTurn } from '../../src/grind/carriage/tip.ts';
import { undecided } from '../../src/outline/lay.ts';
import { readOutline } from '../../src/outline/read.ts';
import { traceOutline } from '../../src/outline/trace.ts';
import { bladeOf, bytesOf, dxfOfLines, sidesOf } from './files.ts';

const kitchen = bladeOf('spine-rest/examples/kitchen-210');

/** The drawing as it comes in; `choice` as `undecided`, with what a person decided. */
const traced = async (points: readonly Vec2[], choice: ReturnType<typeof undecided>) => {
  const read = await readOutline(bytesOf(dxfOfLines(sidesOf(points), 4)));
  const [contour] = read.ok ? read.value.contours : [];
  if (contour === undefined) throw new Error('no contour');
  const found = traceOutline(kitchen, contour, choice);
  if (!found.ok) throw new Error(found.issues[0]?.message);
  return found.value;
};

describe('how a drawn outline lies', () => {
  /** 180 mm long: the spine leaves the plunge level and sweeps up by 18 mm from 40 mm on. */
  const upswept = (): Vec2[] => {
    const at = Array.from({ length: 101 }, (_, i) => (180 * i) / 100);
    const rise = (u: number): number => 18 * (Math.max(0, u - 40) / 140) ** 2;
    const belly = (u: number): number => 35 - 53 * (Math.max(0, u - 60) / 120) ** 2;
    const spine = at.map((u): Vec2 => [u, rise(u)]);
    const edge = at.map((u): Vec2 => [u, -belly(u)]).toReversed();
    return [[-100, -4], [0, -4], ...spine, ...edge.slice(1), [0, -24], [-100, -24]];
  };

  it('leaves a drawing with a curved spine as it was drawn, and turns it as it is told', async () => {
    const found = await traced(upswept(), undecided(280));
    expect([found.turnBy, found.turn]).toEqual(['drawing', 0]);
    expect(found.length).toBeCloseTo(180, 3);
    // The tip stands above the spine at the plunge by what it was drawn to.
    expect(found.spine.at(-1)?.[1]).toBeCloseTo(-18, 3);
    const told = await traced(upswept(), { ...undecided(280), turn: 2, plunge: 180 });
    expect(told.turnBy).toBe('given');
    // From the upper corner of the tang to the tip: 280 mm along and 22 mm up, turned on.
    const [c, s] = [Math.cos(Math.PI / 90), Math.sin(Math.PI / 90)];
    expect(told.scale).toBeCloseTo(280 / (280 * c - 22 * s), 6);
    const ends = told.contour.toSorted((a, b) => b[0] - a[0]);
    const rise = (ends.at(-1)?.[1] ?? 0) - (ends[0]?.[1] ?? 0);
    expect(rise).toBeCloseTo((280 * s + 22 * c) * told.scale, 6);
  });

  it('levels a curved spine nearly where the drawing itself lies aslant', async () => {
    const [c, s] = [Math.cos(0.5), Math.sin(0.5)];
    const aslant = upswept().map(([x, y]): Vec2 => [x * c - y * s, x * s + y * c]);
    const found = await traced(aslant, undecided(280));
    expect(found.turnBy).toBe('curved');
    // Drawn at 0.5 rad; the spine's nearer half rises by a little itself.
    expect(Math.abs(Math.abs(found.turn) - (0.5 * 180) / Math.PI)).toBeLessThan(4);
  });

  it.each([0, 0.5, -0.5])(
    'keeps both corners of a blade with a square end, cut aslant by %s mm',
    async (more) => {
      const ends: Vec2[] = [
        [0, 4],
        [80, 4],
        [80, 0],
        [170 + more, 0],
        [170, -25],
        [80, -25],
      ];
      const drawn: Vec2[] = [...ends, [80, -12], [0, -12]];
      const found = await traced(drawn, undecided(170 + Math.max(0, more)));
      const { outline, deviation } = found.byPoints;
      const shape = shapeOf({ ...kitchen, outline });
      expect(deviation).toBeLessThan(0.12);
      expect(shape.spine.value(89)).toBeCloseTo(0, 2);
      expect(shape.edge.value(89)).toBeCloseTo(25, 2);
      // The edge is straight to its end: there is nothing that it turns by.
      expect(tipTurn(shape, 10)).toBeCloseTo(0, 6);
    },
  );
});
