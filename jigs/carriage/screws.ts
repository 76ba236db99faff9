import {
  all,
  buttonScrew,
  capScrew,
  chain,
  clearanceHole,
  fail,
  ok,
  pitchOf,
  problem,
  setScrew,
  text,
  threadInSteel,
  washer,
  type HeadedScrew,
  type Making,
  type Result,
  type Thread,
  type WasherSeries,
} from '../../src/family/index.ts';
import { widthOf } from '../shared/layout/choose-mount.ts';
import type { Mount, PlacedRest } from '../shared/layout/mount.ts';
import { withBase } from '../shared/bases.ts';
import type { Layout } from './layout/layout.ts';
import { FOOT } from './layout/sizes.ts';
import type { Values } from './parameters.ts';

const { names } = text.family.carriage.parts;
const words = text.family.carriage.issues;

/** How far a mounting screw ends below the top of the base, on which things slide, mm. */
const FLUSH = 0.15;
/**
 * Threads at the end of a blind hole in which no screw turns: the lead of a bottoming tap (1.5 to 2
 * threads, chamfer form E of DIN 2197, from memory).
 */
const BLIND_LEAD = 2;
/** Most washers under one head. */
const MOST_WASHERS = 4;
/** What a plain washer reaches over a slot, both sides together (common practice), mm. */
const OVER_SLOT = 5;

/** A screw and the washers under its head, from the part outwards. */
export interface Washered {
  readonly length: number;
  readonly rings: readonly WasherSeries[];
}

/** Lengths of the screws, chosen from the tables, mm. */
export interface Screws {
  readonly foot: Washered;
  readonly palm: number;
  readonly clamp: Washered;
  readonly jack: number;
  readonly fence: Washered;
  readonly mount: Washered;
  readonly angle: Washered;
}

const NONE: Washered = { length: 0, rings: [] };

/** What washers add under a head, mm. */
export const ringsHeight = (thread: Thread, rings: readonly WasherSeries[]): number =>
  rings.reduce((sum, series) => sum + washer(thread, series).thickness, 0);

/** Every stack of washers, the lowest count first; of equal counts those with more of `first`. */
const stacks = (first: WasherSeries): readonly (readonly WasherSeries[])[] => {
  const other = first === 'plain' ? 'large' : 'plain';
  return Array.from({ length: MOST_WASHERS + 1 }, (_, count) =>
    Array.from({ length: count + 1 }, (__, others) =>
      Array.from({ length: count }, (___, i) => (i < count - others ? first : other)),
    ),
  ).flat();
};

interface Wanted {
  readonly row: HeadedScrew;
  /** Held between head and thread without washers, and the depth of thread there is, mm. */
  readonly grip: number;
  readonly depth: number;
  readonly first: WasherSeries;
  readonly may: (rings: readonly WasherSeries[]) => boolean;
}

/** The longest listed screw through `grip` that finds its thread and no more than `depth`, mm. */
const lengthFor = (row: HeadedScrew, grip: number, least: number, depth: number) =>
  row.lengths.findLast((x) => x >= grip + least - 1e-9 && x <= grip + depth + 1e-9);

/** The screw with as few washers as it takes to find a listed length. */
const washered = ({ row, grip, depth, first, may }: Wanted): Washered | undefined =>
  stacks(first)
    .filter(may)
    .flatMap((rings) => {
      const held = grip + ringsHeight(row.thread, rings);
      const length = lengthFor(row, held, threadInSteel(row.thread), depth);
      return length === undefined ? [] : [{ length, rings }];
    })[0];

/** Under the head of a screw that stands in a slot: nothing that falls into it. */
const bearsOver =
  ({ thread }: HeadedScrew, width: number) =>
  ([next]: readonly WasherSeries[]): boolean =>
    next === 'large' || (next === 'plain' && washer(thread).outerDiameter >= width + OVER_SLOT);

/** The screws that hold the fence: low heads, because the sole dips over them. */
export const fenceScrew = ({ plate, base }: Pick<Values, 'plate' | 'base'>) => {
  const row = buttonScrew('M6');
  const may = bearsOver(row, clearanceHole('M6').diameter);
  return washered({ row, grip: plate, depth: base, first: 'large', may });
};

/** The screws of the mounting, from below into the base: washers only where they take up length. */
const mountScrew = (
  { plate, base }: Pick<Values, 'plate' | 'base'>,
  mount: Mount,
  rest: PlacedRest,
): Washered | undefined => {
  const row = capScrew(mount.thread);
  const depth = base - FLUSH;
  return mount.kind === 'bars'
    ? washered({ row, grip: rest.thickness + plate, depth, first: 'plain', may: () => true })
    : washered({
        row,
        grip: rest.thickness,
        depth,
        first: 'large',
        may: bearsOver(row, widthOf(rest)),
      });
};

/** A screw that is found with a base of the right thickness only. */
const found = (
  making: Making,
  v: Values,
  screw: Washered | undefined,
  thread: Thread,
  what: string,
  holds: (base: number) => boolean,
): Result<Washered> =>
  screw
    ? ok(screw)
    : fail(
        withBase('no-screw', making, v, holds, (spans) =>
          words.noScrew(thread, what, v.base, v.plate, spans),
        ),
      );

/** A screw into the sole or the angle, with plain washers where they take up length. */
const into = (
  thread: Thread,
  grip: number,
  depth: number,
  what: string,
  least = 0,
): Result<Washered> => {
  const row = capScrew(thread);
  const may = (rings: readonly WasherSeries[]): boolean =>
    rings.length >= least && rings.every((series) => series === 'plain');
  const screw = washered({ row, grip, depth, first: 'plain', may });
  const why = text.family.shared.issues.noScrew(
    thread,
    { from: grip + threadInSteel(row.thread), to: grip + depth },
    what,
  );
  return screw ? ok(screw) : fail(problem('no-screw', 'fixture.parameters.plate', why));
};

/** Screws of the tables that hold what the layout puts between head and thread. */
export const screwsOf = (
  making: Making,
  v: Values,
  l: Layout,
  mount: Mount,
  rest: PlacedRest,
): Result<Screws> => {
  const overFoot = l.plates ? 0 : l.wall;
  const { lengths } = setScrew('M6');
  const jack =
    lengths.findLast((x) => x <= l.gripped + v.plate && x >= l.gripped + 4) ??
    lengths.find((x) => x >= l.gripped + 4) ??
    l.gripped + v.plate;
  return chain(
    all([
      into('M6', l.wall + l.gripped, v.plate, names.jaw, 1),
      found(
        making,
        v,
        fenceScrew(v),
        'M6',
        names.fence,
        (base) => fenceScrew({ ...v, base }) !== undefined,
      ),
      found(
        making,
        v,
        mountScrew(v, mount, rest),
        mount.thread,
        names.base,
        (base) => mountScrew({ ...v, base }, mount, rest) !== undefined,
      ),
      into('M5', overFoot + 2 * v.plate, FOOT.drill - BLIND_LEAD * pitchOf('M5'), names.foot),
      l.plates ? ok(NONE) : into('M6', l.wall, v.plate, names.angle),
    ]),
    ([clamp = NONE, fence = NONE, mounting = NONE, foot = NONE, angle = NONE]) =>
      ok({ foot, angle, palm: l.palm.screw, jack, clamp, fence, mount: mounting }),
  );
};
