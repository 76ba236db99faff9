import {
  chain,
  rectangle,
  rounded,
  type Hole,
  type PlatePart,
  type Result,
  type Vec2,
} from '../../../src/family/index.ts';
import { plate } from '../../shared/parts/context.ts';
import { passage, tapped } from '../../shared/parts/holes.ts';
import type { Context } from '../context.ts';
import { FOOT, GUSSET, SOLE } from '../layout/sizes.ts';
import { roundingOf, words } from './words.ts';

/** Rectangular slots for tabs, `long` by the sheet's thickness and the play, about their middles. */
export const tabSlots = (
  { v }: Context,
  at: readonly Vec2[],
  along: 'x' | 'y',
  long: number = GUSSET.tab,
): Hole[] =>
  at.map(([x, y], i): Hole => {
    const [wide, high] = [v.plate + v.tabPlay, long + v.tabPlay];
    const [dx, dy] = along === 'y' ? [wide / 2, high / 2] : [high / 2, wide / 2];
    return {
      id: `tab-${String(i + 1)}`,
      loop: rectangle([x - dx, y - dy], [x + dx, y + dy]),
      at: [x, y],
      size: wide,
      slotLength: high,
      purpose: words.purpose.tabSlot(v.tabPlay),
    };
  });

/** Where the angle is screwed to the sole, carriage plan: near its ends and beside the middle. */
export const angleScrews = ({ l }: Context): Vec2[] => {
  const y = l.front + (l.angle?.leg ?? 0) - 13;
  return [-l.half + 14, -GUSSET.inner, GUSSET.inner, l.half - 14].map((x): Vec2 => [x, y]);
};

/** The sole: a band under the upright and the foot, a tail with heel screw and push block. */
export const sole = (c: Context): Result<PlatePart> => {
  const { v, l } = c;
  const { half, front, bandBack, tailBack } = l;
  const tail = SOLE.tailHalf;
  const r = roundingOf(c, v.plate);
  const corners: [Vec2, number][] = [
    [[-half, front], 0],
    [[half, front], 0],
    [[half, bandBack], r],
    [[tail, bandBack], r],
    [[tail, tailBack], r],
    [[-tail, tailBack], r],
    [[-tail, bandBack], r],
    [[-half, bandBack], r],
  ];
  const tabs = l.gusset.xs.map((x): Vec2 => [x, l.gusset.from + GUSSET.tabFrom + GUSSET.tab / 2]);
  const p = words.purpose;
  return chain(
    rounded(
      corners.map(([at]) => at),
      corners.map(([, radius]) => radius),
    ),
    (outline) =>
      plate(c, {
        id: 'sole',
        name: words.names.sole,
        thickness: v.plate,
        outline,
        holes: [
          ...passage(
            'foot',
            [
              [-l.foot.screwX, 0],
              [l.foot.screwX, 0],
            ],
            'M5',
            p.footPassage,
          ),
          ...tapped('heel', [[0, v.length]], 'M6', p.heelThread),
          ...passage(
            'palm',
            [
              [-l.palm.screwX, l.palm.screwY],
              [l.palm.screwX, l.palm.screwY],
            ],
            'M5',
            p.palmPassage,
          ),
          ...(l.plates
            ? tabSlots(c, tabs, 'y')
            : tapped('angle', angleScrews(c), 'M6', p.uprightThread)),
        ],
        notes: [
          words.notes.sole,
          words.notes.index,
          ...(l.plates ? [words.notes.kerf(v.tabPlay), words.notes.weld] : []),
        ],
      }),
  );
};

/** Strip between sole and foot bar: lifts the sole over the fence. */
export const strip = (c: Context): Result<PlatePart> => {
  const { stripHalf, screwX } = c.l.foot;
  const places: Vec2[] = [
    [stripHalf - screwX, FOOT.stripHalf],
    [stripHalf + screwX, FOOT.stripHalf],
  ];
  return plate(c, {
    id: 'foot-strip',
    name: words.names.strip,
    thickness: c.v.plate,
    outline: rectangle([0, 0], [2 * stripHalf, 2 * FOOT.stripHalf]),
    holes: passage('foot', places, 'M5', words.purpose.footPassage),
  });
};
