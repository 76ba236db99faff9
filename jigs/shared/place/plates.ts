import { frame } from '../../../src/family/index.ts';
import { BAR, GUIDE } from '../layout/sizes.ts';
import type { Context } from '../parts/context.ts';
import type { Item } from './item.ts';

/** Strips and keepers, where the step is guided between them. */
const guides = ({ v, l }: Context): Item[] => {
  if (v.guide !== 'strips') return [];
  const { strips, keepers } = l.slide;
  const group = 'base' as const;
  return [
    {
      name: 'guide-strip-1',
      part: 'guide-strip',
      group,
      frame: frame([strips.inner, strips.front, 0]),
      touches: ['packer', 'keeper-1', 'keeper-2', 'step'],
    },
    {
      name: 'guide-strip-2',
      part: 'guide-strip',
      group,
      frame: frame([-strips.inner, strips.back, 0], [-1, 0, 0], [0, -1, 0]),
      touches: ['packer', 'keeper-1', 'keeper-2', 'step'],
    },
    ...keepers.map((y, i): Item => ({
      name: `keeper-${String(i + 1)}`,
      part: 'keeper',
      group,
      frame: frame([-l.packer.half, y - GUIDE.keeper / 2, v.plate]),
      touches: ['guide-strip-1', 'guide-strip-2', 'step'],
    })),
  ];
};

const bars = ({ v, l, mount, restThickness }: Context): Item[] => {
  if (mount.kind !== 'bars') return [];
  const ys = mount.at.filter(([x]) => x > 0).map(([, y]) => y);
  return ys.map((y, i): Item => ({
    name: `clamp-bar-${String(i + 1)}`,
    part: 'clamp-bar',
    group: 'base',
    frame: frame([
      -mount.barHalf,
      y - BAR.width / 2,
      l.levels.baseBottom - restThickness - v.plate,
    ]),
    touches: [],
  }));
};

/** Plates, angles and prints of base, nose and step. */
export const plateItems = (c: Context): Item[] => {
  const { v, l } = c;
  const strips = v.guide === 'strips';
  const feet = strips ? ['guide-strip-1', 'guide-strip-2', 'keeper-1', 'keeper-2'] : [];
  return [
    {
      name: 'base',
      part: 'base',
      group: 'base',
      frame: frame([0, l.base.front, l.levels.baseBottom]),
      touches: ['nose', 'packer'],
    },
    {
      name: 'nose',
      part: 'nose',
      group: 'nose',
      frame: frame([0, l.nose.front, l.levels.baseTop]),
      touches: ['base', 'step'],
    },
    {
      name: 'packer',
      part: 'packer',
      group: 'base',
      frame: frame([0, l.packer.front, l.levels.baseTop]),
      touches: ['base', 'step', 'feed-bracket', ...feet.slice(0, 2)],
    },
    {
      name: 'step',
      part: 'step',
      group: 'step',
      frame: frame([0, l.slide.front, 0]),
      touches: ['nose', 'packer', 'feed-lug', 'push-block', ...feet],
    },
    ...guides(c),
    ...bars(c),
    {
      name: 'feed-bracket',
      part: 'feed-bracket',
      group: 'base',
      frame: frame([l.feed.bracketHalf, l.feed.bracketBack, 0], [0, -1, 0], [0, 0, 1]),
      touches: ['packer', 'feed-screw'],
    },
    {
      name: 'feed-lug',
      part: 'feed-lug',
      group: 'step',
      frame: frame([l.feed.lugHalf, l.slide.back, v.plate], [0, -1, 0], [0, 0, 1]),
      touches: ['step', 'feed-screw'],
    },
    {
      name: 'knob',
      part: 'knob',
      group: 'step',
      frame: frame([0, c.feed.knobY, l.feed.axisZ], [1, 0, 0], [0, 0, -1]),
      touches: ['feed-screw', 'knob-nut', 'knob-lock-nut'],
    },
    {
      name: 'push-block',
      part: 'push-block',
      group: 'hand',
      frame: frame([-l.push.half, l.push.padReach, v.plate], [0, 1, 0], [0, 0, 1]),
      touches: ['step', 'push-pad'],
    },
    {
      name: 'push-pad',
      part: 'push-pad',
      group: 'hand',
      frame: frame([-l.push.padHalf, 0, v.plate + l.push.pad], [0, 1, 0], [0, 0, 1]),
      touches: ['push-block'],
    },
  ];
};
