import type { text } from '../../src/family/index.ts';
import type { Context } from './parts/context.ts';

type BuildOf = Parameters<typeof text.family.shared.build.guided>[0];

/** The screws and sizes in the sentences of building base, packer, slide and feed. */
export const buildOf = ({ v, mount, joints, feed }: Context): BuildOf => {
  const screw = (name: string): BuildOf['noseScrew'] => {
    const joint = joints.find((one) => one.name === name);
    const { count, series } = joint?.washers ?? { count: 0, series: 'plain' };
    return {
      length: joint?.length ?? NaN,
      washers: Array.from({ length: count }, () => series),
    };
  };
  const strips = v.guide === 'strips';
  return {
    strips,
    mount: mount.kind,
    mountThread: mount.thread,
    mountScrew: screw('mount-screw'),
    noseScrew: screw('nose-screw'),
    packerScrew: screw(strips ? 'guide-screw' : 'packer-screw'),
    bracketScrew: screw('bracket-screw'),
    lugScrew: screw('lug-screw'),
    lockScrew: screw('lock-screw'),
    feed: feed.length,
    guidePlay: v.guidePlay,
  };
};
