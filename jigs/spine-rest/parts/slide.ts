import { text, rounded, chain, type PlatePart, type Result } from '../../../src/family/index.ts';
import { THREAD } from '../../shared/layout/threads.ts';
import {
  cornerRadius,
  from,
  plate,
  words as shared,
  type Context,
} from '../../shared/parts/context.ts';
import { guideHoles } from '../../shared/parts/guide-holes.ts';
import { tapped } from '../../shared/parts/holes.ts';
import { scale } from '../../shared/parts/scale.ts';

const words = text.family.spineRest.parts;

/** The step plate: its front face is the step, its rear carries the lug of the feed. */
export const slide = (c: Context): Result<PlatePart> => {
  const { l, s, v, stepContact } = c;
  const { half, front, back } = l.slide;
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
  return chain(outline, (loop) =>
    plate(c, {
      id: 'step',
      name: words.names.slide,
      thickness: v.plate,
      outline: loop,
      holes: [
        ...guideHoles(c),
        ...tapped('lug', from(front)(s.lug), THREAD.lug, shared.purpose.lugThread),
      ],
      engraving: scale(c),
      finish: words.finish.slide,
      notes: [words.notes.stepFace(stepContact)],
    }),
  );
};
