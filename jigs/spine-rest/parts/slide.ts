import {
  clearanceHole,
  rounded,
  chain,
  type PlatePart,
  type Result,
  type Vec2,
} from '../../../src/family/index.ts';
import { middle } from '../needs.ts';
import { THREAD } from '../layout/stations.ts';
import { cornerRadius, from, plate, words, type Context } from './context.ts';
import { slots, tapped } from './holes.ts';
import { scale } from './scale.ts';

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

/** The step plate: its front face is the step, its rear carries the lug of the feed. */
export const slide = (c: Context): Result<PlatePart> => {
  const { l, s, v, stepContact } = c;
  const { half, front, back, slotWidth } = l.slide;
  const r = cornerRadius(c);
  const outline = rounded(
    [
      [-half, 0],
      [half, 0],
      [half, back - front],
      [-half, back - front],
    ],
    [0, 0, r, r],
  );
  const slotted = v.guide === 'slots';
  return chain(outline, (loop) =>
    plate(c, {
      id: 'step',
      name: words.names.slide,
      thickness: v.plate,
      outline: loop,
      holes: [
        ...guideHoles(c),
        ...tapped('lug', from(front)(s.lug), THREAD.lug, words.purpose.lugThread),
      ],
      engraving: scale(c),
      finish: words.finish.slide,
      notes: [words.notes.stepFace(stepContact), words.notes.stepParallel],
      tight: slotted
        ? [words.tight.front, words.tight.guideSlot(slotWidth, v.guidePlay)]
        : [words.tight.front, words.tight.slideEdges],
    }),
  );
};
