import { bevelPlace, edgeOffsetsOn, wantedOn } from '../../blade/bevel.ts';
import type { Blade, Side } from '../../blade/schema.ts';
import { shapeOf, type Shape } from '../../blade/shape.ts';
import { bevelled, type EdgeSection, type Half } from './half.ts';

/** Both sides of a section as they lie on the blade. */
export type Halves = { readonly [side in Side]: Half };

/** A place of a blade as it comes to the rest. */
export interface EdgeStation {
  readonly u: number;
  /** From edge to spine, square to the edge, the spine taken parallel to it. */
  readonly height: number;
  readonly thickness: number;
  readonly halves: Halves;
}

/** The hollow wanted on one side. */
export interface HollowWish {
  readonly depth: number;
  readonly centre: number;
}

/** A blade of the family, prepared for many questions. */
export interface EdgeWork {
  readonly blade: Blade;
  readonly shape: Shape;
  readonly stations: readonly EdgeStation[];
  readonly wishes: { readonly [side in Side]: HollowWish | undefined };
  /** Indices of the bevel place and of the stations where a maker measures. */
  readonly reference: number;
  readonly heel: number;
  readonly middle: number;
}

const STEPS = 24;

/** Angle of the flat bevel a side comes with, degrees; none on unground stock. */
const bevelAngle = (shape: Shape, side: Side): number | undefined => {
  const bevel = shape.blade.bevels[side];
  return bevel.kind === 'hollow' ? bevel.angle : wantedOn(shape, side)?.angle;
};

/**
 * Both sides before any hollow: the stock, with the flat bevel a side comes with. A side without
 * one keeps its half of the stock down to the edge, and a bevel on the other side alone then has
 * the rest of the wanted edge.
 */
export const halvesOf = (shape: Shape, u: number): Halves => {
  const { edge } = shape.blade;
  const stock = shape.thickness.value(u) / 2;
  const angles = { left: bevelAngle(shape, 'left'), right: bevelAngle(shape, 'right') };
  const both = angles.left !== undefined && angles.right !== undefined;
  const shared = edgeOffsetsOn(shape, u, edge.wanted);
  const half = (side: Side): Half => {
    const angle = angles[side];
    if (angle === undefined) return { stock, bevels: [], hollows: [] };
    const at = both ? shared[side] : edge.wanted - stock;
    return { stock, bevels: [bevelled({ edge: at, angle })], hollows: [] };
  };
  return { left: half('left'), right: half('right') };
};

const heightOf = ({ spine, edge }: Shape, u: number): number =>
  (edge.value(u) - spine.value(u)) / Math.hypot(1, edge.slope(u));

/** A place lower than this holds no hollow, mm. */
const LEAST_HEIGHT = 4;

/** The places of a blade from plunge to tip: even steps, the bevel place, and where one measures. */
export const edgeWork = (blade: Blade): EdgeWork => {
  const shape = shapeOf(blade);
  const { length } = shape;
  const promised = bevelPlace(blade);
  const us = [
    ...Array.from({ length: STEPS + 1 }, (_, i) => (length * i) / STEPS),
    promised,
    length / 10,
    length / 2,
  ];
  const stations = [...new Set(us)]
    .sort((p, q) => p - q)
    .map((u): EdgeStation => ({
      u,
      height: heightOf(shape, u),
      thickness: shape.thickness.value(u),
      halves: halvesOf(shape, u),
    }))
    .filter(({ height }) => height >= LEAST_HEIGHT);
  const wish = (side: Side): HollowWish | undefined => {
    const bevel = blade.bevels[side];
    return bevel.kind === 'hollow' ? { depth: bevel.depth, centre: bevel.centre } : undefined;
  };
  const at = (u: number): number => stations.findIndex((station) => station.u === u);
  return {
    blade,
    shape,
    stations,
    wishes: { left: wish('left'), right: wish('right') },
    reference: at(promised),
    heel: at(length / 10),
    middle: at(length / 2),
  };
};

/** The section as the wheel meets it when `side` is ground. */
export const facingWheel = (height: number, halves: Halves, side: Side): EdgeSection => ({
  height,
  near: halves[side],
  far: halves[side === 'left' ? 'right' : 'left'],
});
