import {
  chain,
  cos,
  plain,
  type PlatePart,
  radians,
  type Result,
  rounded,
  text,
} from '../../../src/family/index.ts';
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

const words = text.family.spineRest.strip;

/** Its id: the straight step's drawing and files keep theirs. */
export const ROUNDED_STEP = 'step-rounded';

/** How far the front stands out beyond its rounding, mm: room for a blade that yaws. */
const NECK = 2;
/** How true the radius must be, mm, and the greatest slope of a strip that is reckoned with. */
const WITHIN = 0.2;
const SLOPE = 5;

/**
 * The step plate whose front is a half round of `radius`, foremost in the middle; everything behind
 * is as on the straight step, so either goes on the same guide. `contact`: highest place at which
 * the strip meets it, mm. A strip that slopes by b meets the round 1 / cos b - 1 of the radius
 * before its foremost line, which is how little the radius matters.
 */
export const roundedStep = (c: Context, radius: number, contact: number): Result<PlatePart> => {
  const { l, s, v } = c;
  const { half, front, back } = l.slide;
  const neck = radius + NECK;
  const corner = cornerRadius(c);
  const outline = rounded(
    [
      [-radius, 0],
      [radius, 0],
      [radius, neck],
      [half, neck],
      [half, back - front],
      [-half, back - front],
      [-half, neck],
      [-radius, neck],
    ],
    [radius, radius, 0, 0, corner, corner, 0, 0],
  );
  const error = WITHIN * (1 / cos(radians(SLOPE)) - 1);
  return chain(outline, (loop) =>
    plate(c, {
      id: ROUNDED_STEP,
      name: words.name,
      thickness: v.plate,
      outline: loop,
      holes: [
        ...guideHoles(c),
        ...tapped('lug', from(front)(s.lug), THREAD.lug, shared.purpose.lugThread),
      ],
      engraving: scale(c),
      finish: words.finish,
      notes: [
        words.notes.contact(contact),
        words.notes.tolerance(WITHIN, SLOPE, Number(plain(error, 4))),
      ],
      tight: [words.radius(radius, WITHIN)],
    }),
  );
};
