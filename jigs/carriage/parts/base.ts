import {
  chain,
  clearanceHole,
  rectangle,
  rounded,
  type PlatePart,
  type Result,
  type Vec2,
} from '../../../src/family/index.ts';
import { plate } from '../../shared/parts/context.ts';
import { round, slots, tapped } from '../../shared/parts/holes.ts';
import type { Context } from '../context.ts';
import { BASE } from '../layout/sizes.ts';
import { roundingOf, words } from './words.ts';

/** The base: the carriage slides on it; its front is set to the belt. */
export const base = (c: Context): Result<PlatePart> => {
  const { v, l, mount } = c;
  const { half, front, back, pinX, pinY } = l.base;
  const at = (places: readonly Vec2[]): Vec2[] => places.map(([x, y]): Vec2 => [x, y - front]);
  const y = l.fence.rear - l.fence.depth / 2;
  const p = words.purpose;
  const r = roundingOf(c, v.base);
  const depth = back - front;
  const corners: Vec2[] = [
    [-half, 0],
    [half, 0],
    [half, depth],
    [-half, depth],
  ];
  return chain(rounded(corners, [0, 0, r, r]), (outline) =>
    plate(c, {
      id: 'base',
      name: words.names.base,
      thickness: v.base,
      outline,
      holes: [
        ...tapped(
          'fence',
          at([
            [-l.fence.screwX, y],
            [l.fence.screwX, y],
          ]),
          'M6',
          p.fenceThread,
        ),
        ...round(
          'stop',
          at([
            [-pinX, pinY],
            [pinX, pinY],
          ]),
          BASE.pinHole,
          p.stopPin(BASE.pinHole, BASE.pin),
        ),
        ...tapped('mount', at(mount.at), mount.thread, p.mountThread),
      ],
      finish: words.finish.base,
      notes: [words.notes.base],
    }),
  );
};

/** The fence: its rear face stops the foot; slots let it be set with every angle. */
export const fence = (c: Context): Result<PlatePart> => {
  const { half, depth, travel, screwX } = c.l.fence;
  const { diameter, standard } = clearanceHole('M6', 'normal');
  const places: Vec2[] = [
    [half - screwX, depth / 2],
    [half + screwX, depth / 2],
  ];
  return plate(c, {
    id: 'fence',
    name: words.names.fence,
    thickness: c.v.plate,
    outline: rectangle([0, 0], [2 * half, depth]),
    holes: slots('slot', places, travel, diameter, `${words.purpose.fenceSlot} (${standard})`),
    finish: words.finish.fence,
  });
};
