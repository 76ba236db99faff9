import {
  clearanceHole,
  rounded,
  chain,
  type PlatePart,
  type Result,
} from '../../../src/family/index.ts';
import { THREAD } from '../layout/threads.ts';
import { cornerRadius, from, plate, words, type Context } from './context.ts';
import { slots } from './holes.ts';

/** The nose: its top is the seat, its side faces stop the stroke. */
export const nose = (c: Context): Result<PlatePart> => {
  const { l, s, v } = c;
  const { half, depth, front, travel } = l.nose;
  const r = cornerRadius(c);
  const { diameter, standard } = clearanceHole(THREAD.main, 'normal');
  const outline = rounded(
    [
      [-half, 0],
      [half, 0],
      [half, depth],
      [-half, depth],
    ],
    [0, 0, r, r],
  );
  const purpose = `${words.purpose.noseSlot} (${standard})`;
  return chain(outline, (loop) =>
    plate(c, {
      id: 'nose',
      name: words.names.nose,
      thickness: v.plate,
      outline: loop,
      holes: slots('slot', from(front)(s.nose), travel, diameter, purpose),
      finish: words.finish.nose,
      notes: [
        words.notes.seat,
        words.notes.sides,
        ...(c.making.plates.process === 'saw-drill' ? [words.notes.openSlots] : []),
      ],
    }),
  );
};
