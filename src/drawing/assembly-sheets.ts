import { plain } from '../core/units.ts';
import { scale2 } from '../geometry/vector.ts';
import type { Part, Placement } from '../model/part.ts';
import { text } from '../text/index.ts';
import { COLUMN } from './arrange.ts';
import { balloons, seenIn } from './balloons.ts';
import { sectionItems, type Section } from './belt-section.ts';
import { boardOf, CLEAR, isFree } from './board.ts';
import { bodiesOf, splitThrough, type Body } from './bodies.ts';
import { border } from './border.ts';
import { around, heightOf, union, widthOf, type Box } from './box.ts';
import { linear, type Linear } from './dimension.ts';
import { codeStrip } from './code.ts';
import { withCuts } from './cut-marks.ts';
import { cutsOf, cutView, type Cut, type CutPlane } from './cut-view.ts';
import { bounds, label, move, scaled, TEXT } from './items.ts';
import { fittedTable, heading, paragraph, space, type Strip } from './layout.ts';
import { columnOf, drawnOnce, extentOf, laidOut, type Drawn, type Page } from './pages.ts';
import { atScale, explodedFrom, pictureOf, withNumbers, type Numbered } from './pictures.ts';
import { SHEETS, sizeOf } from './paper.ts';
import { thicknessOf } from './part-sheets.ts';
import { factor, SCALES, type Scale } from './scales.ts';
import { ABOVE_SIDE, FROM_BELOW, ISOMETRIC, SIDE } from './eye.ts';
import { scene } from './scene.ts';
import type { Item, Sheet } from './sheet.ts';
import { titleBlock, titleBlockHeight, type SheetInfo, type TitleBlock } from './title-block.ts';

/** What the drawing of an assembly needs beyond its parts. */
export interface AssemblyInfo {
  readonly title: string;
  /** File of each part that has one, by part id. */
  readonly files: ReadonlyMap<string, string>;
  /** Assembly order, a step a string. */
  readonly order: readonly string[];
  readonly notes: readonly string[];
  /** Sections that explain the setting, e.g. at the belt. */
  readonly sections: readonly Section[];
  /** Upright planes along which the assembly is cut to show how it works inside. */
  readonly cuts?: readonly CutPlane[];
  /** The way along which parts are put together: upright (z) where it is not said. */
  readonly joined?: 'x' | 'z';
}

interface Row extends Numbered {
  readonly part: Part;
}

/** Every part is an item: those that are made before those that are bought. */
const rowsOf = (parts: readonly Part[], placements: readonly Placement[]): Row[] => {
  const made = parts.filter((part) => part.kind !== 'hardware');
  const bought = parts.filter((part) => part.kind === 'hardware');
  return [...made, ...bought].map((part, i) => ({
    item: String(i + 1),
    part,
    placed: new Set(placements.filter((p) => p.part === part.id).map((p) => p.name)),
  }));
};

const materialOf = (part: Part): string => {
  if (part.kind === 'hardware') return part.designation;
  if (part.kind === 'stock') return `${part.material}, ${part.section}`;
  return part.kind === 'plate'
    ? text.drawing.partsList.sheet(part.material, thicknessOf(part))
    : part.material;
};

const partsList = (rows: readonly Row[], files: AssemblyInfo['files']): Strip[] => {
  const t = text.drawing.partsList;
  const heads = [
    { title: t.item, align: 'right' },
    { title: t.name, align: 'left' },
    { title: t.quantity, align: 'right' },
    { title: t.material, align: 'left' },
    { title: t.file, align: 'left' },
  ] as const;
  const cells = rows.map(({ item, part }) => [
    item,
    part.name,
    String(part.quantity),
    materialOf(part),
    files.get(part.id) ?? (part.kind === 'hardware' ? t.bought : t.drawing),
  ]);
  return [heading(t.title, COLUMN), ...fittedTable(heads, cells, COLUMN), space(3)];
};

const numbered = (title: string, lines: readonly string[]): Strip[] =>
  lines.length === 0
    ? []
    : [
        heading(title, COLUMN),
        ...lines.map((s, i) => paragraph(s, COLUMN, { mark: String(i + 1), indent: 7 })),
        space(3),
      ];

/** Distance of an overall dimension from the picture, mm, and of one beyond the balloons from these. */
const AWAY = 9;
const BEYOND = 2;
/** Air between two views, mm. */
const BETWEEN = 8;

