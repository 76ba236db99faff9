import {
  rounded,
  chain,
  type PlatePart,
  type Result,
  type Vec2,
} from '../../../src/family/index.ts';
import { SIZE } from '../layout/sizes.ts';
import { THREAD } from '../layout/threads.ts';
import { cornerRadius, from, plate, together, words, type Context } from './context.ts';
import { passage, round, tapped } from './holes.ts';

/** A corner of the base in plan, with the radius it is rounded by, mm. */
type Corner = readonly [at: Vec2, radius: number];

/**
 * Corners of the base in plan: a rectangle, or with ears for clamp bars wider than it. Two of them
 * share each short edge at an ear, so none takes more than half of it.
 */
const corners = (c: Context): Corner[] => {
  const { l, mount } = c;
  const { half, front, back } = l.base;
  const [depth, r] = [back - front, cornerRadius(c)];
  if (mount.earHalf <= half) {
    return [
      [[-half, 0], r],
      [[half, 0], r],
      [[half, depth], r],
      [[-half, depth], r],
    ];
  }
  const ear = mount.earFrom - front;
  const wide = mount.earHalf;
  const before = Math.min(r, ear / 2);
  const beside = Math.min(before, (wide - half) / 2);
  return [
    [[-half, 0], before],
    [[half, 0], before],
    [[half, ear], beside],
    [[wide, ear], beside],
    [[wide, depth], r],
    [[-wide, depth], r],
    [[-wide, ear], beside],
    [[-half, ear], beside],
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
  const plan = corners(c);
  const sharp = plan.map(([corner]) => corner);
  const radii = plan.map(([, radius]) => radius);
  return chain(rounded(sharp, radii), (outline) =>
    plate(c, {
      id: 'base',
      name: words.names.base,
      thickness: v.base,
      outline,
      holes,
      notes: [...(mount.kind === 'from-above' ? [] : [words.notes.fromBelow]), ...together(c)],
    }),
  );
};
