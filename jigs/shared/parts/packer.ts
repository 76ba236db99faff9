import {
  capScrew,
  rounded,
  chain,
  type PlatePart,
  type Result,
} from '../../../src/family/index.ts';
import { SIZE } from '../layout/sizes.ts';
import { THREAD } from '../layout/threads.ts';
import { cornerRadius, from, plate, together, words, type Context } from './context.ts';
import { passage, round } from './holes.ts';
import { indexLine } from './scale.ts';

/** The packer: carries the step level with the seat, behind the nose. */
export const packer = (c: Context): Result<PlatePart> => {
  const { v, l, s, mount } = c;
  const { half, front, back } = l.packer;
  const at = from(front);
  const strips = v.guide === 'strips';
  const p = words.purpose;
  const relief = mount.kind === 'from-above' ? mount.at : [];
  const holes = [
    ...(strips ? [] : passage('lock', at(s.lock), THREAD.main, p.lockPassage)),
    ...round('pin', at(s.pins), SIZE.pinHole, p.guidePin(SIZE.pinHole, SIZE.guidePin)),
    ...passage('packer', at(s.packer), THREAD.main, strips ? p.stripPassage : p.packerPassage),
    ...passage('bracket', at(s.bracket), THREAD.main, p.bracketPassage),
    ...round('mount', at(relief), capScrew(mount.thread).headDiameter + 1.5, p.mountRelief),
  ];
  const outline = rounded(
    [
      [-half, 0],
      [half, 0],
      [half, back - front],
      [-half, back - front],
    ],
    cornerRadius(c),
  );
  return chain(outline, (loop) =>
    plate(c, {
      id: 'packer',
      name: words.names.packer,
      thickness: v.plate,
      outline: loop,
      holes,
      engraving: strips ? [] : indexLine(c, front),
      notes: together(c),
    }),
  );
};
