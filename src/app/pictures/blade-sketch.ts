import { wantedHeightAt, wantedOn } from '../../blade/bevel.ts';
import { placeOn } from '../../blade/place.ts';
import type { Blade, Side } from '../../blade/schema.ts';
import { shapeOf, type Shape } from '../../blade/shape.ts';
import type { Vec2 } from '../../geometry/vector.ts';
import { placesAlong, sideView } from './blade.ts';

/** The side that is drawn: one that is ground, the left one where both are. */
const drawnSide = ({ bevels }: Blade): Side => (bevels.left.kind === 'none' ? 'right' : 'left');

/** Height of the wanted grind line above the edge, mm, where the blade is `height` mm high. */
const lineAt = (shape: Shape): ((height: number) => number) => {
  const { blade } = shape;
  const side = drawnSide(blade);
  const bevel = blade.bevels[side];
  const wanted = wantedOn(shape, side);
  if (bevel.kind === 'hollow') return (height) => Math.min(bevel.centre, height);
  return (height) => (wanted ? wantedHeightAt(blade.line.follow, wanted, height) : 0);
};

/** How much of the tang is drawn, mm. */
const STUB = 25;

/** A blade from its side without dimensions, tang and wanted grind line with it; y down, mm. */
export interface BladeSketch {
  readonly outline: readonly Vec2[];
  readonly tang: readonly Vec2[];
  /** The grind line that is wanted; the middle of a hollow. */
  readonly line: readonly Vec2[];
}

export const bladeSketch = (blade: Blade): BladeSketch => {
  const shape = shapeOf(blade);
  const { tang, ricasso } = blade;
  const height = lineAt(shape);
  const [right, left] = [-ricasso, -ricasso - Math.min(tang.length, STUB)];
  const [top, bottom] = [tang.drop, tang.drop + tang.height];
  return {
    outline: sideView(shape).map(([x, y]) => [x, -y]),
    tang: [
      [right, top],
      [left, top],
      [left, bottom],
      [right, bottom],
    ],
    line: placesAlong(shape)
      .filter((u) => u >= 0)
      .map((u): Vec2 => {
        const { edge, spine, height: whole } = placeOn(shape, u);
        const share = whole > 0 ? height(whole) / whole : 0;
        return [edge[0] + (spine[0] - edge[0]) * share, edge[1] + (spine[1] - edge[1]) * share];
      }),
  };
};
