import { rectangle, type PlatePart, type Result, type Vec2 } from '../../../src/family/index.ts';
import { THREAD } from '../layout/threads.ts';
import { plate, words, type Context } from './context.ts';
import { passage } from './holes.ts';

/**
 * One of two equal plates that clamp tang or ricasso: x from the face that meets the nose
 * towards the tang's end, y along the blade's height.
 */
export const collar = (c: Context): Result<PlatePart> => {
  const { width, thickness, bottom, top, lower, upper, distance } = c.l.collar;
  const at: Vec2[] = [
    [width / 2, lower - bottom],
    [width / 2, upper - bottom],
  ];
  return plate(c, {
    id: 'stop-collar',
    name: words.names.collar,
    quantity: 2,
    thickness,
    outline: rectangle([0, 0], [width, top - bottom]),
    holes: passage('screw', at, THREAD.collar, words.purpose.collarPassage),
    notes: [words.notes.collar(distance)],
  });
};
