import { problem, type Issue } from '../core/issue.ts';
import { fail, ok, type Result } from '../core/result.ts';
import { quantise } from '../core/units.ts';
import { flatten, type Approximation } from '../geometry/flatten.ts';
import { polygon, type Loop } from '../geometry/loop.ts';
import { containsPoint, signedArea } from '../geometry/loop-measure.ts';
import type { Vec2 } from '../geometry/vector.ts';
import { text } from '../text/index.ts';
import type { Layer } from './part.ts';
import { isInBox, outlineOf, outlinesMeet, withoutCollinear, type Outline } from './rings.ts';

/** A contour of the stack with its polygon, anticlockwise; equal contours of equal role are one. */
export interface Ring {
  readonly loop: Loop;
  readonly isHole: boolean;
  readonly points: readonly Vec2[];
  readonly outline: Outline;
  readonly polygon: Loop;
  readonly number: number;
}

/** A contour between two levels, mm. */
export interface Wall {
  readonly ring: Ring;
  readonly from: number;
  readonly to: number;
}

/** The contours of one layer, the outer one first. */
export type Sheet = readonly [Wall, ...Wall[]];

/** A stack of flat profiles whose contours are polygons and keep apart. */
export interface Stack {
  readonly sheets: readonly Sheet[];
  /** Every height at which a layer begins or ends, from below, mm. */
  readonly levels: readonly number[];
}

/** Levels closer than this are one, mm. */
const LEVEL = 1e-6;

/**
 * The layers with their contours as polygons that leave them by at most `chord` mm, corners on the
 * grid; holes inscribed or circumscribed. Fails with an Issue where there is no layer or one without
 * height, and when contours of neighbouring layers cross or touch.
 */
export const stackOf = (
  layers: readonly Layer[],
  chord: number,
  holes: Approximation,
): Result<Stack> => {
  const thin = layers.find((layer) => !(layer.to - layer.from > LEVEL));
  if (layers.length === 0 || thin !== undefined)
    return fail(
      problem('layer-without-height', '', text.model.layerWithoutHeight(thin?.from, thin?.to)),
    );
  const levels = levelsOf(layers);
  const snap = (z: number): number => levels.find((level) => Math.abs(level - z) <= LEVEL) ?? z;
  const rings: Ring[] = [];
  const ringOf = (loop: Loop, isHole: boolean): Ring => {
    const points = anticlockwiseRing(loop, chord, isHole ? holes : 'inscribed');
    const known = rings.find((one) => one.isHole === isHole && areSame(one.points, points));
    if (known !== undefined) return known;
    const outline = outlineOf(points);
    const number = rings.length;
    const ring = { loop, isHole, points, outline, polygon: polygon(points), number };
    rings.push(ring);
    return ring;
  };
  const sheets = layers.map(({ profile, ...layer }): Sheet => {
    const [from, to] = [snap(layer.from), snap(layer.to)];
    return [
      { ring: ringOf(profile.outer, false), from, to },
      ...profile.holes.map((hole) => ({ ring: ringOf(hole, true), from, to })),
    ];
  });
  const clashes = clashesOf(sheets);
  const issues = clashes.length > 0 ? clashes : levels.flatMap((z) => touchingAt(z, sheets));
  return issues.length > 0 ? fail(...issues) : ok({ sheets, levels });
};

const anticlockwiseRing = (loop: Loop, chord: number, how: Approximation): Vec2[] => {
  const onGrid = flatten(loop, chord, how).map(([x, y]): Vec2 => [quantise(x), quantise(y)]);
  const points = withoutCollinear(onGrid);
  return signedArea(loop) < 0 ? points.reverse() : points;
};

const areSame = (one: readonly Vec2[], other: readonly Vec2[]): boolean =>
  one.length === other.length &&
  one.every(([x, y], i) => x === other[i]?.[0] && y === other[i]?.[1]);

const levelsOf = (layers: readonly Layer[]): number[] => {
  const all = layers.flatMap(({ from, to }) => [from, to]).sort((a, b) => a - b);
  return all.filter((z, i) => i === 0 || z - (all[i - 1] ?? z) > LEVEL);
};

/** Whether material of the sheet lies just inside the ring (and outside the rings within it). */
export const fills = (sheet: Sheet, ring: Ring): boolean => {
  const within = ({ ring: other }: Wall): boolean => other === ring || encloses(other, ring);
  return (
    sheet.some((wall) => !wall.ring.isHole && within(wall)) &&
    !sheet.some((wall) => wall.ring.isHole && within(wall))
  );
};

export const encloses = (outer: Ring, inner: Ring): boolean => {
  const p = inner.points[0];
  return p !== undefined && isInBox(outer.outline, p) && containsPoint(outer.polygon, p);
};

/** Layers that share a height and also cross, touch or lie within each other's material. */
const clashesOf = (sheets: readonly Sheet[]): Issue[] =>
  sheets.flatMap((one, i) =>
    sheets.slice(i + 1).flatMap((other): Issue[] => {
      const [a, b] = [one[0], other[0]];
      const from = Math.max(a.from, b.from);
      if (Math.min(a.to, b.to) <= from) return [];
      const meet = one.some((p) => other.some((q) => outlinesMeet(p.ring.outline, q.ring.outline)));
      if (!meet && !fills(one, b.ring) && !fills(other, a.ring)) return [];
      return [
        problem(
          'layers-overlap',
          '',
          text.model.layersOverlap(from, nameOf(a.ring), nameOf(b.ring)),
        ),
      ];
    }),
  );

/** The rings at which material of a stack ends below a level or begins above it. */
export const ringsAt = (
  z: number,
  sheets: readonly Sheet[],
): {
  readonly below: readonly Sheet[];
  readonly above: readonly Sheet[];
  readonly rings: Ring[];
} => {
  const below = sheets.filter(([outer]) => outer.to === z);
  const above = sheets.filter(([outer]) => outer.from === z);
  return { below, above, rings: [...new Set([...below, ...above].flat().map(({ ring }) => ring))] };
};

/** The first two contours at a level that cross or touch. */
const touchingAt = (z: number, sheets: readonly Sheet[]): Issue[] => {
  const { rings } = ringsAt(z, sheets);
  for (const [i, one] of rings.entries())
    for (const other of rings.slice(i + 1))
      if (outlinesMeet(one.outline, other.outline))
        return [problem('layers-touch', '', text.model.layersTouch(z, nameOf(one), nameOf(other)))];
  return [];
};

const nameOf = ({ loop, isHole }: Ring): string =>
  loop.kind === 'circle'
    ? text.model.circleNamed(2 * loop.radius, loop.centre[0], loop.centre[1], isHole)
    : text.model.contourNamed(loop.vertices[0]?.x ?? 0, loop.vertices[0]?.y ?? 0, isHole);
