import { clearanceHole, type Vec2 } from '../../../src/family/index.ts';
import { THREAD } from '../layout/threads.ts';
import { middle } from '../needs.ts';
import { from, words, type Context } from './context.ts';
import { slots } from './holes.ts';

/** Guide slot and locking slots of the step plate, long enough for its whole travel. */
export const guideHoles = ({ l, s, v }: Context) => {
  const { front, travel, pins, slotWidth } = l.slide;
  const [first, last] = pins;
  const centre: Vec2 = [0, middle({ min: first, max: last }) - front];
  const p = words.purpose;
  const { diameter, standard } = clearanceHole(THREAD.main, 'normal');
  if (v.guide === 'strips') return [];
  return [
    ...slots('guide', [centre], (last - first) / 2 + travel, slotWidth, p.guideSlot),
    ...slots('lock', from(front)(s.lock), travel, diameter, `${p.lockSlot} (${standard})`),
  ];
};
