import { plain } from '../core/units.ts';
import type { Box } from '../drawing/box.ts';
import { fillBox, frameItem, label, line, TEXT } from '../drawing/items.ts';
import { wrap } from '../drawing/layout.ts';
import { landscape, sizeOf } from '../drawing/paper.ts';
import type { Item, Sheet } from '../drawing/sheet.ts';
import { textWidth } from '../drawing/text-width.ts';
import { hull, type Interval } from '../geometry/interval.ts';
import { text } from '../text/index.ts';
import type { Proved, ReachTable } from './reach.ts';

const words = text.adapt;

/** The field of bands on the sheet, mm. */
const FIELD: Box = { x0: 30, y0: 62, x1: 287, y1: 182 };
const EDGE = 12;
/** Of the bar of angles in a band: from its frame, and thick, mm. */
const BAR = { from: 1.5, thick: 1.4 } as const;
const LEADING = 1.6;

const show = (value: number): string => plain(value, 1);

const scaleOf =
  ([low, high]: Interval, from: number, to: number) =>
  (value: number) =>
    from + ((value - low) / (high - low)) * (to - from);

const ends = (ranges: readonly Interval[]): number[] =>
  [...new Set(ranges.flat())].sort((a, b) => a - b);

/** One band: its frame, a bar from the least to the greatest angle, and both in figures. */
const bandItems = (box: Box, angles: Interval, all: Interval): Item[] => {
  const at = scaleOf(all, box.x0 + BAR.from, box.x1 - BAR.from);
  const figures = words.reachAngles(show(angles[0]), show(angles[1]));
  const isRoomy = textWidth(figures, TEXT.small) <= box.x1 - box.x0 - 1;
  const y0 = box.y0 + BAR.from;
  return [
    fillBox(box, 'tint'),
    frameItem(box, 'dimension'),
    fillBox({ x0: at(angles[0]), x1: at(angles[1]), y0, y1: y0 + BAR.thick }, 'ink'),
    ...(isRoomy
      ? [
          label([(box.x0 + box.x1) / 2, y0 + BAR.thick + 1.5], figures, {
            height: TEXT.small,
            align: 'centre',
          }),
        ]
      : []),
  ];
};

const fieldItems = (proved: readonly (Proved & { readonly angles: Interval })[]): Item[] => {
  const [heights, thicknesses] = [
    proved.map(({ height }) => height),
    proved.map(({ thickness }) => thickness),
  ];
  const all = hull(proved.map(({ angles }) => angles));
  const x = scaleOf(hull(heights), FIELD.x0, FIELD.x1);
  const y = scaleOf(hull(thicknesses), FIELD.y0, FIELD.y1);
  const small = { height: TEXT.small } as const;
  return [
    ...proved.flatMap(({ height, thickness, angles }) =>
      bandItems(
        { x0: x(height[0]), x1: x(height[1]), y0: y(thickness[0]), y1: y(thickness[1]) },
        angles,
        all,
      ),
    ),
    ...ends(heights).flatMap((h) => [
      line([x(h), FIELD.y0 - 2], [x(h), FIELD.y0], 'dimension'),
      label([x(h), FIELD.y0 - 6], show(h), { ...small, align: 'centre' }),
    ]),
    ...ends(thicknesses).flatMap((t) => [
      line([FIELD.x0 - 2, y(t)], [FIELD.x0, y(t)], 'dimension'),
      label([FIELD.x0 - 3, y(t) - 1], show(t), { ...small, align: 'right' }),
    ]),
    frameItem(FIELD, 'visible'),
    label([FIELD.x1, FIELD.y0 - 12], words.reachHeights, { align: 'right' }),
    label([FIELD.x0 - 13, FIELD.y1], words.reachThicknesses, { align: 'right', angle: 90 }),
    label([FIELD.x0, FIELD.y0 - 12], words.reachBars(show(all[0]), show(all[1])), small),
  ];
};

/**
 * The table of a fixture's reach as a picture on an A4 sheet: bands of height from left to right
 * and of spine thickness upwards, true to scale; a band that is not drawn is not proved.
 */
export const reachSheet = ({ design, family, bands, scope, step }: ReachTable): Sheet => {
  const size = sizeOf(landscape('A4'));
  const proved = bands.flatMap((band) =>
    band.angles === null ? [] : [{ ...band, angles: band.angles }],
  );
  const notes = [words.reachProof(show(step)), words.reachScope(scope)].flatMap((note) =>
    wrap(note, size[0] - 2 * EDGE, TEXT.small),
  );
  return {
    id: 'reach',
    title: words.reachTitle(family),
    size,
    items: [
      label([EDGE, 198], words.reachTitle(family), { height: TEXT.heading, bold: true }),
      label([EDGE, 189], design),
      ...(proved.length === 0
        ? [label([FIELD.x0, (FIELD.y0 + FIELD.y1) / 2], words.reachNothing)]
        : fieldItems(proved)),
      ...notes.map((note, i) =>
        label([EDGE, FIELD.y0 - 22 - i * LEADING * TEXT.small], note, { height: TEXT.small }),
      ),
    ],
  };
};
