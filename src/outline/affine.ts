import { cos, sin, tan } from '../core/trigonometry.ts';
import { radians } from '../core/units.ts';
import type { Vec2 } from '../geometry/vector.ts';
import type { DrawnPath } from './drawn.ts';

/** x' = a x + c y + e, y' = b x + d y + f: the six numbers of SVG's matrix(). */
export type Affine = readonly [number, number, number, number, number, number];

export const IDENTITY: Affine = [1, 0, 0, 1, 0, 0];

/** First `inner`, then `outer`. */
export const after = (outer: Affine, inner: Affine): Affine => [
  outer[0] * inner[0] + outer[2] * inner[1],
  outer[1] * inner[0] + outer[3] * inner[1],
  outer[0] * inner[2] + outer[2] * inner[3],
  outer[1] * inner[2] + outer[3] * inner[3],
  outer[0] * inner[4] + outer[2] * inner[5] + outer[4],
  outer[1] * inner[4] + outer[3] * inner[5] + outer[5],
];

export const applied = ([a, b, c, d, e, f]: Affine, [x, y]: Vec2): Vec2 => [
  a * x + c * y + e,
  b * x + d * y + f,
];

export const turned = (degrees: number): Affine => {
  const [c, s] = [cos(radians(degrees)), sin(radians(degrees))];
  return [c, s, -s, c, 0, 0];
};

export const moved = (x: number, y: number): Affine => [1, 0, 0, 1, x, y];
export const stretched = (x: number, y: number): Affine => [x, 0, 0, y, 0, 0];

/** A path as it stands under an affine map. */
export const mapped = (affine: Affine, { spans, closed }: DrawnPath): DrawnPath => ({
  closed,
  spans: spans.map(({ at, straight }) => ({ straight, at: (t) => applied(affine, at(t)) })),
});

/** One function of SVG's transform attribute (SVG 1.1, 7.6) with its numbers. */
const oneOf = (name: string, n: readonly number[]): Affine | undefined => {
  const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = n;
  if (n.some((value) => !Number.isFinite(value))) return undefined;
  switch (name) {
    case 'matrix':
      return n.length === 6 ? [a, b, c, d, e, f] : undefined;
    case 'translate':
      return moved(a, b);
    case 'scale':
      return stretched(a, n.length > 1 ? b : a);
    case 'rotate':
      return n.length > 1 ? after(moved(b, c), after(turned(a), moved(-b, -c))) : turned(a);
    case 'skewX':
      return [1, 0, tan(radians(a)), 1, 0, 0];
    case 'skewY':
      return [1, tan(radians(a)), 0, 1, 0, 0];
    default:
      return undefined;
  }
};

/** The map of a transform attribute; undefined where it is not understood. */
export const transformOf = (attribute: string): Affine | undefined =>
  [...attribute.matchAll(/(\w+)\s*\(([^)]*)\)/g)].reduce<Affine | undefined>(
    (outer, [, name = '', numbers = '']) => {
      const inner = oneOf(
        name,
        numbers
          .split(/[\s,]+/)
          .filter(Boolean)
          .map(Number),
      );
      return outer && inner && after(outer, inner);
    },
    IDENTITY,
  );
