import {
  bevelPlace,
  placeAt,
  shapeOf,
  type Blade,
  type Design,
  type Shape,
} from '../../../src/family/index.ts';
import type { Values } from '../parameters.ts';

/** What the jaw meets on one blade; v as in the blade, mm. */
export interface Grip {
  readonly blade: Blade;
  readonly shape: Shape;
  /** Middle of the jaw along the blade. */
  readonly at: number;
  /** Spine side and edge side of tang or ricasso. */
  readonly from: number;
  readonly to: number;
  readonly thickness: number;
  /** The edge at the bevel place. */
  readonly edge: number;
  readonly onTang: boolean;
}

/** What the jaw grips of every blade. */
export const gripsOf = ({ blades }: Design, { jawGap, jawWidth }: Values): Grip[] =>
  blades.map((blade): Grip => {
    const shape = shapeOf(blade);
    const at = -jawGap - jawWidth / 2;
    const edge = shape.edge.value(bevelPlace(blade));
    const onTang = jawGap + jawWidth > blade.ricasso + 1e-9;
    if (onTang) {
      const { drop, height, thickness } = blade.tang;
      return { blade, shape, at, from: drop, to: drop + height, thickness, edge, onTang };
    }
    const { spine, height, thickness } = placeAt(blade, at);
    return { blade, shape, at, from: spine[1], to: spine[1] + height, thickness, edge, onTang };
  });
