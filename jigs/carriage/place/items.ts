import { chain, frame, ok, type Frame, type Result, type Vec3 } from '../../../src/family/index.ts';
import type { Context } from '../context.ts';
import { BAR, FOOT } from '../layout/sizes.ts';
import type { Group, Item } from './item.ts';
import { screwItems } from './screws.ts';

const X: Vec3 = [1, 0, 0];
const Y: Vec3 = [0, 1, 0];
const Z: Vec3 = [0, 0, 1];

const item = (
  name: string,
  group: Group,
  at: Frame,
  touches: readonly string[],
  part = name,
): Item => ({ name, part, group, frame: at, touches });

/** Plates of base and fence, seat frame. */
const onRest = ({ v, l, mount, restThickness }: Context): Item[] => {
  const ys = mount.at.filter(([x]) => x > 0).map(([, y]) => y);
  const bars = mount.kind === 'bars' ? ys : [];
  return [
    item('base', 'base', frame([0, l.base.front, -v.base]), ['fence', 'foot-bar', 'heel-screw']),
    item('fence', 'fence', frame([-l.fence.half, l.fence.rear - l.fence.depth, 0]), ['foot-bar']),
    ...bars.map((y, i) =>
      item(
        `clamp-bar-${String(i + 1)}`,
        'base',
        frame([-mount.barHalf, y - BAR.width / 2, -v.base - restThickness - v.plate]),
        [],
        'clamp-bar',
      ),
    ),
  ];
};

const uprights = ({ v, l }: Context): Item[] => {
  if (!l.plates)
    return [
      item('upright-angle', 'carriage', frame([-l.half, l.front, l.soleTop], Y, Z), [
        'sole',
        'jaw',
      ]),
    ];
  const gussets = l.gusset.xs.map((x, i) =>
    item(
      `gusset-${String(i + 1)}`,
      'carriage',
      frame([x - v.plate / 2, l.gusset.from, l.soleTop], Y, Z),
      ['upright', 'sole'],
      'gusset',
    ),
  );
  return [
    item('upright', 'carriage', frame([0, l.front + v.plate, l.soleTop], X, Z), ['sole', 'jaw']),
    ...gussets,
  ];
};

/** Plates, bars and prints of the carriage, level. */
const onCarriage = (c: Context): Item[] => {
  const { v, l } = c;
  const r = FOOT.radius;
  return [
    item('sole', 'carriage', frame([0, 0, l.soleBottom]), [
      'foot-strip',
      'push-block',
      'heel-screw',
    ]),
    ...uprights(c),
    item('foot-strip', 'carriage', frame([-l.foot.stripHalf, -FOOT.stripHalf, 2 * r]), [
      'foot-bar',
    ]),
    item('foot-bar', 'carriage', frame([-l.foot.half, 0, r], Y, Z), []),
    item('push-block', 'carriage', frame([0, l.palm.front, l.palm.bottom]), []),
    item('heel-screw', 'heel', frame([0, v.length, 0]), ['knob']),
    item('knob', 'heel', frame([0, v.length, l.heel.knob]), []),
    item('jaw', 'jaw', frame([-v.jawWidth / 2, l.front - l.gripped, l.jawBottom], X, Z), []),
  ];
};

/** Everything that is placed. */
export const itemsOf = (c: Context): Result<Item[]> =>
  chain(screwItems(c), (screws) => ok([...onRest(c), ...onCarriage(c), ...screws]));
