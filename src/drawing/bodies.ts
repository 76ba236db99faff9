import { place, turn, WORLD, type Frame } from '../geometry/frame.ts';
import { flatten } from '../geometry/flatten.ts';
import { oriented } from '../geometry/loop-transform.ts';
import type { Vec2, Vec3 } from '../geometry/vector.ts';
import type { Layer, Part, Placement } from '../model/part.ts';

/** One layer of a placed part: a prism in space, its contours as polygons in its own plane. */
export interface Body {
  /** Which placement it belongs to. */
  readonly owner: string;
  readonly frame: Frame;
  /** Anticlockwise. */
  readonly outer: readonly Vec2[];
  /** Clockwise. */
  readonly holes: readonly (readonly Vec2[])[];
  readonly from: number;
  readonly to: number;
  /** Whether the outline goes on above or below without an edge. */
  readonly flushAbove: boolean;
  readonly flushBelow: boolean;
  readonly min: Vec3;
  readonly max: Vec3;
  /** A line instead of a prism: the way along which a lifted part goes back. */
  readonly path?: readonly [Vec3, Vec3];
}

/** Departure of drawn polygons from curves in pictures that are not to be measured, mm. */
const CHORD = 0.01;

const EPS = 1e-6;

/** The contours of a layer as polygons in its own plane. */
interface Contours extends Pick<Body, 'outer' | 'holes'> {
  /** What tells equal outlines. */
  readonly outline: string;
}

const contours = new WeakMap<Layer, Contours>();

/** The contours of a layer, made once: a part stands in many pictures and places. */
const contoursOf = (layer: Layer): Contours => {
  const known = contours.get(layer);
  if (known) return known;
  const { outer, holes } = layer.profile;
  const made: Contours = {
    outline: JSON.stringify(outer),
    outer: flatten(oriented(outer, true), CHORD),
    holes: holes.map((hole) =>
      hole.kind === 'circle'
        ? flatten(hole, CHORD).reverse()
        : flatten(oriented(hole, false), CHORD),
    ),
  };
  contours.set(layer, made);
  return made;
};

/** The box around a placed prism. */
const extent = (
  frame: Frame,
  outer: readonly Vec2[],
  { from, to }: Layer,
): { readonly min: Vec3; readonly max: Vec3 } => {
  const min: [number, number, number] = [Infinity, Infinity, Infinity];
  const max: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  for (const [x, y] of outer)
    for (const z of [from, to]) {
      const p = place(frame, [x, y, z]);
      for (let i = 0; i < 3; i += 1) {
        min[i] = Math.min(min[i] as number, p[i] as number);
        max[i] = Math.max(max[i] as number, p[i] as number);
      }
    }
  return { min, max };
};

/** The layers of placed parts as prisms; placements of unknown parts are left out. */
export const bodiesOf = (parts: readonly Part[], placements: readonly Placement[]): Body[] => {
  const known = new Map(parts.map((part) => [part.id, part]));
  return placements.flatMap(({ part: id, name, frame }) =>
    (known.get(id)?.layers ?? []).map((layer, _, layers): Body => {
      const { outer, holes, outline } = contoursOf(layer);
      const flush = (isNext: (from: number, to: number) => boolean): boolean =>
        layers.some(
          (other) => isNext(other.from, other.to) && contoursOf(other).outline === outline,
        );
      return {
        owner: name,
        frame,
        outer,
        holes,
        from: layer.from,
        to: layer.to,
        flushAbove: flush((from) => Math.abs(from - layer.to) < EPS),
        flushBelow: flush((_from, to) => Math.abs(to - layer.from) < EPS),
        ...extent(frame, outer, layer),
      };
    }),
  );
};

/**
 * Level shafts in pieces, parted where what they pass through begins and ends, so that a piece
 * inside a hole is hidden by what is round it.
 */
export const splitThrough = (bodies: readonly Body[]): Body[] =>
  bodies.flatMap((body): Body[] => {
    const up = upOf(body);
    const i = up.findIndex((c) => Math.abs(Math.abs(c) - 1) < EPS);
    if (body.holes.length > 0 || (i !== 0 && i !== 1)) return [body];
    const inside = (x: number): boolean => x > body.min[i] + EPS && x < body.max[i] - EPS;
    // What is round it across its axis; a small part in a groove is none of it.
    const passed = bodies.filter(
      (other) =>
        other.owner !== body.owner &&
        ([0, 1, 2] as const).every((j) =>
          j === i
            ? other.min[j] < body.max[j] - EPS && other.max[j] > body.min[j] + EPS
            : other.min[j] < body.min[j] + EPS && other.max[j] > body.max[j] - EPS,
        ),
    );
    const ends = passed.flatMap(({ min, max }) => [min[i], max[i]]).filter(inside);
    const stops = [...new Set([body.min[i], ...ends, body.max[i]])].sort((a, b) => a - b);
    // From the place along the axis to the level in the body's own frame.
    const way = up[i] ?? 1;
    const level = (x: number): number =>
      way > 0 ? body.from + (x - body.min[i]) : body.from + (body.max[i] - x);
    return stops.slice(1).map((high, n): Body => {
      const low = stops[n] ?? high;
      const [from, to] = [Math.min(level(low), level(high)), Math.max(level(low), level(high))];
      return {
        ...body,
        from,
        to,
        flushBelow: from > body.from + EPS || body.flushBelow,
        flushAbove: to < body.to - EPS || body.flushAbove,
        min: at(body.min, i, low),
        max: at(body.max, i, high),
      };
    });
  });

/** A point with one of its coordinates changed. */
const at = (p: Vec3, i: 0 | 1, value: number): Vec3 =>
  i === 0 ? [value, p[1], p[2]] : [p[0], value, p[2]];

/** An upright line as a body, so that it is hidden by what stands before it. */
export const pathBody = (owner: string, path: readonly [Vec3, Vec3]): Body => ({
  owner,
  frame: WORLD,
  outer: [],
  holes: [],
  from: path[1][2],
  to: path[0][2],
  flushAbove: false,
  flushBelow: false,
  min: path[1],
  max: path[0],
  path,
});

export const upOf = (body: Body): Vec3 => turn(body.frame, [0, 0, 1]);
