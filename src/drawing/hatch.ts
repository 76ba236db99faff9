import type { Vec2 } from '../geometry/vector.ts';
import { line } from './items.ts';
import type { Item } from './sheet.ts';

/** Distance of hatching lines, mm. */
const PITCH = 2.5;

/** Hatching at 45 degrees of a closed polygon on the paper (ISO 128-50), to either side. */
export const hatch = (ring: readonly Vec2[], leaning: 'right' | 'left' = 'right'): Item[] => {
  const sign = leaning === 'right' ? 1 : -1;
  // Lines of equal v = y - sign x; u = y + sign x runs along them.
  const turned = ring.map(([x, y]): Vec2 => [y + sign * x, y - sign * x]);
  const vs = turned.map((p) => p[1]);
  const step = PITCH * Math.SQRT2;
  const items: Item[] = [];
  const first = Math.ceil(Math.min(...vs) / step);
  for (let n = first; n * step < Math.max(...vs); n++) {
    const v = n * step + step / 7;
    const us = turned
      .flatMap(([u0, v0], i) => {
        const [u1, v1] = turned[(i + 1) % turned.length] ?? [u0, v0];
        return v0 > v !== v1 > v ? [u0 + ((v - v0) / (v1 - v0)) * (u1 - u0)] : [];
      })
      .sort((a, b) => a - b);
    for (let i = 0; i + 1 < us.length; i += 2) {
      const at = (u: number): Vec2 => [(sign * (u - v)) / 2, (u + v) / 2];
      items.push(line(at(us[i] ?? 0), at(us[i + 1] ?? 0), 'hatch'));
    }
  }
  return items;
};
