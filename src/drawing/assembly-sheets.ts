import { scale2, type Vec2 } from '../geometry/vector.ts';
import type { Part, Placement } from '../model/part.ts';
import { text } from '../text/index.ts';
import { COLUMN } from './arrange.ts';
import { balloons, seenIn } from './balloons.ts';
import { sectionItems, type Section } from './belt-section.ts';
import { bodiesOf, splitThrough, type Body } from './bodies.ts';
import { around, type Box } from './box.ts';
import { codeStrip } from './code.ts';
import { cutsOf, cutView, type Cut, type CutPlane } from './cut-view.ts';
import { bounds, label, move, scaled, TEXT } from './items.ts';
import { blockHeight, sheetOf } from './document.ts';
import { heading, paragraph, space, type Strip } from './layout.ts';
import {
  columnOf,
  drawnOnce,
  extentOf,
  laidOut,
  rowOf,
  type Drawn,
  type Page,
  type Size,
} from './pages.ts';
import { explodedFrom, withNumbers } from './pictures.ts';
import { SHEETS } from './paper.ts';
import { factor, FULL_SIZE, SCALES } from './scales.ts';
import { FROM_BELOW, ISOMETRIC } from './eye.ts';
import { scene } from './scene.ts';
import type { Item, Sheet } from './sheet.ts';
import { elevations } from './assembly-views.ts';
import { partsList, rowsOf, type Row } from './parts-list.ts';
import type { TitleBlock } from './title-block.ts';

/** What the drawing of an assembly needs beyond its parts. */
export interface AssemblyInfo {
  readonly title: string;
  /** File of each part that has one, by part id. */
  readonly files: ReadonlyMap<string, string>;
  /** What no drawing shows and building needs: the thing, and its use. */
  readonly supplies?: readonly (readonly [what: string, use: string])[];
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

const numbered = (title: string, lines: readonly string[]): Strip[] => {
  const head = heading(title, COLUMN);
  return lines.length === 0
    ? []
    : [
        head,
        ...lines.map((s, i) => ({
          ...paragraph(s, COLUMN, { mark: String(i + 1), indent: 7 }),
          head,
        })),
        space(3),
      ];
};

/** What is needed besides the parts, in one paragraph. */
const suppliesOf = ({ supplies = [] }: AssemblyInfo): Strip[] => {
  const t = text.drawing.assembly;
  const told = supplies.map(([what, use]) => t.supply(what, use)).join('; ');
  return supplies.length === 0
    ? []
    : [heading(t.supplies, COLUMN), paragraph(told, COLUMN), space(3)];
};

/** The assembly as it stands when built, from the maker's right. */
const assembled = (bodies: readonly Body[]): Drawn => {
  const view = scene(bodies, ISOMETRIC, 1);
  const draw = (k: number): Item[] =>
    titled(scaled(view.items, k), text.drawing.assembly.assembled);
  return drawnOnce(draw, extentOf(view.box));
};

/** Between two pictures of a page, mm. */
const BETWEEN = 15;

/**
 * Pictures in the order in which they are given, one below the other or one beside the other: as a
 * lying sheet, wider than high by the root of two, takes them larger.
 */
const together = (pictures: readonly Drawn[]): Drawn => {
  const bare = pictures.map((picture) => picture.bare);
  const [column, row] = [columnOf(bare), rowOf(bare)];
  const needs = ({ width, height }: Size): number => Math.max(width / Math.SQRT2, height);
  const isRow = needs(row) < needs(column);
  const next = (over: Box, box: Box): Vec2 =>
    isRow
      ? [over.x1 + BETWEEN - box.x0, over.y1 - box.y1]
      : [(over.x0 + over.x1 - box.x0 - box.x1) / 2, over.y0 - box.y1 - BETWEEN];
  return drawnOnce(
    (k) =>
      pictures.reduce<Item[]>((before, { at }) => {
        const { items, box } = at(k);
        if (before.length === 0) return items;
        return [...before, ...move(items, next(bounds(before), box))];
      }, []),
    isRow ? row : column,
  );
};

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
      strips: [...partsList(rows, info.files), ...suppliesOf(info)],
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
            draw: together(cuts.map((cut) => cutPicture(parts, placements, rows, cut))),
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
  const about = {
    id: 'assembly',
    title: info.title,
    documentType: text.drawing.documentTypes.assembly,
    scale: FULL_SIZE,
  };
  const height = blockHeight(about, block);
  const laid = laidOut(pages, papers, height);
  return laid.map(({ paper, scale, items }, i) =>
    sheetOf({ ...about, scale }, block, paper, [i + 1, laid.length], items),
  );
};
