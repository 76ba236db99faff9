import {
  chain,
  rounded,
  text,
  type PlatePart,
  type Result,
  type Vec2,
} from '../../../src/family/index.ts';
import { THREAD } from '../../shared/layout/threads.ts';
import { cornerRadius, from, plate, words as shared } from '../../shared/parts/context.ts';
import { tapped } from '../../shared/parts/holes.ts';
import { nose } from '../../shared/parts/nose.ts';
import { scale } from '../../shared/parts/scale.ts';
import { guideHoles } from '../../shared/parts/guide-holes.ts';
import type { EdgeContext } from '../context.ts';
import { LIP } from '../sizes.ts';

const words = text.family.edgeRest.parts;

/** The lip slide: carries lip and wear strip; guide, scale and feed as on the step plate. */
export const lipSlide = ({ rig, x, v }: EdgeContext): Result<PlatePart> => {
  const { half, front, back } = rig.l.slide;
  const r = cornerRadius(rig);
  const outline = rounded(
    [
      [-half, 0],
      [half, 0],
      [half, back - front],
      [-half, back - front],
    ],
    [0, 0, r, r],
  );
  const lip = x.screws.map((at): Vec2 => [at, x.lead + LIP.screw]);
  return chain(outline, (loop) =>
    plate(rig, {
      id: 'lip-slide',
      name: words.names.slide,
      thickness: v.plate,
      outline: loop,
      holes: [
        ...tapped('lip', lip, LIP.thread, words.purpose.lipThread),
        ...guideHoles(rig),
        ...tapped('lug', from(front)(rig.s.lug), THREAD.lug, shared.purpose.lugThread),
      ],
      engraving: scale(rig),
      finish: words.finish.slide,
      notes: [words.notes.slide],
    }),
  );
};

/** The nose under the lip slide: the spine rest's, set back to the wheel at its own level. */
export const wheelNose = ({ rig, x }: EdgeContext): Result<PlatePart> =>
  chain(nose(rig), (part) => ({
    ok: true,
    value: {
      ...part,
      name: words.names.nose,
      finish: words.finish.nose,
      notes: [words.notes.nose(x.rise)],
    },
    issues: [],
  }));
