import type { Side } from '../../blade/schema.ts';
import type { Shape } from '../../blade/shape.ts';
import type { Vec2 } from '../../geometry/vector.ts';
import { polygon } from '../../geometry/loop.ts';
import type { Part } from '../../model/part.ts';
import { text } from '../../text/index.ts';
import type { Strip } from '../hold/strip.ts';
import type { StripWish } from './types.ts';

const words = text.virtual.cure.part;

/**
 * The strip as a flat profile, cut or printed as one layer as high as the strip is across the
 * blade: along its length x from its plunge end, across it y from the flank it is stuck to. The inner
 * edge follows the flank with the tape between, so a tapered blade and the strip make one line.
 */
export const stripPart = (
  shape: Shape,
  { us, out, bottom }: Strip,
  wish: StripWish,
  side: Side | 'both',
): Part => {
  const [from, to] = [us[0] ?? 0, us.at(-1) ?? 0];
  const flank = (u: number): number => shape.thickness.value(u) / 2 + wish.tape;
  const bends = shape.thickness.breaks.filter((u) => u > from && u < to);
  const inner = [from, ...bends, to];
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
      notes.step(wish.stepRadius),
    ],
    tight: [],
  };
  return make.kind === 'print'
    ? { kind: 'print', ...base }
    : { kind: 'plate', process: make.process, engraving: [], ...base };
};
