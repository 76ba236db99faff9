import { atan2, tan } from '../core/trigonometry.ts';
import { degrees, radians } from '../core/units.ts';
import { placeOn } from './place.ts';
import type { Blade, Side } from './schema.ts';
import { bladeLength, shapeOf, type Shape } from './shape.ts';

/** Distance of each ground face's edge line from the midplane, mm; may be negative. */
export interface Offsets {
  readonly left: number;
  readonly right: number;
}

/**
 * How the thickness behind the edge (mm) divides between the sides at place u. It is shared by
 * `edge.shareLeft`; a side that is not ground keeps its half of the stock, T / 2, and the other
 * takes the rest, which is negative where the edge lies beyond the midplane.
 */
export const edgeOffsetsOn = (shape: Shape, u: number, edgeThickness: number): Offsets => {
  const { bevels, edge } = shape.blade;
  const half = shape.thickness.value(u) / 2;
  if (bevels.left.kind === 'none') return { left: half, right: edgeThickness - half };
  if (bevels.right.kind === 'none') return { left: edgeThickness - half, right: half };
  return {
    left: edgeThickness * edge.shareLeft,
    right: edgeThickness * (1 - edge.shareLeft),
  };
};

/** `edgeOffsetsOn` for a single question; see there. */
export const edgeOffsets = (blade: Blade, u: number, edgeThickness: number): Offsets =>
  edgeOffsetsOn(shapeOf(blade), u, edgeThickness);

/**
 * The place (u, mm) at which bevel height and bevel angle are promised: the middle of the
 * straight part of the edge; for an outline by points, and where there is no straight part, a
 * quarter of the length from the plunge.
 */
export const bevelPlace = ({ outline }: Blade): number => {
  if (outline.kind === 'dimensions' && outline.bellyStart > 0) return outline.bellyStart / 2;
  return bladeLength(outline) / 4;
};

/** What a side should be when the last belt is done, at `bevelPlace`. */
export interface Wanted {
  /** Between midplane and ground face, degrees. */
  readonly angle: number;
  /** From the edge to the grind line along the midplane, mm; the whole height when full. */
  readonly bevelHeight: number;
  /** Height of the blade there, mm. */
  readonly height: number;
}

/**
 * The wanted flat bevel of one side at `bevelPlace`, with the edge as wanted: tan a = (T/2 -
 * e_side) / b for a stated height b, or for b = H when full; b = (T/2 - e_side) / tan a for a
 * stated angle, at most H. None for a side that is hollow or not ground.
 */
export const wantedOn = (shape: Shape, side: Side, seat = 0): Wanted | undefined => {
  const { blade } = shape;
  const bevel = blade.bevels[side];
  if (bevel.kind === 'none' || bevel.kind === 'hollow') return undefined;
  const { u, height, thickness } = placeOn(shape, bevelPlace(blade), seat);
  const rise = thickness / 2 - edgeOffsetsOn(shape, u, blade.edge.wanted)[side];
  if (bevel.kind === 'angle') {
    const bevelHeight = Math.min(rise / tan(radians(bevel.angle)), height);
    return { angle: bevel.angle, bevelHeight, height };
  }
  const bevelHeight = bevel.kind === 'full' ? height : bevel.height;
  return { angle: degrees(atan2(rise, bevelHeight)), bevelHeight, height };
};

/** `wantedOn` for a single question; see there. */
export const wantedBevel = (blade: Blade, side: Side, seat = 0): Wanted | undefined =>
  wantedOn(shapeOf(blade), side, seat);

/**
 * The bevel height wanted at a place of height `height` (mm), by `line.follow`: even above the
 * edge, an even share of the height, or even below the spine; never beyond the blade.
 */
export const wantedHeightAt = (
  follow: Blade['line']['follow'],
  wanted: Wanted,
  height: number,
): number => {
  const aim = {
    edge: wanted.bevelHeight,
    share: (wanted.bevelHeight / wanted.height) * height,
    spine: height - (wanted.height - wanted.bevelHeight),
  }[follow];
  return Math.min(Math.max(aim, 0), height);
};
