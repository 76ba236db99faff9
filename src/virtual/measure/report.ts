import { edgeOffsetsOn, wantedHeightAt, wantedOn } from '../../blade/bevel.ts';
import { cornerOf } from '../../blade/corner.ts';
import { placeOn } from '../../blade/place.ts';
import type { Side } from '../../blade/schema.ts';
import type { Shape } from '../../blade/shape.ts';
import type { Stroke } from '../../grind/spine-rest/windows.ts';
import type { Field } from '../field.ts';
import { edgeOf, grindLine, lineHeight } from './line.ts';

/** Edge of the blade as ground, at one place, mm. */
export interface EdgePlace {
  readonly u: number;
  readonly left: number;
  readonly right: number;
  readonly thickness: number;
  /** Over the thickness wanted, both sides together. */
  readonly standing: number;
  /** Whether the place counts: under the belt in the stroke, and half as high as the bevel place. */
  readonly steers: boolean;
}

/** Grind line of one side at one place, mm over the edge, square to the spine. */
export interface LinePlace {
  readonly u: number;
  readonly height: number;
  readonly bevelHeight: number;
  readonly wanted: number;
  readonly deviation: number;
  readonly steers: boolean;
}

/** A place has a say while it has this share of the height at the bevel place, as in the plan. */
const STEERING = 0.5;

/** How far inside the ends of a stroke the belt surely comes, mm: its edge is no knife's. */
const SURELY = 0.5;

/** What the places of a blade are judged by. */
export interface Judged {
  /** Width of the nose along the stroke: a hollow spine stands on its ends. */
  readonly seat: number;
  readonly stroke: Stroke;
}

/** Whether the belt surely comes to a place. */
export const surelyReached = ({ width, from, to }: Stroke, u: number): boolean => {
  const half = width / 2 - SURELY;
  return u >= from - half && u <= to + half;
};

/** Whether a place has a say: reached by the belt, high enough, and before a cut-off end. */
const steersAt = (shape: Shape, { stroke }: Judged, promised: number) => {
  const end = cornerOf(shape) ?? Infinity;
  return (u: number, height: number): boolean =>
    surelyReached(stroke, u) && height >= STEERING * promised && u <= end;
};

/** Height where bevels are promised, from whichever side is ground. */
const promisedHeight = (shape: Shape, seat: number): number =>
  (wantedOn(shape, 'left', seat) ?? wantedOn(shape, 'right', seat))?.height ?? 0;

/** The edge along the blade against a thickness wanted, both sides together. */
export const edgePlaces = (
  shape: Shape,
  field: Field,
  wanted: number,
  judged: Judged,
): EdgePlace[] => {
  const [left, right] = [edgeOf(field, 'left'), edgeOf(field, 'right')];
  const steers = steersAt(shape, judged, promisedHeight(shape, judged.seat));
  return Array.from(field.us).flatMap((u, i) => {
    if (u < 0) return [];
    const [l, r] = [left[i] ?? 0, right[i] ?? 0];
    const offsets = edgeOffsetsOn(shape, u, wanted);
    const height = shape.edge.value(u) - shape.spine.value(u);
    const standing = l + r - offsets.left - offsets.right;
    return [{ u, left: l, right: r, thickness: l + r, standing, steers: steers(u, height) }];
  });
};

/**
 * The grind line of one side against the wanted one, by the blade's own wish, on any field with
 * these columns: what its places are on the blade is found once. None for a side that is hollow or
 * not ground.
 */
export const linesOn = (
  shape: Shape,
  { us }: Field,
  side: Side,
  seat: number,
): ((field: Field, stroke: Stroke) => LinePlace[]) => {
  const wanted = wantedOn(shape, side, seat);
  if (wanted === undefined) return () => [];
  const places = Array.from(us)
    .filter((u) => u >= 0)
    .map((u) => placeOn(shape, u, seat));
  return (field, stroke) => {
    const line = grindLine(field, side);
    const steers = steersAt(shape, { seat, stroke }, wanted.height);
    return places.map((place): LinePlace => {
      const { u, height } = place;
      const bevelHeight = lineHeight(field, line, place);
      const aim = wantedHeightAt(shape.blade.line.follow, wanted, height);
      const deviation = bevelHeight - aim;
      return { u, height, bevelHeight, wanted: aim, deviation, steers: steers(u, height) };
    });
  };
};

/** `linesOn` for a single question. */
export const linePlaces = (
  shape: Shape,
  field: Field,
  side: Side,
  { seat, stroke }: Judged,
): LinePlace[] => linesOn(shape, field, side, seat)(field, stroke);

/** The greatest of a row of lengths in size, and where; 0 at 0 for none. */
export const greatest = <T extends { readonly u: number }>(
  places: readonly T[],
  value: (place: T) => number,
): { readonly u: number; readonly value: number } =>
  places.reduce(
    (most, place) =>
      Math.abs(value(place)) > Math.abs(most.value) ? { u: place.u, value: value(place) } : most,
    { u: 0, value: 0 },
  );
