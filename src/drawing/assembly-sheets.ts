import { plain } from '../core/units.ts';
import type { Part, Placement } from '../model/part.ts';
import { text } from '../text/index.ts';
import { balloons, seenAt, type Pointer } from './balloons.ts';
import { sectionItems, type Section } from './belt-section.ts';
import { boardOf, isFree } from './board.ts';
import { bodiesOf, pathBody } from './bodies.ts';
import { border } from './border.ts';
import { heightOf, union, widthOf, type Box } from './box.ts';
import { linear } from './dimension.ts';
import { explode } from './explode.ts';
import { bounds, move } from './items.ts';
import { heading, paragraph, pour, space, stack, table, type Strip } from './layout.ts';
import { SHEETS, sizeOf, spaceOf, type Paper } from './paper.ts';
import { factor, SCALES, type Scale } from './scales.ts';
import { ABOVE_SIDE, ISOMETRIC, scene, SIDE, type Eye, type Scene } from './scene.ts';
import type { Item, Sheet } from './sheet.ts';
import {
  BLOCK_WIDTH,
  titleBlock,
  titleBlockHeight,
  type SheetInfo,
  type TitleBlock,
} from './title-block.ts';

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
}

const INSET = 6;
const COLUMN = BLOCK_WIDTH - 2 * INSET;
/** Space between lifted parts, mm. */
const LIFT = 8;

interface Row {
  readonly item: string;
  readonly part: Part;
  readonly placed: ReadonlySet<string>;
}

/** Items in the order of first placement: own parts before bought ones. */
const rowsOf = (parts: readonly Part[], placements: readonly Placement[]): Row[] => {
  const placedOf = (part: Part): string[] =>
    placements.filter((p) => p.part === part.id).map((p) => p.name);
  const used = parts.filter((part) => placedOf(part).length > 0);
  const made = used.filter((part) => part.kind !== 'hardware');
  const bought = used.filter((part) => part.kind === 'hardware');
  return [...made, ...bought].map((part, i) => ({
    item: String(i + 1),
    part,
    placed: new Set(placedOf(part)),
  }));
};

const partsList = (rows: readonly Row[], files: AssemblyInfo['files']): Strip[] => {
  const t = text.drawing.partsList;
  const columns = [
    { title: t.item, width: 12, align: 'right' },
    { title: t.name, width: 46, align: 'left' },
    { title: t.quantity, width: 12, align: 'right' },
    { title: t.material, width: 50, align: 'left' },
    { title: t.file, width: COLUMN - 120, align: 'left' },
  ] as const;
  const cells = rows.map(({ item, part, placed }) => [
    item,
    part.name,
    String(placed.size),
    part.kind === 'hardware' ? part.designation : part.material,
    files.get(part.id) ?? t.bought,
  ]);
  return [heading(t.title, COLUMN), ...table(columns, cells), space(3)];
};

const numbered = (title: string, lines: readonly string[]): Strip[] =>
  lines.length === 0
    ? []
    : [
        heading(title, COLUMN),
        ...lines.map((s, i) => paragraph(s, COLUMN, { mark: String(i + 1), indent: 7 })),
        space(3),
      ];

const pointersIn = (rows: readonly Row[], view: Scene): Pointer[] =>
  rows.flatMap(({ item, placed }) => {
    const at = seenAt(placed, view);
    return at ? [{ text: item, at }] : [];
  });

/** Extents of the real thing along one axis of the paper, as an auxiliary dimension. */
const overall = (box: Box, k: number, axis: 'x' | 'y', aside = 0): Item[] => {
  const size = axis === 'x' ? widthOf(box) : heightOf(box);
  const name = `(${plain(size / k, 1)})`;
  return axis === 'x'
    ? linear({ axis, a: [box.x0, box.y0], b: [box.x1, box.y0], at: box.y0 - 9, text: name, aside })
    : linear({ axis, a: [box.x0, box.y0], b: [box.x0, box.y1], at: box.x0 - 9, text: name, aside });
};

/** The upright overall dimension, its value moved along to where no balloon's leader runs. */
const overallUp = (box: Box, k: number, others: readonly Item[]): Item[] => {
  const board = boardOf(others);
  const tries = [0, 0.12, -0.12, 0.24, -0.24, 0.34, -0.34].map((s) =>
    overall(box, k, 'y', s * heightOf(box)),
  );
  const isClear = (items: readonly Item[]): boolean =>
    items.every((item) => item.kind !== 'text' || isFree(board, bounds([item])));
  return tries.find(isClear) ?? [];
};

