import type { Box } from '../drawing/box.ts';
import { fillBox, frameItem, label, line, TEXT } from '../drawing/items.ts';
import { wrap } from '../drawing/layout.ts';
import { landscape, sizeOf } from '../drawing/paper.ts';
import type { Item, Sheet } from '../drawing/sheet.ts';
import { textWidth } from '../drawing/text-width.ts';
import { hull, type Interval } from '../geometry/interval.ts';
import { text } from '../text/index.ts';
import type { Proved, ReachTable } from './reach.ts';
import { axisTitle, cellOf, notesOf, sizeWord, unitOf } from './reach-words.ts';

const words = text.adapt;

/** The field of bands on the sheet, mm. */
const FIELD: Box = { x0: 30, y0: 62, x1: 287, y1: 182 };
const EDGE = 12;
/** Of the bar in a band: from its frame, thick, and under the figures, mm. */
const BAR = { from: 1, thick: 1.2, under: 1 } as const;
const LEADING = 1.6;

const scaleOf =
  ([low, high]: Interval, from: number, to: number) =>
  (value: number) =>
    from + ((value - low) / (high - low)) * (to - from);

const ends = (ranges: readonly Interval[]): number[] =>
  [...new Set(ranges.flat())].sort((a, b) => a - b);

/** One band: its frame, a bar from the least to the greatest of its run, and all in figures. */
const bandItems = (box: Box, band: Proved, all: Interval): Item[] => {
  const at = scaleOf(all, box.x0 + BAR.from, box.x1 - BAR.from);
  const figures = cellOf(band);
  const isRoomy = textWidth(figures, TEXT.small) <= box.x1 - box.x0 - 1;
  const y0 = box.y0 + BAR.from;
  return [
    fillBox(box, 'tint'),
    frameItem(box, 'dimension'),
    fillBox({ x0: at(band.run[0]), x1: at(band.run[1]), y0, y1: y0 + BAR.thick }, 'ink'),
    ...(isRoomy
      ? [
          label([(box.x0 + box.x1) / 2, y0 + BAR.thick + BAR.under], figures, {
            height: TEXT.small,
            align: 'centre',
          }),
        ]
      : []),
  ];
};

const fieldItems = ({ bands, axes }: ReachTable): Item[] => {
  const [columns, rows] = [bands.map(({ across }) => across), bands.map(({ up }) => up)];
  const all = hull(bands.map(({ run }) => run));
  const x = scaleOf(hull(columns), FIELD.x0, FIELD.x1);
  const y = scaleOf(hull(rows), FIELD.y0, FIELD.y1);
  const small = { height: TEXT.small } as const;
  return [
    ...bands.flatMap((band) => {
      const { across, up } = band;
      return bandItems(
        { x0: x(across[0]), x1: x(across[1]), y0: y(up[0]), y1: y(up[1]) },
        band,
        all,
      );
    }),
    ...ends(columns).flatMap((h) => [
      line([x(h), FIELD.y0 - 2], [x(h), FIELD.y0], 'dimension'),
      label([x(h), FIELD.y0 - 6], sizeWord(h), { ...small, align: 'centre' }),
    ]),
    ...ends(rows).flatMap((t) => [
      line([FIELD.x0 - 2, y(t)], [FIELD.x0, y(t)], 'dimension'),
      label([FIELD.x0 - 3, y(t) - 1], sizeWord(t), { ...small, align: 'right' }),
    ]),
    frameItem(FIELD, 'visible'),
    label([FIELD.x1, FIELD.y0 - 12], axisTitle(axes.across), { align: 'right' }),
    label([FIELD.x0 - 13, FIELD.y1], axisTitle(axes.up), { align: 'right', angle: 90 }),
    label(
      [FIELD.x0, FIELD.y0 - 12],
      words.reachBars(axes.run.label, sizeWord(all[0]), sizeWord(all[1]), unitOf(axes.run)),
      small,
    ),
  ];
};

/**
 * The table of a fixture's reach as a picture on an A4 sheet: its axes from left to right and
 * upwards, true to scale; a band that is not drawn is not proved.
 */
export const reachSheet = (table: ReachTable): Sheet => {
  const { design, family, bands } = table;
  const size = sizeOf(landscape('A4'));
  const notes = notesOf(table).flatMap((note) => wrap(note, size[0] - 2 * EDGE, TEXT.small));
  return {
    id: 'reach',
    title: words.reachTitle(family),
    size,
    items: [
      label([EDGE, 198], words.reachTitle(family), { height: TEXT.heading, bold: true }),
      label([EDGE, 189], design),
      ...(bands.length === 0
        ? [label([FIELD.x0, (FIELD.y0 + FIELD.y1) / 2], words.reachNothing)]
        : fieldItems(table)),
      ...notes.map((note, i) =>
        label([EDGE, FIELD.y0 - 22 - i * LEADING * TEXT.small], note, { height: TEXT.small }),
      ),
    ],
  };
};
