import { flatten } from '../geometry/flatten.ts';
import type { Vec2 } from '../geometry/vector.ts';
import type { CrossHole, Part } from '../model/part.ts';
import { line } from './items.ts';
import type { Item } from './sheet.ts';

/** How near to an arc the chords come of which a section through it is told, mm. */
const CHORD = 0.01;

/** The stretches of a cross hole that are drilled in metal, from the face it enters: not in air. */
const drilled = (
  part: Part,
  hole: CrossHole,
  origin: Vec2,
): readonly (readonly [number, number])[] => {
  const across = hole.face === 'y' ? 0 : 1;
  const along = across === 0 ? 1 : 0;
  const layer = part.layers.find(({ from, to }) => from <= hole.at[1] && hole.at[1] <= to);
  const rings = layer ? [layer.profile.outer, ...layer.profile.holes] : [];
  const met = rings
    .map((ring) => flatten(ring, CHORD))
    .flatMap((points) =>
      points.flatMap((p, i) => {
        const q = points[(i + 1) % points.length] ?? p;
        if (p[across] > hole.at[0] === q[across] > hole.at[0]) return [];
        const share = (hole.at[0] - p[across]) / (q[across] - p[across]);
        return [p[along] + share * (q[along] - p[along]) - origin[along]];
      }),
    )
    .sort((a, b) => a - b);
  const end = hole.depth === 'through' ? Infinity : hole.depth;
  return met
    .flatMap((from, i) => (i % 2 === 0 ? [[from, Math.min(met[i + 1] ?? from, end)] as const] : []))
    .filter(([from, to]) => to > from);
};

/**
 * Hidden edges of a cross hole seen from its side, on the paper by `put` (along its face, into the
 * part from `origin`, the corner from which part and hole are told).
 */
export const drilledLines = (
  part: Part,
  hole: CrossHole,
  origin: Vec2,
  k: number,
  put: (along: number, into: number) => Vec2,
): Item[] => {
  const r = (hole.size / 2) * k;
  const stretches = drilled(part, hole, origin).map(([from, to]) => [from * k, to * k] as const);
  const [first, last] = [stretches[0]?.[0] ?? 0, stretches.at(-1)?.[1] ?? 0];
  return [
    ...stretches.flatMap(([from, to]) =>
      [-r, r].map((side) => line(put(side, from), put(side, to), 'hidden')),
    ),
    ...(hole.depth === 'through' ? [] : [line(put(-r, last), put(r, last), 'hidden')]),
    line(put(0, first - 2), put(0, last + 2), 'centre'),
  ];
};
