import { describe, expect, it } from 'vitest';
import type { Blade } from '../../src/blade/schema.ts';
import type { Vec2 } from '../../src/geometry/vector.ts';
import { EDGE_UNSURE, traceOutline } from '../../src/outline/trace.ts';
import { bladeOf, drawnOutline } from './files.ts';

const sheepsfoot = bladeOf('carriage/examples/sheepsfoot-95');

/** Lays the outline of a blade that was turned and, where asked for, turned over. */
const laid = (blade: Blade, degrees: number, over: boolean, otherEdge = false) => {
  const points = drawnOutline(blade, degrees, 1).map(([x, y]): Vec2 => [x, over ? -y : y]);
  const length = drawnOutline(blade, 0, 1).map(([x]) => x);
  const choice = {
    length: Math.max(...length) - Math.min(...length),
    otherEnd: false,
    otherEdge,
    plunge: null,
    turn: null,
  };
  const traced = traceOutline(blade, { points, area: 1, gap: 0 }, choice);
  if (!traced.ok) throw new Error(traced.issues[0]?.message);
  const found = traced.value.byDimensions?.outline;
  return {
    told: traced.value.edgeTold,
    asks: traced.issues.some(({ code }) => code === EDGE_UNSURE),
    drop: found?.kind === 'dimensions' ? found.tipDrop : null,
  };
};

describe('which side of an outline is the edge', () => {
  const ways = [
    [0, false],
    [33, false],
    [180, false],
    [0, true],
    [120, true],
  ] as const;

  it.each(ways)(
    'is told by a heel, the tip at the edge or not: turned %s, over %s',
    (turn, over) => {
      // A tang flush with the spine leaves the heel alone standing out.
      const { tang } = sheepsfoot;
      const flush = laid({ ...sheepsfoot, tang: { ...tang, drop: 0 } }, turn, over);
      expect(flush.told).toBe(true);
      expect(flush.asks).toBe(false);
      // Drawn with 24 of 30 mm; turned over it would be 6.
      expect(flush.drop).toBeGreaterThan(20);
      expect(laid(bladeOf('spine-rest/examples/hunting-115'), turn, over)).toMatchObject({
        told: true,
        asks: false,
      });
    },
  );

  it.each(ways)('is asked where a tang stands in the middle: turned %s, over %s', (turn, over) => {
    const guessed = laid(sheepsfoot, turn, over);
    expect(guessed).toMatchObject({ told: false, asks: true });
    // Whoever turns it over is not asked again, and gets the blade with its tip far down. the tip far
    // below the line of the spine.
    const answered = laid(sheepsfoot, turn, over, true);
    expect(answered.asks).toBe(false);
    expect(answered.drop).toBeGreaterThan(20);
  });
});
