import type { Design } from '../../../src/document/schema.ts';
import type { BladePose } from '../../../src/family/index.ts';
import { shift } from '../../../src/geometry/frame.ts';
import { examplesOf } from '../../family/examples.ts';

/** A shipped design, by the beginning of its file's name. */
export const designOf = (family: string, name: string): Design => {
  const found = examplesOf(family).find(({ file }) => file.startsWith(name));
  if (!found) throw new Error(`no example ${name}`);
  return found.design;
};

type Poses = (setting: string, blade: string) => readonly BladePose[];

/** The blade at one end of its stroke shifted along it. */
export const strokeBy =
  (poses: Poses, end: 'heel' | 'tip', by: number): Poses =>
  (setting, blade) => {
    const all = poses(setting, blade);
    const at = end === 'heel' ? 0 : all.length - 1;
    return all.map((pose, i) =>
      i === at ? { ...pose, frame: shift(pose.frame, [by, 0, 0]) } : pose,
    );
  };

export interface Planned {
  readonly plan: {
    readonly settings: readonly unknown[];
    readonly lines: readonly { readonly side: string }[];
  };
}
type SettingOf<Q extends Planned> = Q['plan']['settings'][number];
type LineOf<Q extends Planned> = Q['plan']['lines'][number];

/** Settings of a plan changed alike. */
export const settingsBy = <Q extends Planned>(
  q: Q,
  change: (setting: SettingOf<Q>) => SettingOf<Q>,
): Q => ({ ...q, plan: { ...q.plan, settings: q.plan.settings.map(change) } });

/** Grind lines of one side changed alike. */
export const linesBy = <Q extends Planned>(
  q: Q,
  side: string,
  change: (line: LineOf<Q>) => LineOf<Q>,
): Q => ({
  ...q,
  plan: {
    ...q.plan,
    lines: q.plan.lines.map((line) => (line.side === side ? change(line) : line)),
  },
});

/** Two settings are enough to be wrong in, and quicker than all. */
export const short = <Q extends Planned>(q: Q): Q => ({
  ...q,
  plan: { ...q.plan, settings: q.plan.settings.slice(0, 2) },
});
