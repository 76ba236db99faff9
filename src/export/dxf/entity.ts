import type { Vertex } from '../../geometry/loop.ts';
import type { Vec2 } from '../../geometry/vector.ts';

interface OnLayer {
  readonly layer: string;
}

/** The few entities a cut file is made of, in file units. */
export type CutEntity = OnLayer &
  (
    | { readonly kind: 'circle'; readonly centre: Vec2; readonly radius: number }
    | { readonly kind: 'contour'; readonly vertices: readonly Vertex[] }
    | { readonly kind: 'line'; readonly a: Vec2; readonly b: Vec2 }
  );

/** What a drawing needs besides. Angles are degrees, anticlockwise. */
export type Entity =
  | CutEntity
  | (OnLayer &
      (
        | {
            readonly kind: 'arc';
            readonly centre: Vec2;
            readonly radius: number;
            readonly from: number;
            readonly to: number;
          }
        | { readonly kind: 'polyline'; readonly points: readonly Vec2[] }
        | { readonly kind: 'triangle'; readonly points: readonly [Vec2, Vec2, Vec2] }
        | {
            readonly kind: 'text';
            readonly at: Vec2;
            readonly text: string;
            readonly height: number;
            readonly align: 'left' | 'centre' | 'right';
            readonly angle: number;
            readonly style: string;
          }
      ));

/** How the lines of a layer look. */
export interface LayerStyle {
  readonly name: string;
  /** The usual index: 7 black or white, 1 red, 5 blue, 8 grey. */
  readonly colour: number;
  /** Lengths of dashes and gaps in turn, mm; none for a continuous line. */
  readonly dashes?: readonly number[];
  /** Line width, mm. */
  readonly width?: number;
}

/** What a cut layer is for: cut through, marked on the surface, or folded. */
export const CUT_LAYERS: readonly LayerStyle[] = [
  { name: 'CUT', colour: 7 },
  { name: 'ENGRAVE', colour: 1 },
  { name: 'BEND', colour: 5 },
];

/** The layers that entities lie on: a file names no others. */
export const usedLayers = (
  layers: readonly LayerStyle[],
  entities: readonly Entity[],
): LayerStyle[] => layers.filter(({ name }) => entities.some(({ layer }) => layer === name));