/** What a box is of the real thing across, as an auxiliary dimension below it. */
const overallAcross = (box: Box, k: number): Item[] =>
  linear({
    axis: 'x',
    ...{ a: [box.x0, box.y0], b: [box.x1, box.y0], at: box.y0 - AWAY },
    text: `(${plain(widthOf(box) / k, 1)})`,
  });

/** The same upwards, left of it. */
const overallUp = (box: Box, k: number, place: Pick<Partial<Linear>, 'aside' | 'at'> = {}) =>
  linear({
    axis: 'y',
    ...{ a: [box.x0, box.y0], b: [box.x0, box.y1], at: box.x0 - AWAY },
    text: `(${plain(heightOf(box) / k, 1)})`,
    ...place,
  });

/** A level line left of a picture, broken where it would run through a balloon. */
const broken = (item: Item, others: readonly Item[]): Item[] => {
  if (item.kind !== 'line' || item.a[1] !== item.b[1]) return [item];
  const [{ a, b }, level] = [item, item.a[1]];
  for (const other of others) {
    if (other.kind !== 'circle') continue;
    const [x, y] = other.centre;
    const half = other.radius + CLEAR;
    if (x > a[0] || x < b[0] || Math.abs(y - level) > half) continue;
    return [
      { ...item, b: [x + half, level] },
      { ...item, a: [x - half, level] },
    ];
  }
  return [item];
};

/**
 * The upright overall dimension, its value moved along to where no balloon's leader runs; beyond the
 * balloons if they leave no room between, its extension lines broken where they meet one.
 */
const overallUpBeside = (box: Box, k: number, others: readonly Item[]): Item[] => {
  const board = boardOf(others);
  const isClear = (items: readonly Item[]): boolean =>
    items.every((item) => item.kind !== 'text' || isFree(board, bounds([item])));
  const near = [0, 0.12, -0.12, 0.24, -0.24, 0.34, -0.34].map((share) =>
    overallUp(box, k, { aside: share * heightOf(box) }),
  );
  const beyond = overallUp(box, k, { at: bounds(others).x0 - BEYOND });
  return near.find(isClear) ?? beyond.flatMap((item) => broken(item, others));
};

/**
 * Side view and, below it in first-angle projection, the view from above, with their overall
 * dimensions; drawn at any scale.
 */
const elevations = (bodies: readonly Body[], rows: readonly Row[], cuts: readonly Cut[]): Drawn => {
  // Bought parts are small and many: their numbers are in the exploded view.
  const made = rows.filter((row) => row.part.kind !== 'hardware');
  const pictures = [SIDE, ABOVE_SIDE].map((eye) => pictureOf(bodies, eye, made));
  const draw = (k: number): Item[] => {
    const [side = [], above = []] = pictures.map((picture, i) => {
      const { items, box, pointers } = atScale(picture, k);
      const across = i === 0 ? overallAcross(box, k) : [];
      const up = overallUp(box, k);
      const around = union(box, bounds(up));
      const drawn = [...items, ...up.filter((item) => item.kind !== 'text')];
      const { marks, numbers } = withCuts(i === 0 ? [] : cuts, box, k, drawn, (wide) =>
        balloons(pointers, union(around, wide)),
      );
      const others = [...marks, ...numbers];
      return [...items, ...across, ...overallUpBeside(box, k, others), ...others];
    });
    return [...side, ...move(above, [0, bounds(side).y0 - bounds(above).y1 - BETWEEN])];
  };
  const bare = columnOf(pictures.map(({ box }) => extentOf(box)));
  return drawnOnce(draw, bare);
};

/** The assembly as it stands when built, from the maker's right. */
const assembled = (bodies: readonly Body[]): Drawn => {
  const view = scene(bodies, ISOMETRIC, 1);
  const draw = (k: number): Item[] =>
    titled(scaled(view.items, k), text.drawing.assembly.assembled);
  return drawnOnce(draw, extentOf(view.box));
};

/** Pictures one below the other, in the order in which they are given. */
const stacked = (pictures: readonly Drawn[]): Drawn =>
  drawnOnce(
    (k) =>
      pictures.reduce<Item[]>((above, { at }) => {
        const { items, box } = at(k);
        if (above.length === 0) return items;
        const over = bounds(above);
        const aside = (over.x0 + over.x1 - box.x0 - box.x1) / 2;
        return [...above, ...move(items, [aside, over.y0 - box.y1 - 15])];
      }, []),
    columnOf(pictures.map(({ bare }) => bare)),
  );

