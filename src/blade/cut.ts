import { tan } from '../core/trigonometry.ts';
import { radians } from '../core/units.ts';
import { edgeOffsetsOn, wantedOn } from './bevel.ts';
import type { Side } from './schema.ts';
import type { Shape } from './shape.ts';

/** One section of the blank in the plane u = constant, mm. */
export interface Station {
  readonly u: number;
  /** Where spine and edge are, v. */
  readonly spine: number;
  readonly edge: number;
  /** Thickness of the blank. */
  readonly thickness: number;
}

/** A ground surface in one section. */
export interface CutSection {
  /** Distance of the surface from the midplane at v, mm; Infinity where nothing is cut. */
  readonly at: (v: number) => number;
  /** Points that a curved surface needs between the ends of the cut; 0 for a straight one. */
  readonly inner: number;
}

/**
 * A ground surface along the blade, on one side: w counts away from the midplane whichever side
 * it is. `inner` must be the same in every section.
 */
export type Cut = (station: Station) => CutSection;

/**
 * A flat ground face, in each section a straight line that starts `offset` mm from the midplane
 * at the edge and opens by `angle` degrees towards the spine.
 */
export const flatCut =
  (face: (u: number) => { readonly offset: number; readonly angle: number }): Cut =>
  ({ u, edge }) => {
    const { offset, angle } = face(u);
    const rise = tan(radians(angle));
    return { at: (v) => offset + (edge - v) * rise, inner: 0 };
  };

/** The plane w = w0 + perU u + perV v: what one pass of a flat platen leaves. */
export const planeCut =
  (w0: number, perU: number, perV: number): Cut =>
  ({ u }) => ({ at: (v) => w0 + perU * u + perV * v, inner: 0 });

/**
 * A hollow of radius R (mm) whose axis stands at (v, w) in each section: the wheel leaves
 * w - sqrt(R^2 - (v - axis v)^2). A hollow of width c drawn with n inner points leaves the circle
 * by c^2 / (8 R (n + 1)^2).
 */
export const hollowCut =
  (
    radius: number,
    axis: (station: Station) => { readonly v: number; readonly w: number },
    inner = 24,
  ): Cut =>
  (station) => {
    const { v: centre, w } = axis(station);
    return {
      at: (v) => {
        const square = radius ** 2 - (v - centre) ** 2;
        return square > 0 ? w - Math.sqrt(square) : Infinity;
      },
      inner,
    };
  };

/**
 * The side as stated in the document, ground flat at the wanted angle down to the given edge
 * thickness (mm), in every section u = constant. None for a side that is hollow or not ground.
 */
export const wantedCut = (shape: Shape, side: Side, edgeThickness: number): Cut | undefined => {
  const wanted = wantedOn(shape, side);
  if (wanted === undefined) return undefined;
  return flatCut((u) => ({
    offset: edgeOffsetsOn(shape, u, edgeThickness)[side],
    angle: wanted.angle,
  }));
};
