import {
  atan2,
  circle,
  clearanceHole,
  degrees,
  type Design,
  materialOf,
  plain,
  plate,
  type PlatePart,
  polygon,
  radians,
  type Result,
  type Side,
  tan,
  text,
  type Thread,
  type Vec2,
  widest,
} from '../../src/family/index.ts';
import type { Lean } from './lean.ts';
import { heightOf, lengthOf } from './numbers.ts';
import type { Values } from './parameters.ts';

const words = text.family.bevelGauge;

/** How far an edge runs in over the height, mm. */
const run = (height: number, tilt: number): number => height * tan(radians(tilt));

/** Corners of a gauge: foot on y = 0, left edge leaning in by one tilt, right edge by the other. */
export const cornersOf = ({ height, top }: Values, left: number, right: number): Vec2[] => {
  const from = run(height, left);
  return [
    [0, 0],
    [from + top + run(height, right), 0],
    [from + top, height],
    [from, height],
  ];
};

export const gaugeId = (index: number): string => `gauge-${String(index + 1)}`;

/** What edges that are off by a width move at the middle of the blade, degrees and mm. */
const moved = (height: number, lean: Lean, within: number): { angle: number; bevel: number } => {
  const angle = degrees(atan2(within, height));
  const u = lengthOf(lean.blade) / 2;
  return { angle, bevel: heightOf(lean, u, lean.angle - angle) - heightOf(lean, u) };
};

/** How straight the edges must be: a third of what the line may be off by (common practice). */
const tightOf = (height: number, leans: readonly [Lean, Lean]): string => {
  const most = (within: number): number =>
    Math.max(...leans.map((lean) => moved(height, lean, within).bevel));
  const allowed = Math.min(...leans.map(({ blade }) => blade.line.allowed));
  const { within } = widest((width) => most(width) <= allowed / 3);
  const { angle } = moved(height, leans[0], within);
  return words.edges(plain(within), plain(angle, 3), plain(most(within), 2), plain(allowed, 2));
};

/** The gauge of one blade. */
export const gauge = (
  { making }: Design,
  v: Values,
  index: number,
  [left, right]: readonly [Lean, Lean],
): Result<PlatePart> => {
  const { name, density } = materialOf(making.plates.material);
  const at: Vec2 = [run(v.height, left.tilt) + v.top / 2, v.height - v.top / 2];
  // Sizes of holes come from the tables, with the standard that they stand in.
  const hole = clearanceHole(v.screw as Thread);
  return plate({
    id: gaugeId(index),
    name: words.gauge(left.blade.name),
    quantity: 1,
    material: name,
    density,
    finish: words.finish,
    process: making.plates.process,
    thickness: v.thickness,
    outline: polygon(cornersOf(v, left.tilt, right.tilt)),
    holes: [
      {
        id: 'hang',
        loop: circle(at, hole.diameter / 2),
        at,
        size: hole.diameter,
        purpose: words.purpose(v.screw, hole.standard),
      },
    ],
    tight: [tightOf(v.height, [left, right])],
  });
};

/**
 * The lean of one edge as the finished plate has it, degrees from square to the foot: read from the
 * outline alone, so that a mistake in drawing the plate cannot hide.
 */
export const tiltOn = ({ layers }: PlatePart, side: Side): number | undefined => {
  const outer = layers[0]?.profile.outer;
  if (outer?.kind !== 'path') return undefined;
  const points = outer.vertices.map(({ x, y }): Vec2 => [x, y]);
  const top = Math.max(...points.map(([, y]) => y));
  const sign = side === 'left' ? 1 : -1;
  const end = (level: number): number =>
    Math.min(...points.filter(([, y]) => y === level).map(([x]) => sign * x));
  const tilt = degrees(atan2(end(top) - end(0), top));
  return Number.isFinite(tilt) ? tilt : undefined;
};