/** The assembly cut along a plane, with item numbers and its letters above. */
const cutPicture = (
  parts: readonly Part[],
  placements: readonly Placement[],
  rows: readonly Row[],
  cut: Cut,
): Drawn => {
  const draw = cutView(parts, placements, cut);
  const full = draw(1);
  const seen = seenIn(full);
  const pointers = rows.flatMap(({ item, placed }) => {
    const at = seen(placed);
    return at ? [{ text: item, at }] : [];
  });
  return drawnOnce((k) => {
    const { items, box } = draw(k);
    const numbers = pointers.map((pointer) => ({ ...pointer, at: scale2(pointer.at, k) }));
    return titled([...items, ...balloons(numbers, box)], text.drawing.assembly.cut(cut.letter));
  }, extentOf(full.box));
};

/** A picture with its title above it. */
const titled = (items: readonly Item[], title: string): Item[] => {
  const box = bounds(items);
  const at = [(box.x0 + box.x1) / 2, box.y1 + 8] as const;
  return [...items, label(at, title, { height: TEXT.heading, align: 'centre' })];
};

/**
 * The assembly: side view and plan with item numbers and parts list, an isometric exploded view
 * with the order of assembly in words, and the sections that explain the setting.
 */
export const assemblySheets = (
  parts: readonly Part[],
  placements: readonly Placement[],
  info: AssemblyInfo,
  block: TitleBlock,
): Sheet[] => {
  const rows = rowsOf(parts, placements);
  const { link } = block;
  const cuts = cutsOf(info.cuts ?? [], parts, placements);
  const bodies = splitThrough(bodiesOf(parts, placements));
  const from = explodedFrom(parts, placements, info.joined ?? 'z');
  const apart = from(ISOMETRIC, rows);
  // What is hidden from there is shown from the other side.
  const behind = from(
    FROM_BELOW,
    rows.filter(({ item }) => !apart.pointers.some(({ text }) => text === item)),
  );
  const reducing = SCALES.filter((s) => factor(s) <= 1);
  const pages: Page[] = [
    {
      draw: elevations(bodies, rows, cuts),
      scales: reducing,
      strips: partsList(rows, info.files),
      ...(link === undefined ? {} : { foot: codeStrip(link, block.designId) }),
    },
    {
      draw: drawnOnce(withNumbers(apart), extentOf(apart.box)),
      scales: reducing,
      strips: [
        ...numbered(text.drawing.assembly.order, info.order),
        ...numbered(text.drawing.notes.title, [
          ...info.notes,
          ...cuts.map(({ letter }) => text.drawing.assembly.cutNote(letter)),
        ]),
        ...numbered(text.safety.title, text.safety.drawing),
      ],
    },
    { draw: assembled(bodies), scales: reducing, strips: [] },
    ...(behind.pointers.length === 0
      ? []
      : [
          {
            draw: drawnOnce(
              (k) => titled(withNumbers(behind)(k), text.drawing.assembly.fromBelow),
              extentOf(behind.box),
            ),
            scales: reducing,
            strips: [],
          },
        ]),
    ...(cuts.length === 0
      ? []
      : [
          {
            draw: stacked(cuts.map((cut) => cutPicture(parts, placements, rows, cut))),
            scales: SCALES.filter((s) => factor(s) <= 2),
            strips: [],
          },
        ]),
    ...info.sections.map((section): Page => ({
      draw: drawnOnce(
        (k) => titled(sectionItems(section, k), section.title),
        extentOf(around(section.shapes.flatMap(({ points }) => points))),
      ),
      scales: SCALES,
      strips: [],
    })),
  ];
  const papers = SHEETS[block.paper].filter((paper) => paper.orientation === 'landscape');
  const infoOf = (sheet: number, sheets: number, scale: Scale): SheetInfo => ({
    title: info.title,
    documentType: text.drawing.documentTypes.assembly,
    number: `${block.designId}-assembly`,
    sheet,
    sheets,
    scale,
  });
  const height = titleBlockHeight(block, infoOf(1, 1, { paper: 1, real: 1 }));
  const laid = laidOut(pages, papers, height);
  return laid.map(({ paper, scale, items }, i) => ({
    id: `assembly-${String(i + 1)}`,
    title: info.title,
    size: sizeOf(paper),
    items: [
      ...border(paper),
      ...titleBlock(paper, block, infoOf(i + 1, laid.length, scale)),
      ...items,
    ],
  }));
};
