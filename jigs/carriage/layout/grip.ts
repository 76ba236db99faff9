import {
  bevelPlace,
  cos,
  placeAt,
  radians,
  shapeOf,
  sin,
  type Blade,
  type CarriagePlan,
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

type Clamping = CarriagePlan['settings'][number]['clamping'][number];

/** What a jaw meets of a blade that may be turned, heights over the edge that is held, mm. */
export interface Held {
  /** The lower side of tang or ricasso at both ends of the jaw. */
  readonly low: number;
  readonly high: number;
  /** What stands over each place of that side. */
  readonly upright: number;
}

/**
 * The lower side of what is gripped over the width of the jaw, the blade turned by a. Of its own
 * middle, which is that of the jaw, it stands h / 2 below, and so h / 2 sin a beside it: at the lower
 * end of the jaw it is (w + h sin a) / 2 tan a lower than there, at the other (w - h sin a) / 2 tan a
 * higher.
 */
export const heldIn = (
  { at, from, to, shape }: Grip,
  { u, turn }: Pick<Clamping, 'u' | 'turn'>,
  jawWidth: number,
): Held => {
  const [c, s] = [cos(radians(turn)), sin(radians(turn))];
  const level = (from - shape.edge.value(u)) * c - (at - u) * s;
  const [aside, slope] = [(to - from) * Math.abs(s), Math.abs(s) / c];
  return {
    low: level - ((jawWidth + aside) / 2) * slope,
    high: level + ((jawWidth - aside) / 2) * slope,
    upright: (to - from) / c,
  };
};
