import type { Vec2 } from '../geometry/vector.ts';
import type { Box } from './box.ts';

/**
 * A drawing sheet as plain data, free of any file format. Coordinates are paper millimetres,
 * x right and y UP from the lower left corner of the trimmed sheet.
 */
export interface Sheet {
  readonly id: string;
  readonly title: string;
  /** Trimmed size, mm. */
  readonly size: Vec2;
  readonly items: readonly Item[];
}

/** Line types and widths of ISO 128: one name a use, so that no width is chosen ad hoc. */
export type Stroke =
  'visible' | 'hidden' | 'centre' | 'dimension' | 'phantom' | 'hatch' | 'frame' | 'cut' | 'table';

export type Item =
  | { readonly kind: 'line'; readonly a: Vec2; readonly b: Vec2; readonly stroke: Stroke }
  | { readonly kind: 'polyline'; readonly points: readonly Vec2[]; readonly stroke: Stroke }
  | {
      readonly kind: 'arc';
      readonly centre: Vec2;
      readonly radius: number;
      /** Degrees anticlockwise from +x; the arc runs anticlockwise from `from` to `to`. */
      readonly from: number;
      readonly to: number;
      readonly stroke: Stroke;
    }
  | {
      readonly kind: 'circle';
      readonly centre: Vec2;
      readonly radius: number;
      readonly stroke: Stroke;
    }
  /** A filled region: arrowheads (ink) or an opaque face that hides what was drawn before (paper). */
  | {
      readonly kind: 'fill';
      readonly points: readonly Vec2[];
      readonly tone: 'ink' | 'paper' | 'tint';
    }
  /** Black rectangles that abut without a seam: the dark modules of a code to scan. */
  | { readonly kind: 'blocks'; readonly boxes: readonly Box[] }
  | {
      readonly kind: 'text';
      readonly at: Vec2;
      readonly text: string;
      /** Letter height by ISO 3098-1, mm. */
      readonly height: number;
      readonly align: 'left' | 'centre' | 'right';
      /** Degrees anticlockwise. */
      readonly angle: number;
      readonly bold: boolean;
    };
