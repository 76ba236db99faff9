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
/** Most washers under the head of the clamp screw. */
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

/** A clamp screw that ends in the jaw, with as many washers as that takes. */
const clampFor = (grip: number, jaw: number): Result<{ length: number; count: number }> => {
  const ring = washer('M6').thickness;
  const fit = (count: number): Result<{ length: number; count: number }> => {
    const length = held(capScrew('M6'), grip + count * ring, jaw, names.jaw);
    return length.ok ? ok({ length: length.value, count }) : length;
  };
  const first = fit(1);
  const counts = Array.from({ length: MOST_WASHERS - 1 }, (_, i) => i + 2);
  return first.ok ? first : (counts.map(fit).find(({ ok: found }) => found) ?? first);
};

/** Screws of the tables that hold what the layout puts between head and thread. */
export const screwsOf = (v: Values, l: Layout, mount: Mount, rest: number): Result<Screws> => {
  const overFoot = l.plates ? 0 : l.wall;
  const under = mount.kind === 'bars' ? v.plate : washer(mount.thread, 'large').thickness;
  const web = v.plate + l.palm.height - l.palm.pocket;
  const { lengths } = setScrew('M6');
  const jack =
    lengths.findLast((x) => x <= l.gripped + v.plate && x >= l.gripped + 4) ??
    lengths.find((x) => x >= l.gripped + 4) ??
    l.gripped + v.plate;
  return chain(clampFor(l.wall + l.gripped, v.plate), (clamp) =>
    chain(
      all([
        held(capScrew('M5'), overFoot + 2 * v.plate, FOOT.drill - 1, names.foot),
        held(capScrew('M5'), web, 5, names.palm, nut('M5').height),
        held(buttonScrew('M6'), v.plate + washer('M6', 'large').thickness, v.base, names.fence),
        held(capScrew(mount.thread), rest + under, v.base - FLUSH, names.base),
        l.plates ? ok(0) : held(capScrew('M6'), l.wall, v.plate, names.angle),
      ]),
      ([foot = 0, palm = 0, fence = 0, mounting = 0, angle = 0]) =>
        ok({
          foot,
          palm,
          clamp: clamp.length,
          clampWashers: clamp.count,
          jack,
          fence,
          mount: mounting,
          angle,
        }),
    ),
  );
};
