import type { Blade, Side } from '../blade/schema.ts';
import type { Shape } from '../blade/shape.ts';
import type { Stroke } from '../grind/spine-rest/windows.ts';
import type { Field, Resolution } from './field.ts';
import type { CarriageHold } from './hold/carriage.ts';
import type { EdgeRestBody } from './hold/edge-stand.ts';
import type { Reached } from './hold/hold.ts';
import type { SpineRestBody } from './hold/spine-settle.ts';
import type { Strip } from './hold/strip.ts';
import type { Surface } from './surface.ts';

/** A pass on a spine rest. */
export type SpineRestPass = VirtualPass<SpineRestHolding>;

/** How a blade is held in one pass, by family. */
export type Holding = SpineRestHolding | EdgeRestHolding | CarriageHolding;

export interface SpineRestHolding {
  readonly kind: 'spine-rest';
  readonly body: SpineRestBody;
  /** From where the seat meets the abrasive face to the step, mm. */
  readonly setoff: number;
  /** A strip the blade carries on its far face, when the step meets that. */
  readonly strip?: Strip;
}

/** Edge down before a wheel: the pass stops at a depth, not at an edge thickness. */
export interface EdgeRestHolding {
  readonly kind: 'edge-rest';
  readonly body: EdgeRestBody;
  /** Depth of the hollow below the face the blade came with, mm. */
  readonly depth: number;
}

/** Clamped on a carriage that its fence stops; mm and degrees, see `carriageHold`. */
export interface CarriageHolding extends Pick<
  CarriageHold,
  'angle' | 'place' | 'turn' | 'edgeHeight'
> {
  readonly kind: 'carriage';
}

/** One belt on one side. */
export interface VirtualPass<H extends Holding = Holding> {
  readonly id: string;
  readonly side: Side;
  readonly holding: H;
  readonly surface: Surface;
  /** Edge thickness to stop at, both sides together, mm. */
  readonly edge: number;
  /** Width of the belt and the places of the blade that come before its middle, mm. */
  readonly stroke: Stroke;
}

/** The blade as it comes: an unground bar, or with bevels ground before. */
export type Start =
  | { readonly kind: 'bar' }
  | {
      readonly kind: 'ground';
      /** Angle of each side's first bevel at place u, degrees; undefined: not ground. */
      readonly angle: { readonly [side in Side]: ((u: number) => number) | undefined };
      /** Edge thickness they leave, both sides together, mm. */
      readonly edge: number;
    };

export interface VirtualInput {
  readonly blade: Blade;
  readonly passes: readonly VirtualPass[];
  readonly start: Start;
  readonly resolution: Resolution;
}

/** What one pass did. */
export interface PassResult {
  readonly pass: VirtualPass;
  /** Both faces after it. */
  readonly after: Field;
  /** Metal it took, mm^3. */
  readonly volume: number;
  /** The poses in which the cut stopped, along the stroke, as the blade at last stood. */
  readonly reached: readonly Reached[];
  /** Places of the stroke at which the blade could not stand in its contacts. */
  readonly missed: readonly number[];
  /** Poses of earlier strokes, while the spine was still being ground. */
  readonly before: readonly Reached[];
}

export interface VirtualGrind {
  readonly shape: Shape;
  readonly blank: Field;
  /** As it came to the first pass. */
  readonly start: Field;
  readonly passes: readonly PassResult[];
  readonly finished: Field;
}
