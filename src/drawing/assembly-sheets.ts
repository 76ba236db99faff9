import { plain } from '../core/units.ts';
import { scale2 } from '../geometry/vector.ts';
import type { Part, Placement } from '../model/part.ts';
import { text } from '../text/index.ts';
import { COLUMN, INSET } from './arrange.ts';
import { balloons, seenAt, type Pointer } from './balloons.ts';
import { sectionItems, type Section } from './belt-section.ts';
import { boardOf, isFree } from './board.ts';
import { bodiesOf, pathBody, type Body } from './bodies.ts';
import { border } from './border.ts';
import { heightOf, union, widthOf, type Box } from './box.ts';
import { linear } from './dimension.ts';
import { codeStrip } from './code.ts';
import { withCuts } from './cut-marks.ts';
import { cutsOf, cutView, type Cut, type CutPlane } from './cut-view.ts';
import { explode } from './explode.ts';
import { bounds, label, move, scaled, TEXT } from './items.ts';
import { fittedTable, heading, paragraph, pour, space, stack, type Strip } from './layout.ts';
import { SHEETS, sizeOf, spaceOf, type Paper } from './paper.ts';
import { factor, FULL_SIZE, SCALES, type Scale } from './scales.ts';
import { ABOVE_SIDE, ISOMETRIC, scene, SIDE, type Eye } from './scene.ts';
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
  /** Upright planes along which the assembly is cut to show how it works inside. */
  readonly cuts?: readonly CutPlane[];
}

/** Space between lifted parts, mm. */
const LIFT = 8;

