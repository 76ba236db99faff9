import { rectangle, type PlatePart, type Result, type Vec2 } from '../../../src/family/index.ts';
import { BAR } from '../layout/sizes.ts';
import { plate, words, type Context, type Workshop } from './context.ts';
import { passage } from './holes.ts';

/** A clamp bar under the rest, one screw at either end outside it. */
export const bar = (
  c: Workshop & Pick<Context, 'mount'> & { readonly v: { readonly plate: number } },
): Result<PlatePart> => {
  const { mount, v } = c;
  const x = Math.abs(mount.at[0]?.[0] ?? 0);
  const half = mount.barHalf;
  const at: Vec2[] = [
    [half - x, BAR.width / 2],
    [half + x, BAR.width / 2],
  ];
  return plate(c, {
    id: 'clamp-bar',
    name: words.names.bar,
    quantity: 2,
    thickness: v.plate,
    outline: rectangle([0, 0], [2 * half, BAR.width]),
    holes: passage('screw', at, mount.thread, words.purpose.mountPassage),
    notes: [words.notes.barUnder],
  });
};
