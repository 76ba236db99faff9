import { all, chain, ok, type Result } from '../core/result.ts';
import { plain } from '../core/units.ts';
import { circle, rectangle, type Loop } from '../geometry/loop.ts';
import { boundingBox } from '../geometry/loop-measure.ts';
import { translated } from '../geometry/loop-transform.ts';
import { offset } from '../geometry/offset.ts';
import { sevenBars } from './digits.ts';
import type { Layer, PrintPart } from './part.ts';

/** An opening of a printed part that something has to fit into. */
export interface Opening {
  /** Its contour without any play, about its middle, mm. */
  readonly loop: Loop;
  /** Its least width, the number on the coupon, mm. */
  readonly width: number;
  /** Where it occurs: part, and the purpose of the hole where it has one. */
  readonly uses: readonly { readonly part: string; readonly purpose?: string }[];
}

/** Play on the width that the columns of the coupon add, tenths of a millimetre. */
export const COUPON_TENTHS = [0, 1, 2, 3, 4, 5, 6] as const;

/** Coupon, mm: sheet and figures high enough to hold and to read, walls that do not give. */
const THICK = 4;
const RAISED = 0.6;
const WALL = 4;
const FIGURE = 6;
const BAR = 0.8;
/** How far pins stand up, mm: high enough to feel whether they shake. */
const PIN = 6;
/** A larger opening needs no trial: its play is the same. */
const LARGEST = 25;

const size = (loop: Loop): { readonly width: number; readonly height: number } => {
  const { min, max } = boundingBox(loop);
  return { width: max[0] - min[0], height: max[1] - min[1] };
};

const centred = (loop: Loop): Loop => {
  const { min, max } = boundingBox(loop);
  return translated(loop, [-(min[0] + max[0]) / 2, -(min[1] + max[1]) / 2]);
};

const rounded = (loop: Loop): string =>
  JSON.stringify(loop, (_, value: unknown) =>
    typeof value === 'number' ? plain(value, 3) : value,
  );

/**
 * The different openings of printed parts that were drawn with some play (mm on the width), the
 * play taken off again; each once, smallest first.
 */
export const openingsOf = (parts: readonly PrintPart[], play: number): Result<Opening[]> => {
  const found = new Map<string, { loop: Loop; uses: Opening['uses'][number][] }>();
  for (const { name, layers, holes } of parts)
    for (const loop of layers.flatMap(({ profile }) => profile.holes)) {
      const key = rounded(centred(loop));
      const hole = holes.find((one) => rounded(one.loop) === rounded(loop));
      const use = { part: name, ...(hole === undefined ? {} : { purpose: hole.purpose }) };
      const known = found.get(key) ?? { loop: centred(loop), uses: [] };
      const told = known.uses.some((one) => JSON.stringify(one) === JSON.stringify(use));
      found.set(key, { ...known, uses: told ? known.uses : [...known.uses, use] });
    }
  const nominal = [...found.values()].map(({ loop, uses }) =>
    chain(offset(loop, -play / 2), (tight) => {
      const { width, height } = size(tight);
      return ok<Opening>({ loop: tight, width: Math.min(width, height), uses });
    }),
  );
  return chain(all(nominal), (openings) =>
    ok(
      openings
        .filter(({ loop }) => Math.max(size(loop).width, size(loop).height) <= LARGEST)
        .sort((a, b) => a.width - b.width),
    ),
  );
};

/** The opening that the coupon's pins are as wide as: the smallest round one; absent without any. */
export const pinnedOpening = (openings: readonly Opening[]): Opening | undefined =>
  openings.find(({ loop }) => loop.kind === 'circle');

/** What is written on the coupon beside a row. */
export const rowLabel = ({ width }: Opening): string => plain(width, 2);

/**
 * A small print with every opening at every play: one row an opening from below, one column a
 * tenth of a millimetre more from the left, raised figures naming both. Above the figures stand
 * pins as wide as the smallest round opening, by as many tenths less. There must be an opening.
 */
export const couponLayers = (openings: readonly Opening[]): Result<Layer[]> => {
  const most = (COUPON_TENTHS.at(-1) ?? 0) / 10;
  const pitch = Math.max(...openings.map(({ loop }) => size(loop).width)) + most + WALL;
  const heights = openings.map(({ loop }) => size(loop).height + most + WALL);
  const margin = FIGURE * 0.9 * Math.max(...openings.map((row) => rowLabel(row).length)) + WALL;
  const low = heights.map((_, i) => WALL / 2 + heights.slice(0, i).reduce((a, b) => a + b, 0));
  const top = WALL / 2 + heights.reduce((a, b) => a + b, 0);
  const middle = (column: number): number => margin + (column + 0.5) * pitch;
  const holes = openings.flatMap(({ loop }, row) =>
    COUPON_TENTHS.map((tenths, column) =>
      chain(offset(loop, tenths / 20), (grown) =>
        ok(translated(grown, [middle(column), (low[row] ?? 0) + (heights[row] ?? 0) / 2])),
      ),
    ),
  );
  const pinned = pinnedOpening(openings);
  const head = top + FIGURE + WALL;
  const outer = rectangle(
    [0, 0],
    [margin + COUPON_TENTHS.length * pitch + WALL / 2, head + (pinned ? pinned.width + WALL : 0)],
  );
  const pins = pinned
    ? COUPON_TENTHS.map((tenths, column) =>
        circle([middle(column), head + pinned.width / 2], pinned.width / 2 - tenths / 20),
      )
    : [];
  const rows = openings.flatMap((opening, row) => {
    const y = (low[row] ?? 0) + ((heights[row] ?? 0) - FIGURE) / 2;
    return sevenBars(rowLabel(opening), [WALL / 2, y], FIGURE, BAR);
  });
  const columns = COUPON_TENTHS.flatMap((tenths, column) =>
    sevenBars(String(tenths), [middle(column) - FIGURE / 3, top + WALL / 2], FIGURE, BAR),
  );
  return chain(all(holes), (cut) =>
    ok([
      { profile: { outer, holes: cut }, from: 0, to: THICK },
      ...[...rows, ...columns].map((bar): Layer => ({
        profile: { outer: bar, holes: [] },
        from: THICK,
        to: THICK + RAISED,
      })),
      ...pins.map((pin): Layer => ({
        profile: { outer: pin, holes: [] },
        from: THICK,
        to: THICK + PIN,
      })),
    ]),
  );
};