/** Side view and, below it in first-angle projection, the view from above. */
const elevations = (
  parts: readonly Part[],
  placements: readonly Placement[],
  rows: readonly Row[],
  k: number,
): Item[] => {
  const bodies = bodiesOf(parts, placements);
  const draw = (eye: Eye, isWidthShown: boolean): Item[] => {
    const view = scene(bodies, eye, k);
    const across = isWidthShown ? overall(view.box, k, 'x') : [];
    const frame = union(view.box, bounds(overall(view.box, k, 'y')));
    const numbers = balloons(pointersIn(rows, view), frame);
    return [...view.items, ...across, ...overallUp(view.box, k, numbers), ...numbers];
  };
  const side = draw(SIDE, true);
  const above = draw(ABOVE_SIDE, false);
  const down = bounds(side).y0 - bounds(above).y1 - 10;
  return [...side, ...move(above, [0, down])];
};

const exploded = (
  parts: readonly Part[],
  placements: readonly Placement[],
  rows: readonly Row[],
  k: number,
): Item[] => {
  const lifted = explode(parts, placements, LIFT);
  const bodies = bodiesOf(
    parts,
    lifted.map((l) => l.placement),
  );
  const paths = lifted
    .filter(({ path: [a, b] }) => a[2] - b[2] > 1e-6)
    .map(({ placement, path }) => pathBody(placement.name, path));
  const view = scene([...bodies, ...paths], ISOMETRIC, k);
  return [...view.items, ...balloons(pointersIn(rows, view), view.box)];
};

/** A page with a picture left and a column of strips above the title block. */
interface Page {
  readonly draw: (k: number) => Item[];
  readonly scales: readonly Scale[];
  readonly strips: readonly Strip[];
}

interface Laid {
  readonly paper: Paper;
  readonly scale: Scale;
  readonly items: readonly Item[];
  readonly rest: readonly Strip[];
}

const centred = (items: readonly Item[], box: Box): Item[] => {
  const have = bounds(items);
  return move(items, [
    (box.x0 + box.x1 - have.x0 - have.x1) / 2,
    (box.y0 + box.y1 - have.y0 - have.y1) / 2,
  ]);
};

/** The picture at the largest scale that fits beside the column; strips without room are left. */
const lay = ({ draw, scales, strips }: Page, paper: Paper, block: number): Laid | undefined => {
  const s = spaceOf(paper);
  const area = {
    x0: s.x0 + INSET,
    y0: s.y0 + INSET,
    x1: s.x1 - BLOCK_WIDTH - INSET,
    y1: s.y1 - INSET,
  };
  for (const scale of scales) {
    const items = draw(factor(scale));
    const box = bounds(items);
    if (widthOf(box) > widthOf(area) || heightOf(box) > heightOf(area)) continue;
    const room = s.y1 - s.y0 - block - 2 * INSET;
    const [first = [], ...rest] = pour(strips, [room]);
    const column = stack(first, [s.x1 - BLOCK_WIDTH + INSET, s.y1 - INSET]);
    return { paper, scale, items: [...centred(items, area), ...column], rest: rest.flat() };
  }
  return undefined;
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
  const reducing = SCALES.filter((s) => factor(s) <= 1);
  const cautions = numbered(text.safety.title, text.safety.drawing);
  const pages: Page[] = [
    {
      draw: (k) => elevations(parts, placements, rows, k),
      scales: reducing,
      strips: [
        ...partsList(rows, info.files),
        ...numbered(text.drawing.notes.title, info.notes),
        ...cautions,
      ],
    },
    {
      draw: (k) => exploded(parts, placements, rows, k),
      scales: reducing,
      strips: numbered(text.drawing.assembly.order, info.order),
    },
    ...info.sections.map((section): Page => ({
      draw: (k) => sectionItems(section, k),
      scales: SCALES,
      strips: [heading(section.title, COLUMN)],
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
  const laid: Laid[] = [];
  for (const page of pages) {
    let rest: readonly Strip[] = page.strips;
    let draw = page.draw;
    do {
      const found = papers
        .map((paper) => lay({ ...page, draw, strips: rest }, paper, height))
        .find((l) => l !== undefined);
      if (!found) break;
      laid.push(found);
      rest = found.rest;
      draw = () => [];
    } while (rest.length > 0);
  }
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
