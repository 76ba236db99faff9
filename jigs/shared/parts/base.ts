import {
  rounded,
  chain,
  type PlatePart,
  type Result,
  type Vec2,
} from '../../../src/family/index.ts';
import { SIZE } from '../layout/sizes.ts';
import { THREAD } from '../layout/stations.ts';
import { cornerRadius, from, plate, words, type Context } from './context.ts';
import { passage, round, tapped } from './holes.ts';

/** Radius of the corners: two of them share each short edge at the ears. */
const radiusOf = (c: Context): number => {
  const { l, mount } = c;
  const edges = [mount.earHalf - l.base.half, mount.earFrom - l.base.front];
  const isPlain = mount.earHalf <= l.base.half;
  return Math.min(cornerRadius(c), ...(isPlain ? [] : edges.map((edge) => edge / 2)));
};

/** Corners of the base in plan: a rectangle, or with ears for clamp bars wider than it. */
const corners = ({ l, mount }: Context): Vec2[] => {
  const { half, front, back } = l.base;
  const depth = back - front;
  if (mount.earHalf <= half) {
    return [
      [-half, 0],
      [half, 0],
      [half, depth],
      [-half, depth],
    ];
  }
  const ear = mount.earFrom - front;
  const wide = mount.earHalf;
  return [
    [-half, 0],
    [half, 0],
    [half, ear],
    [wide, ear],
    [wide, depth],
    [-wide, depth],
    [-wide, ear],
    [-half, ear],
  ];
};

/** The base: holds every thread, lies on the rest. */
export const base = (c: Context): Result<PlatePart> => {
  const { v, l, s, mount } = c;
  const at = from(l.base.front);
  const strips = v.guide === 'strips';
  const p = words.purpose;
  const holes = [
    ...tapped('nose', at(s.nose), THREAD.main, p.noseScrew),
    ...(strips ? [] : tapped('lock', at(s.lock), THREAD.main, p.lockThread)),
    ...round('pin', at(s.pins), SIZE.pinHole, p.guidePin(SIZE.pinHole, SIZE.guidePin)),
    ...tapped('packer', at(s.packer), THREAD.main, strips ? p.stripThread : p.packerThread),
    ...tapped('bracket', at(s.bracket), THREAD.main, p.bracketThread),
    ...(mount.kind === 'from-above'
      ? passage('mount', at(mount.at), mount.thread, p.mountPassage)
      : tapped('mount', at(mount.at), mount.thread, p.mountThread)),
  ];
  return chain(rounded(corners(c), radiusOf(c)), (outline) =>
    plate(c, {
      id: 'base',
      name: words.names.base,
      thickness: v.base,
      outline,
      holes,
      notes: [words.notes.fromBelow, words.notes.transfer],
      tight: strips ? [] : [words.tight.pinHoles],
    }),
  );
};
