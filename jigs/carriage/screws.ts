import {
  all,
  buttonScrew,
  capScrew,
  chain,
  fail,
  nut,
  ok,
  problem,
  setScrew,
  text,
  washer,
  type HeadedScrew,
  type Result,
} from '../../src/family/index.ts';
import type { Mount } from '../shared/layout/mount.ts';
import type { Screws } from './context.ts';
import type { Layout } from './layout/layout.ts';
import { FOOT } from './layout/sizes.ts';
import type { Values } from './parameters.ts';

const { names } = text.family.carriage.parts;

/** Least length of thread in steel, as a share of the diameter (common practice). */
const SHARE = 0.8;
/** How far a mounting screw ends below the top of the base, on which things slide, mm. */
const FLUSH = 0.15;
const NONE: Washered = { length: 0, washers: 0 };

/** Most washers under one head. */
const MOST_WASHERS = 4;

/** The longest listed screw through `grip` that finds its thread and no more than `most`, mm. */
const held = (
  row: HeadedScrew,
  grip: number,
  most: number,
  what: string,
  least = SHARE * Number(row.thread.slice(1)),
): Result<number> => {
  const [from, to] = [grip + least, grip + most];
  const length = row.lengths.findLast((x) => x >= from - 1e-9 && x <= to + 1e-9);
  const why = text.family.shared.issues.noScrew(row.thread, from, to, what);
  return length === undefined
    ? fail(problem('no-screw', 'fixture.parameters.plate', why))
    : ok(length);
};

/** A screw and how many washers lie under its head. */
export interface Washered {
  readonly length: number;
  readonly washers: number;
}

/** The same with as many washers, at least `least` of them, as it takes to find a listed length. */
const washered = (
  row: HeadedScrew,
  grip: number,
  most: number,
  what: string,
  ring: number,
  least: number,
): Result<Washered> => {
  const fit = (washers: number): Result<Washered> =>
    chain(held(row, grip + washers * ring, most, what), (length) => ok({ length, washers }));
  const first = fit(least);
  const counts = Array.from({ length: MOST_WASHERS - least }, (_, i) => least + 1 + i);
  return first.ok ? first : (counts.map(fit).find(({ ok: found }) => found) ?? first);
};

/** The screws that hold the fence: low heads, because the sole dips over them. */
export const fenceScrew = (v: Values): Result<Washered> =>
  washered(buttonScrew('M6'), v.plate, v.base, names.fence, washer('M6', 'large').thickness, 1);

/** The screws of the mounting, from below into the base: washers only where they take up length. */
const mountScrew = (v: Values, mount: Mount, rest: number): Result<Washered> => {
  const bars = mount.kind === 'bars';
  const ring = washer(mount.thread, bars ? 'plain' : 'large').thickness;
  const grip = rest + (bars ? v.plate : 0);
  return washered(capScrew(mount.thread), grip, v.base - FLUSH, names.base, ring, bars ? 0 : 1);
};

/** Screws of the tables that hold what the layout puts between head and thread. */
export const screwsOf = (v: Values, l: Layout, mount: Mount, rest: number): Result<Screws> => {
  const overFoot = l.plates ? 0 : l.wall;
  const web = v.plate + l.palm.height - l.palm.pocket;
  const { lengths } = setScrew('M6');
  const jack =
    lengths.findLast((x) => x <= l.gripped + v.plate && x >= l.gripped + 4) ??
    lengths.find((x) => x >= l.gripped + 4) ??
    l.gripped + v.plate;
  const clamp = washered(
    capScrew('M6'),
    l.wall + l.gripped,
    v.plate,
    names.jaw,
    washer('M6').thickness,
    1,
  );
  return chain(all([clamp, fenceScrew(v), mountScrew(v, mount, rest)]), (three) =>
    chain(
      all([
        held(capScrew('M5'), overFoot + 2 * v.plate, FOOT.drill - 1, names.foot),
        held(capScrew('M5'), web, 5, names.palm, nut('M5').height),
        l.plates ? ok(0) : held(capScrew('M6'), l.wall, v.plate, names.angle),
      ]),
      ([foot = 0, palm = 0, angle = 0]) => {
        const [jaw = NONE, fence = NONE, mounting = NONE] = three;
        return ok({ foot, palm, angle, jack, clamp: jaw, fence, mount: mounting });
      },
    ),
  );
};
