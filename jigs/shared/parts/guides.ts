import { rectangle, type PlatePart, type Result, type Vec2 } from '../../../src/family/index.ts';
import { GUIDE } from '../layout/sizes.ts';
import { THREAD } from '../layout/threads.ts';
import { plate, words, type Context } from './context.ts';
import { passage, tapped } from './holes.ts';
import { indexLine } from './scale.ts';

/**
 * The strip right of the step, moved out by half the play within its oversize holes; the left one is
 * the same piece turned round.
 */
export const strip = (c: Context): Result<PlatePart> => {
  const { l, s, v } = c;
  const { front, back, inner } = l.slide.strips;
  const local = s.packer
    .filter(([x]) => x > 0)
    .map(([x, y]): Vec2 => [x - l.slide.half, y - front]);
  const engraving = indexLine(c, front).map((line) => line.map(([x, y]): Vec2 => [x - inner, y]));
  return plate(c, {
    id: 'guide-strip',
    name: words.names.strip,
    quantity: 2,
    thickness: v.plate,
    outline: rectangle([0, 0], [l.packer.half - l.slide.half, back - front]),
    holes: passage('screw', local, THREAD.main, words.purpose.stripAdjust, 'loose'),
    engraving,
    notes: [words.notes.sameSheet, words.notes.keeperShim],
  });
};

/** A bar across both strips that holds the step down and carries its locking screw. */
export const keeper = (c: Context): Result<PlatePart> => {
  const { l, s, v } = c;
  const { half } = l.packer;
  const x = Math.abs(s.packer[0]?.[0] ?? 0);
  const ends: Vec2[] = [
    [half - x, GUIDE.keeper / 2],
    [half + x, GUIDE.keeper / 2],
  ];
  return plate(c, {
    id: 'keeper',
    name: words.names.keeper,
    quantity: 2,
    thickness: v.plate,
    outline: rectangle([0, 0], [2 * half, GUIDE.keeper]),
    holes: [
      ...passage('screw', ends, THREAD.main, words.purpose.stripPassage),
      ...tapped('lock', [[half, GUIDE.keeper / 2]], THREAD.main, words.purpose.lockThread),
    ],
    notes: [words.notes.keeperLock],
  });
};
