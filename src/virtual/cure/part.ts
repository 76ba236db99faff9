import type { Side } from '../../blade/schema.ts';
import type { Shape } from '../../blade/shape.ts';
import type { Vec2 } from '../../geometry/vector.ts';
import type { Frame } from '../../geometry/frame.ts';
import { polygon } from '../../geometry/loop.ts';
import type { Part } from '../../model/part.ts';
import { text } from '../../text/index.ts';
import type { Strip } from '../hold/strip.ts';
import type { StripWish } from './types.ts';

const words = text.virtual.cure.part;

/** Places at which the strip's inner edge has its corners: its ends, and where the taper bends. */
const innerOf = (shape: Shape, { us }: Strip): number[] => {
  const [from, to] = [us[0] ?? 0, us.at(-1) ?? 0];
  return [from, ...shape.thickness.breaks.filter((u) => u > from && u < to), to];
};

const flankWith =
  (shape: Shape, { tape }: StripWish) =>
  (u: number): number =>
    shape.thickness.value(u) / 2 + tape;

/**
 * Where the strip sits while one side is ground, as a frame from its part to the blade (u, v, w): on
 * the far face, for the right side turned over, which leaves its plunge end where it is.
 */
export const stripFrame = (shape: Shape, strip: Strip, wish: StripWish, side: Side): Frame => {
  const level = Math.min(...innerOf(shape, strip).map(flankWith(shape, wish)));
  const from = strip.us[0] ?? 0;
  return side === 'left'
    ? { origin: [from, strip.bottom, -level], x: [1, 0, 0], y: [0, 0, -1], z: [0, 1, 0] }
    : {
        origin: [from, strip.bottom + wish.height, level],
        x: [1, 0, 0],
        y: [0, 0, 1],
        z: [0, -1, 0],
      };
};

/**
 * The strip as a flat profile, cut or printed as one layer as high as the strip is across the
 * blade: along its length x from its plunge end, across it y from the flank it is stuck to. The inner
 * edge follows the flank with the tape between, so a tapered blade and the strip make one line.
 */
export const stripPart = (
  shape: Shape,
  strip: Strip,
  wish: StripWish,
  side: Side | 'both',
): Part => {
  const { us, out, bottom } = strip;
  const from = us[0] ?? 0;
  const flank = flankWith(shape, wish);
  const inner = innerOf(shape, strip);
  const level = Math.min(...inner.map(flank));
  const outline: Vec2[] = [
    ...inner.map((u): Vec2 => [u - from, flank(u) - level]),
    ...us.map((u, k): Vec2 => [u - from, (out[k] ?? 0) - level]).reverse(),
  ];
  const { make } = wish;
  const { name, finish, id, notes } = words;
  const base = {
    id: id(side),
    name: name(side),
    quantity: 1,
    material: make.material,
    density: make.density,
    finish,
    layers: [{ profile: { outer: polygon(outline), holes: [] }, from: 0, to: wish.height }],
    holes: [],
    notes: [
      notes.place(from, bottom),
      ...(side === 'both' ? [notes.turn] : []),
      notes.tape(wish.tape),
      notes.thickness(us.map((u, k) => [u - from, (out[k] ?? 0) - flank(u)])),
      notes.step(wish.stepRadius),
    ],
    tight: [],
  };
  return make.kind === 'print'
    ? { kind: 'print', ...base }
    : { kind: 'plate', process: make.process, engraving: [], ...base };
};
