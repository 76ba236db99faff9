import { placeOn } from '../../blade/place.ts';
import type { Blade } from '../../blade/schema.ts';
import { shapeOf, type Shape } from '../../blade/shape.ts';
import type { GrindLine } from '../../family/family.ts';
import type { Vec2 } from '../../geometry/vector.ts';
import { sound, type Picture, type PictureLabel } from '../draw/picture.ts';
import { sideView } from './blade.ts';

type Spot = GrindLine['places'][number];

/** The point of the side view at a height above the edge, along the section through u. */
const above = (shape: Shape, u: number, height: number): Vec2 => {
  const { edge, spine, height: whole } = placeOn(shape, u);
  const share = whole > 0 ? Math.min(1, height / whole) : 0;
  return [edge[0] + (spine[0] - edge[0]) * share, -(edge[1] + (spine[1] - edge[1]) * share)];
};

/** Heel, middle, last place, and the place of the largest deviation, without repeats. */
const told = (places: readonly Spot[]): Spot[] => {
  const worst = places.reduce<Spot | undefined>(
    (most, spot) =>
      most === undefined || Math.abs(spot.deviation) > Math.abs(most.deviation) ? spot : most,
    undefined,
  );
  const picks = [places[0], places[Math.floor(places.length / 2)], places.at(-1), worst];
  return [...new Set(picks.filter((spot) => spot !== undefined))];
};

/**
 * One side of a blade with the grind line it gets and the one wanted. The left side is drawn as
 * it is seen from the left: tip to the left.
 */
export const grindMap = (
  name: string,
  blade: Blade,
  line: GrindLine,
  say: (deviation: number) => string,
): Picture => {
  const shape = shapeOf(blade);
  const flip = line.side === 'left' ? -1 : 1;
  const turn = ([x, y]: Vec2): Vec2 => [flip * x, y];
  const along = (height: (spot: Spot) => number): Vec2[] =>
    line.places.map((spot) => turn(above(shape, spot.u, height(spot))));
  const spots = told(line.places);
  return sound({
    name,
    lines: [
      { points: sideView(shape).map(turn), closed: true, role: 'blade' },
      { points: along((spot) => spot.wanted), closed: false, role: 'wanted' },
      { points: along((spot) => spot.bevelHeight), closed: false, role: 'ground' },
    ],
    discs: spots.map((spot) => ({
      centre: turn(above(shape, spot.u, spot.bevelHeight)),
      radius: shape.length / 150,
      role: 'mark',
    })),
    labels: spots.map((spot): PictureLabel => {
      const at = turn(above(shape, spot.u, spot.bevelHeight));
      // The figures at the ends stay inside the drawing.
      const share = (flip > 0 ? at[0] : at[0] + shape.length) / shape.length;
      const anchor = share < 0.1 ? 'start' : share > 0.9 ? 'end' : 'middle';
      return { at, text: say(spot.deviation), anchor, above: true };
    }),
    measures: [],
  });
};
