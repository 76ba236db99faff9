import type { Vec2 } from '../geometry/vector.ts';
import { around, grow, overlap, type Box } from './box.ts';
import { line } from './items.ts';
import type { Item } from './sheet.ts';

/** How an area is hatched: which way the lines lean and how far apart they are, mm. */
export interface Hatching {
  readonly leaning: 'right' | 'left';
  readonly pitch: number;
}

/** Distance of hatching lines, mm. */
const PITCH = 2.5;

/** In the order of choice: ISO 128-3 tells neighbours apart by direction, then by distance. */
const HATCHINGS: readonly Hatching[] = [PITCH, 1.6, 3.5].flatMap((pitch) => [
  { leaning: 'right', pitch },
  { leaning: 'left', pitch },
]);

/** Areas nearer than this are neighbours, mm. */
const NEAR = 0.5;

type Rings = readonly (readonly Vec2[])[];

/** A hatching for each area that differs from those of its neighbours before it. */
export const hatchings = (areas: readonly Rings[]): Hatching[] => {
  const boxes = areas.map((rings) => rings.map((ring) => grow(around(ring), NEAR / 2)));
  const meet = (one: readonly Box[], other: readonly Box[]): boolean =>
    one.some((a) => other.some((b) => overlap(a, b)));
  const chosen: Hatching[] = [];
  boxes.forEach((own, i) => {
    const taken = chosen.filter((_, n) => meet(own, boxes[n] ?? []));
    const [first = { leaning: 'right', pitch: PITCH }] = HATCHINGS;
    // Where all are taken, those that most neighbours have not.
    const uses = (h: Hatching): number => taken.filter((other) => other === h).length;
    chosen[i] = HATCHINGS.reduce((best, h) => (uses(h) < uses(best) ? h : best), first);
  });
  return chosen;
};

/**
 * Hatching at 45 degrees of an area on the paper (ISO 128-3): of what an odd number of its rings
 * surrounds.
 */
export const hatch = (rings: Rings, { leaning, pitch }: Partial<Hatching> = {}): Item[] => {
  const sign = leaning === 'left' ? -1 : 1;
  // Lines of equal v = y - sign x; u = y + sign x runs along them.
  const turned = rings.map((ring) => ring.map(([x, y]): Vec2 => [y + sign * x, y - sign * x]));
  const vs = turned.flat().map((p) => p[1]);
  const step = (pitch ?? PITCH) * Math.SQRT2;
  const items: Item[] = [];
  const first = Math.ceil(Math.min(...vs) / step);
  for (let n = first; n * step < Math.max(...vs); n++) {
    const v = n * step + step / 7;
    const us = turned
      .flatMap((ring) =>
        ring.flatMap(([u0, v0], i) => {
          const [u1, v1] = ring[(i + 1) % ring.length] ?? [u0, v0];
          return v0 > v !== v1 > v ? [u0 + ((v - v0) / (v1 - v0)) * (u1 - u0)] : [];
        }),
      )
      .sort((a, b) => a - b);
    for (let i = 0; i + 1 < us.length; i += 2) {
      const at = (u: number): Vec2 => [(sign * (u - v)) / 2, (u + v) / 2];
      items.push(line(at(us[i] ?? 0), at(us[i + 1] ?? 0), 'hatch'));
    }
  }
  return items;
};
