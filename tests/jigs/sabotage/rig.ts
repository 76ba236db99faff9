import type { Design } from '../../../src/document/schema.ts';
import type { BladePose, CheckResult } from '../../../src/family/index.ts';
import type { Part } from '../../../src/model/part.ts';
import { faster, nosed, slotsBy, topped, withPart } from './change.ts';
import { turnedUntil, type Sabotage } from './describe.ts';
import { strokeBy } from './plan.ts';

/** What the checks of a rest with nose, slide and push block look at. */
interface RigQuestion {
  readonly design: Design;
  readonly parts: readonly Part[];
  readonly poses: (setting: string, blade: string) => readonly BladePose[];
}

/** The cases that a rest has whatever its slide holds. */
export const onRig = <Q extends RigQuestion>(
  /** Id of the part that slides. */
  slide: string,
  travel: (q: Q) => readonly CheckResult[],
): Sabotage<Q>[] => [
  { id: 'range/speed', change: (q, by) => ({ ...q, design: faster(q.design, by) }) },
  ...(
    [
      ['nose', 'nose', 'slot'],
      ['lock', slide, 'lock'],
      ['guide', slide, 'guide'],
    ] as const
  ).map(([name, part, slots]): Sabotage<Q> => ({
    id: `range/travel/${name}`,
    change: (q, by) => ({ ...q, parts: withPart(q.parts, part, slotsBy(slots, 2 * by)) }),
  })),
  ...[['heel', 150] as const, ['tip', -150] as const].map(([end, most]): Sabotage<Q> => ({
    id: `range/support/${end}`,
    change: (q, by, found) =>
      turnedUntil(
        travel,
        { id: `range/support/${end}`, found: found + by },
        (along) => ({ ...q, poses: strokeBy(q.poses, end, along) }),
        [0, most],
      ),
  })),
  {
    id: 'range/stick',
    change: (q, by) => ({ ...q, parts: withPart(q.parts, 'push-stick', nosed(by)) }),
  },
  {
    id: 'range/guard',
    change: (q, by) => ({ ...q, parts: withPart(q.parts, 'push-block', topped(by)) }),
  },
];
