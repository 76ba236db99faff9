import {
  all,
  capScrew,
  fail,
  ok,
  text,
  threadInSteel,
  washer,
  type Result,
  type Thread,
  type Vec2,
  type WasherSeries,
} from '../../../src/family/index.ts';
import { withBase } from '../bases.ts';
import type { Drawn } from './drawn.ts';
import { FEED } from './sizes.ts';
import { keeperLockLength, THREAD } from './threads.ts';

const { issues } = text.family.shared;
const { screws } = issues;

/** Screws of one kind: where they stand, what they hold, how long they are. */
export interface Joint {
  readonly name: string;
  readonly thread: Thread;
  readonly length: number;
  /** Plan places at the mean place of base and step. */
  readonly at: readonly Vec2[];
  /** Level of the face under head and washers. */
  readonly level: number;
  /** The way the shank points. */
  readonly way: 'down' | 'up';
  readonly washers: { readonly count: number; readonly series: WasherSeries };
  /** What the screws move with. */
  readonly group: 'base' | 'step';
  /** Names of the parts the screws pass, as placements. */
  readonly through: readonly string[];
}

interface Grip {
  readonly name: keyof typeof screws;
  readonly thread: Thread;
  readonly grip: number;
  /** Depth of thread there is. */
  readonly depth: number;
  readonly least: number;
  readonly most: number;
  readonly series: WasherSeries;
}

/** What is known of a joint before its screw is found. */
interface Wanted {
  readonly grip: Grip;
  readonly rest: Omit<Joint, 'name' | 'thread' | 'length' | 'washers'>;
}

/**
 * The longest screw whose end stays in its thread and that finds enough of it; washers
 * are added, up to `most`, until one of the preferred lengths fits.
 */
const fit = ({
  thread,
  grip,
  depth,
  least,
  most,
  series,
}: Grip): { length: number; count: number } | undefined => {
  const need = threadInSteel(thread);
  const { lengths } = capScrew(thread);
  const thickness = washer(thread, series).thickness;
  for (let count = least; count <= most; count += 1) {
    const from = grip + count * thickness;
    const fitting = lengths.filter((l) => l >= from + need - 1e-9 && l <= from + depth + 1e-9);
    const length = fitting.at(-1);
    if (length !== undefined) return { length, count };
  }
  return undefined;
};

/** The joints of plates, brackets and the base, whatever screws there are for them. */
const wantedOf = (c: Drawn): Wanted[] => {
  const { v, s } = c;
  const strips = v.guide === 'strips';
  const { plate, base } = v;
  const joint = (grip: Grip, rest: Wanted['rest']): Wanted => ({ grip, rest });
  const main = { thread: THREAD.main, depth: base, least: 0, most: 2, series: 'plain' } as const;
  const down = { way: 'down', group: 'base' } as const;
  return [
    joint(
      { ...main, name: 'nose-screw', grip: plate, least: 1, series: 'large' },
      { ...down, at: s.nose, level: 0, through: ['nose', 'base'] },
    ),
    strips
      ? joint(
          { ...main, name: 'guide-screw', grip: 3 * plate },
          {
            ...down,
            at: s.packer,
            level: 2 * plate,
            through: ['keeper-1', 'keeper-2', 'guide-strip-1', 'guide-strip-2', 'packer', 'base'],
          },
        )
      : joint(
          { ...main, name: 'packer-screw', grip: plate },
          { ...down, at: s.packer, level: 0, through: ['packer', 'base'] },
        ),
    ...(strips
      ? []
      : [
          joint(
            { ...main, name: 'lock-screw', grip: 2 * plate, least: 1, series: 'large' },
            { ...down, at: s.lock, level: plate, through: ['step', 'packer', 'base'] },
          ),
        ]),
    joint(
      { ...main, name: 'bracket-screw', grip: plate + FEED.wall },
      { ...down, at: s.bracket, level: FEED.wall, through: ['feed-bracket', 'packer', 'base'] },
    ),
    joint(
      { ...main, name: 'lug-screw', thread: THREAD.lug, grip: FEED.wall, depth: plate - 1 },
      {
        at: s.lug,
        level: plate + FEED.wall,
        way: 'down',
        group: 'step',
        through: ['feed-lug', 'step'],
      },
    ),
    mountJoint(c),
  ];
};

/** The joint with its screw, or why there is none and with which base there is one for every joint. */
const screwed =
  (c: Drawn) =>
  ({ grip: wanted, rest }: Wanted): Result<Joint> => {
    const { name, thread, grip, depth, least, series } = wanted;
    const found = fit(wanted);
    if (found) {
      const { length, count } = found;
      return ok({ ...rest, name, thread, length, washers: { count, series } });
    }
    const holds = (base: number): boolean =>
      wantedOf({ ...c, v: { ...c.v, base } }).every((one) => fit(one.grip) !== undefined);
    const from = grip + least * washer(thread, series).thickness;
    return fail(
      withBase('no-screw', c.making, c.v, holds, (spans) =>
        issues.noScrew(
          thread,
          { from: from + threadInSteel(thread), to: from + depth },
          screws[name],
          spans,
        ),
      ),
    );
  };

/** Every cap screw that holds plates, brackets and the base together. */
export const jointsOf = (c: Drawn): Result<Joint[]> => {
  const found = all(wantedOf(c).map(screwed(c)));
  return found.ok && c.v.guide === 'strips' ? ok([...found.value, keeperLock(c)]) : found;
};

/** The screws in the keepers, their ends pressing on the step. */
const keeperLock = ({ v, s }: Drawn): Joint => {
  const length = keeperLockLength(v.plate);
  return {
    name: 'lock-screw',
    thread: THREAD.main,
    length,
    at: s.lock,
    level: v.plate + length,
    way: 'down',
    washers: { count: 0, series: 'plain' },
    group: 'base',
    through: ['keeper-1', 'keeper-2', 'step'],
  };
};

const mountJoint = ({ v, l, mount, restThickness }: Drawn): Wanted => {
  const name = 'mount-screw';
  const { thread, at } = mount;
  if (mount.kind === 'from-above') {
    const grip = { name, thread, grip: v.base, depth: restThickness, least: 0, most: 0 } as const;
    return {
      grip: { ...grip, series: 'plain' },
      rest: {
        at,
        level: l.levels.baseTop,
        way: 'down',
        group: 'base',
        through: ['base', 'packer'],
      },
    };
  }
  const bars = mount.kind === 'bars';
  const grip = restThickness + (bars ? v.plate : 0);
  return {
    grip: { name, thread, grip, depth: v.base, least: bars ? 0 : 1, most: 3, series: 'large' },
    rest: {
      at,
      level: l.levels.baseBottom - grip,
      way: 'up',
      group: 'base',
      through: bars ? ['clamp-bar-1', 'clamp-bar-2', 'base'] : ['base'],
    },
  };
};
