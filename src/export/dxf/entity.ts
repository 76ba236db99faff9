import type { Vertex } from '../../geometry/loop.ts';
import type { Vec2 } from '../../geometry/vector.ts';

/** What a layer is for: cut through, marked on the surface, or folded. */
export type CutLayer = 'CUT' | 'ENGRAVE' | 'BEND';

/** Colour of each layer by the usual index (7 black or white, 1 red, 5 blue). */
export const LAYER_COLOUR: Readonly<Record<CutLayer, number>> = { CUT: 7, ENGRAVE: 1, BEND: 5 };

/** The few entities a cut file is made of, in file units. */
export type Entity =
  | {
      readonly kind: 'circle';
      readonly layer: CutLayer;
      readonly centre: Vec2;
      readonly radius: number;
    }
  | { readonly kind: 'contour'; readonly layer: CutLayer; readonly vertices: readonly Vertex[] }
  | { readonly kind: 'line'; readonly layer: CutLayer; readonly a: Vec2; readonly b: Vec2 };