interface Row {
  readonly item: string;
  readonly part: Part;
  readonly placed: ReadonlySet<string>;
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
  return part.kind === 'stock' ? `${part.material}, ${part.section}` : part.material;
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

/** A picture at full size with the places its item numbers point to; drawn at any scale. */
interface Picture {
  readonly items: readonly Item[];
  readonly box: Box;
  readonly pointers: readonly Pointer[];
}

const pictureOf = (bodies: readonly Body[], eye: Eye, rows: readonly Row[]): Picture => {
  const view = scene(bodies, eye, 1);
  const pointers = rows.flatMap(({ item, placed }) => {
    const at = seenAt(placed, view);
    return at ? [{ text: item, at }] : [];
  });
  return { items: view.items, box: view.box, pointers };
};

const atScale = ({ items, box, pointers }: Picture, k: number): Picture => ({
  items: scaled(items, k),
  box: { x0: box.x0 * k, y0: box.y0 * k, x1: box.x1 * k, y1: box.y1 * k },
  pointers: pointers.map(({ text, at }) => ({ text, at: scale2(at, k) })),
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

/** Side view and, below it in first-angle projection, the view from above; drawn at any scale. */
const elevations = (
  parts: readonly Part[],
  placements: readonly Placement[],
  rows: readonly Row[],
  cuts: readonly Cut[],
): ((k: number) => Item[]) => {
  const bodies = bodiesOf(parts, placements);
  // Bought parts are small and many: their numbers are in the exploded view.
  const made = rows.filter((row) => row.part.kind !== 'hardware');
  const pictures = [SIDE, ABOVE_SIDE].map((eye) => pictureOf(bodies, eye, made));
  return (k) => {
    const [side = [], above = []] = pictures.map((picture, i) => {
      const { items, box, pointers } = atScale(picture, k);
      const across = i === 0 ? overall(box, k, 'x') : [];
      const up = overall(box, k, 'y');
      const around = union(box, bounds(up));
      const drawn = [...items, ...up.filter((item) => item.kind !== 'text')];
      const { marks, numbers } = withCuts(i === 0 ? [] : cuts, box, k, drawn, (wide) =>
        balloons(pointers, union(around, wide)),
      );
      const others = [...marks, ...numbers];
      return [...items, ...across, ...overallUp(box, k, others), ...others];
    });
    return [...side, ...move(above, [0, bounds(side).y0 - bounds(above).y1 - 10])];
  };
};

/** The assembly cut along a plane, with item numbers and its letters above. */
const cutPage = (
  parts: readonly Part[],
  placements: readonly Placement[],
  rows: readonly Row[],
  cut: Cut,
): ((k: number) => Item[]) => {
  const draw = cutView(parts, placements, cut);
  const full = draw(1);
  const pointers = rows.flatMap(({ item, placed }) => {
    const at = seenAt(placed, full);
    return at ? [{ text: item, at }] : [];
  });
  return (k) => {
    const { items, box } = draw(k);
    const numbers = pointers.map((pointer) => ({ ...pointer, at: scale2(pointer.at, k) }));
    return titled([...items, ...balloons(numbers, box)], text.drawing.assembly.cut(cut.letter));
  };
};

const exploded = (
  parts: readonly Part[],
  placements: readonly Placement[],
  rows: readonly Row[],
): ((k: number) => Item[]) => {
  const lifted = explode(parts, placements, LIFT);
  const bodies = bodiesOf(
    parts,
    lifted.map((l) => l.placement),
  );
  const paths = lifted
    .filter(({ path: [a, b] }) => a[2] - b[2] > 1e-6)
    .map(({ placement, path }) => pathBody(placement.name, path));
  const picture = pictureOf([...bodies, ...paths], ISOMETRIC, rows);
  return (k) => {
    const { items, box, pointers } = atScale(picture, k);
    return [...items, ...balloons(pointers, box)];
  };
};

/** A picture with its title above it. */
const titled = (items: readonly Item[], title: string): Item[] => {
  const box = bounds(items);
  const at = [(box.x0 + box.x1) / 2, box.y1 + 8] as const;
  return [...items, label(at, title, { height: TEXT.heading, align: 'centre' })];
};

/** A page with a picture left and a column of strips above the title block. */
interface Page {
  readonly draw: (k: number) => Item[];
  readonly scales: readonly Scale[];
  readonly strips: readonly Strip[];
  /** What stands left of the title block, below the picture. */
  readonly foot?: (width: number) => Strip;
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
const lay = (
  { draw, scales, strips, foot }: Page,
  paper: Paper,
  block: number,
): Laid | undefined => {
  const s = spaceOf(paper);
  const [left, right, low] = [s.x0 + INSET, s.x1 - BLOCK_WIDTH - INSET, s.y0 + INSET];
  const below = foot?.(right - left);
  const area = {
    x0: left,
    y0: low + (below ? below.height + INSET : 0),
    x1: right,
    y1: s.y1 - INSET,
  };
  for (const scale of scales) {
    const items = draw(factor(scale));
    const box = items.length > 0 ? bounds(items) : area;
    if (widthOf(box) > widthOf(area) || heightOf(box) > heightOf(area)) continue;
    const room = s.y1 - s.y0 - block - 2 * INSET;
    const [first = [], ...rest] = pour(strips, [room]);
    const column = stack(first, [s.x1 - BLOCK_WIDTH + INSET, s.y1 - INSET]);
    return {
      paper,
      scale,
      items: [
        ...(items.length > 0 ? centred(items, area) : []),
        ...(below ? stack([below], [left, low + below.height]) : []),
        ...column,
      ],
      rest: rest.flat(),
    };
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
  const { link } = block;
  const cuts = cutsOf(info.cuts ?? [], placements);
  const reducing = SCALES.filter((s) => factor(s) <= 1);
  const pages: Page[] = [
    {
      draw: elevations(parts, placements, rows, cuts),
      scales: reducing,
      strips: partsList(rows, info.files),
      ...(link === undefined ? {} : { foot: (width) => codeStrip(link, block.designId, width) }),
    },
    {
      draw: exploded(parts, placements, rows),
      scales: reducing,
      strips: [
        ...numbered(text.drawing.assembly.order, info.order),
        ...numbered(text.drawing.notes.title, info.notes),
        ...numbered(text.safety.title, text.safety.drawing),
      ],
    },
    ...cuts.map((cut): Page => ({
      draw: cutPage(parts, placements, rows, cut),
      scales: SCALES.filter((s) => factor(s) <= 2),
      strips: [paragraph(text.drawing.assembly.cutNote(cut.letter), COLUMN), space(3)],
    })),
    ...info.sections.map((section): Page => ({
      draw: (k) => titled(sectionItems(section, k), section.title),
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
  const laid: Laid[] = [];
  // The column beside the pictures is one stream: what finds no room goes on beside the next.
  let rest: readonly Strip[] = [];
  const put = (page: Page): void => {
    for (const paper of papers) {
      const found = lay({ ...page, strips: [...rest, ...page.strips] }, paper, height);
      if (!found) continue;
      laid.push(found);
      rest = found.rest;
      return;
    }
  };
  pages.forEach(put);
  for (let more = rest.length; more > 0 && rest.length > 0; more--)
    put({ draw: () => [], scales: [FULL_SIZE], strips: [] });
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
