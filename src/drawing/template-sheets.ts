import { scale2, add2, type Vec2 } from '../geometry/vector.ts';
import { circle } from '../geometry/loop.ts';
import { boundingBox } from '../geometry/loop-measure.ts';
import { translated } from '../geometry/loop-transform.ts';
import type { CrossHole, Hole, PlatePart, StockPart } from '../model/part.ts';
import { text } from '../text/index.ts';
import { grow, heightOf, widthOf, type Box } from './box.ts';
import { boardOf } from './board.ts';
import { centreLines, datumMark } from './centre-lines.ts';
import { checkBars } from './check-bars.ts';
import { clip } from './clip.ts';
import { dimensionText } from './dimension.ts';
import { loopItems } from './edges.ts';
import { names, type Feature } from './face.ts';
import { shapeOf } from './hole-rows.ts';
import { bounds, circleItem, fillBox, frameItem, label, line, move, TEXT } from './items.ts';
import { paragraph, stack } from './layout.ts';
import { landscape, page, sizeOf, type Paper } from './paper.ts';
import { datumOf } from './part-views.ts';
import { factor, SCALES, scaleText, FULL_SIZE } from './scales.ts';
import type { Item, Sheet } from './sheet.ts';
import type { TitleBlock } from './title-block.ts';

/** Margin that printers leave white, strips for the check bars and for the words, mm. */
const MARGIN = 10;
const STRIP = 18;
const HEADER = 26;
/** Neighbouring tiles show this much of each other, mm. */
const OVERLAP = 10;
/** White space around the part, mm. */
const PAD = 3;

/** Where the template shows on a page. */
const windowOf = (paper: Paper): Box => {
  const [w, h] = sizeOf(paper);
  return { x0: MARGIN + STRIP, y0: MARGIN + STRIP, x1: w - MARGIN, y1: h - MARGIN - HEADER };
};

/** Part of the template that one page shows; rows count upwards from the datum. */
interface Tile {
  readonly row: number;
  readonly column: number;
  readonly area: Box;
}

const tilesOf = (paper: Paper, extent: Box): Tile[] => {
  const window = windowOf(paper);
  const [w, h] = [widthOf(window), heightOf(window)];
  const count = (length: number, room: number): number =>
    Math.max(1, Math.ceil((length - OVERLAP) / (room - OVERLAP)));
  const columns = count(widthOf(extent), w);
  const rows = count(heightOf(extent), h);
  return Array.from({ length: rows * columns }, (_, i) => {
    const [row, column] = [Math.floor(i / columns), i % columns];
    const x0 = extent.x0 + column * (w - OVERLAP);
    const y0 = extent.y0 + row * (h - OVERLAP);
    return { row, column, area: { x0, y0, x1: x0 + w, y1: y0 + h } };
  });
};

const drillText = (hole: Pick<Hole, 'id' | 'size' | 'thread'>): string => {
  const t = text.drawing.template;
  const size = dimensionText(hole.size);
  if (hole.thread !== undefined) return t.tapped(hole.id, size, hole.thread);
  return t.drilled(hole.id, size);
};

const heightOfPart = (part: PlatePart | StockPart): number =>
  Math.max(...part.layers.map((l) => l.to)) - datumOf(part).foot;

/** A centre-punch mark: a small circle on the crossing of the centre lines. */
const punch = (at: Vec2): Item => circleItem(at, 0.6, 'visible');

/** The layers from above at full size: saw lines, holes with punch marks, names and drill sizes. */
const fromAbove = (part: PlatePart | StockPart): Item[] => {
  const { at } = datumOf(part);
  const toDatum: Vec2 = [-at[0], -at[1]];
  const contours = part.layers.flatMap(({ profile }) =>
    [profile.outer, ...profile.holes].flatMap((loop) =>
      loopItems(translated(loop, toDatum), 1, 'cut'),
    ),
  );
  const marks = part.holes.flatMap((hole) => {
    const loop = translated(hole.loop, toDatum);
    const shape = shapeOf(loop);
    const points = shape.kind === 'slot' ? shape.ends : [add2(hole.at, toDatum)];
    return [...centreLines(loop, 1), ...points.map(punch)];
  });
  const items = [...contours, ...marks, ...datumMark([0, 0])];
  const features = part.holes.map((hole): Feature => {
    const { min, max } = boundingBox(hole.loop);
    const half: Vec2 = [(max[0] - min[0]) / 2, (max[1] - min[1]) / 2];
    return { at: add2(hole.at, toDatum), half, id: drillText(hole) };
  });
  return [...items, ...names(features, 1, boardOf(items)).items];
};

/** Lines of a template and the holes that get a name beside them. */
interface Marked {
  readonly items: readonly Item[];
  readonly features: readonly Feature[];
}

/** One face of a bar with the holes drilled into it, from the edge that front and left share. */
const faceOf = (part: StockPart, face: CrossHole['face']): Marked => {
  const { at, foot, box } = datumOf(part);
  const along = face === 'y' ? 0 : 1;
  const sign = face === 'y' ? 1 : -1;
  const length = sign * (box.max[along] - box.min[along]);
  const holes = part.crossHoles.filter((hole) => hole.face === face);
  const spot = (hole: CrossHole): Vec2 => [sign * (hole.at[0] - at[along]), hole.at[1] - foot];
  const outline = {
    x0: Math.min(0, length),
    y0: 0,
    x1: Math.max(0, length),
    y1: heightOfPart(part),
  };
  const marks = holes.flatMap((hole) => {
    const loop = circle(spot(hole), hole.size / 2);
    return [...loopItems(loop, 1, 'cut'), ...centreLines(loop, 1), punch(spot(hole))];
  });
  return {
    items: [frameItem(outline, 'cut'), ...marks],
    features: holes.map((hole) => {
      const half = hole.size / 2;
      return { at: spot(hole), half: [half, half], id: drillText(hole) };
    }),
  };
};

/** The edge along which the paper is folded over the bar. */
const foldLine = (height: number): Item[] => [
  line([0, -4], [0, height + 4], 'phantom'),
  label([0, height + 5.5], text.drawing.template.fold, { height: TEXT.small, align: 'centre' }),
];

/**
 * A bar unfolded: front and left face share the edge along which the paper is folded, so that one
 * wrap marks both; holes from above are marked on a picture of their own below.
 */
const unfolded = (part: StockPart): Item[] => {
  const sides = (['x', 'y'] as const).filter((side) =>
    part.crossHoles.some((hole) => hole.face === side),
  );
  if (sides.length === 0) return fromAbove(part);
  const faces = sides.map((side) => faceOf(part, side));
  const items = [
    ...faces.flatMap((face) => face.items),
    ...(sides.length === 2 ? foldLine(heightOfPart(part)) : []),
    ...datumMark([0, 0]),
  ];
  const features = faces.flatMap((face) => face.features);
  const marked = [...items, ...names(features, 1, boardOf(items)).items];
  if (part.holes.length === 0) return marked;
  const above = fromAbove(part);
  return [...above, ...move(marked, [0, bounds(above).y1 - bounds(marked).y0 + 10])];
};

const drawn = (part: PlatePart | StockPart): Item[] =>
  part.kind === 'stock' ? unfolded(part) : fromAbove(part);

/** Crosses in the overlap with the neighbours above and to the right, seen on both pages. */
const joinMarks = (tile: Tile, tiles: readonly Tile[]): Item[] => {
  const has = (row: number, column: number): boolean =>
    tiles.some((other) => other.row === row && other.column === column);
  const cross = ([x, y]: Vec2): Item[] => [
    line([x - 4, y], [x + 4, y], 'phantom'),
    line([x, y - 4], [x, y + 4], 'phantom'),
    circleItem([x, y], 2, 'dimension'),
  ];
  const { x0, y0, x1, y1 } = tile.area;
  const shares = [0.25, 0.75];
  const half = OVERLAP / 2;
  return [
    ...(has(tile.row, tile.column + 1)
      ? shares.flatMap((s) => cross([x1 - half, y0 + s * (y1 - y0)]))
      : []),
    ...(has(tile.row, tile.column - 1)
      ? shares.flatMap((s) => cross([x0 + half, y0 + s * (y1 - y0)]))
      : []),
    ...(has(tile.row + 1, tile.column)
      ? shares.flatMap((s) => cross([x0 + s * (x1 - x0), y1 - half]))
      : []),
    ...(has(tile.row - 1, tile.column)
      ? shares.flatMap((s) => cross([x0 + s * (x1 - x0), y0 + half]))
      : []),
  ];
};

const tileName = (tile: Tile): string => text.drawing.template.tile(tile.row + 1, tile.column + 1);

/** Words over the window: what it is, what to do with it, and what has to be checked first. */
const header = (
  part: PlatePart | StockPart,
  block: TitleBlock,
  paper: Paper,
  more: string,
): Item[] => {
  const t = text.drawing.template;
  const [w, h] = sizeOf(paper);
  const left = MARGIN + STRIP;
  const width = w - MARGIN - left;
  const strips = [
    paragraph(`${part.name}${more}`, width, { height: TEXT.heading, bold: true }),
    paragraph(
      t.facts(
        part.material,
        dimensionText(heightOfPart(part)),
        part.quantity,
        `${block.designId}-${part.id}`,
        block.revision,
      ),
      width,
    ),
    paragraph(t.actualSize, width, { bold: true }),
  ];
  return stack(strips, [left, h - MARGIN + 4]);
};

const sheetOf = (
  part: PlatePart | StockPart,
  block: TitleBlock,
  paper: Paper,
  items: readonly Item[],
  name: { readonly id: string; readonly suffix: string },
): Sheet => ({
  id: `${part.id}-template-${name.id}`,
  title: `${part.name}, ${text.drawing.documentTypes.template}`,
  size: sizeOf(paper),
  items: [
    ...header(part, block, paper, name.suffix),
    ...checkBars([MARGIN + STRIP, MARGIN + 1], 'x'),
    ...checkBars([MARGIN + STRIP - 3, MARGIN + STRIP], 'y'),
    ...items,
  ],
});

/** The whole template in small with its tiles, so that they can be laid out. */
const overview = (
  part: PlatePart | StockPart,
  block: TitleBlock,
  paper: Paper,
  tiles: readonly Tile[],
): Sheet => {
  const window = windowOf(paper);
  const all = bounds(tiles.map((tile) => frameItem(tile.area, 'phantom')));
  const scale =
    SCALES.find(
      (s) =>
        factor(s) < 1 &&
        widthOf(all) * factor(s) < widthOf(window) &&
        heightOf(all) * factor(s) < heightOf(window),
    ) ?? FULL_SIZE;
  const k = factor(scale);
  const small = ({ x0, y0, x1, y1 }: Box): Box => ({
    x0: x0 * k,
    y0: y0 * k,
    x1: x1 * k,
    y1: y1 * k,
  });
  const outline = part.layers.flatMap(({ profile }) => {
    const { at } = datumOf(part);
    return loopItems(translated(profile.outer, scale2(at, -1)), k, 'visible');
  });
  const frames = tiles.flatMap((tile) => {
    const box = small(tile.area);
    const middle: Vec2 = [(box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2];
    const name = label(middle, tileName(tile), { height: TEXT.small, align: 'centre' });
    return [frameItem(box, 'phantom'), fillBox(grow(bounds([name]), 0.5), 'paper'), name];
  });
  const items = move(
    [...outline, ...frames],
    add2([window.x0, window.y0], [-all.x0 * k, -all.y0 * k]),
  );
  return sheetOf(part, block, paper, items, {
    id: 'overview',
    suffix: text.drawing.template.overview(tiles.length, scaleText(scale)),
  });
};

/**
 * Full-size templates of a part to be sawn and drilled, for a home printer: one page, upright or
 * lying, or tiles with overlap, crosses on every shared edge and an overview. Each page has check
 * bars of 100 mm and 4 in along both axes; tiles that show nothing are left out.
 */
export const templateSheets = (part: PlatePart | StockPart, block: TitleBlock): Sheet[] => {
  const whole = drawn(part);
  const extent = grow(bounds(whole), PAD);
  const upright = page(block.paper);
  const papers = [upright, landscape(upright.name)];
  const layouts = papers.map((paper) => ({ paper, tiles: tilesOf(paper, extent) }));
  const [first, second] = layouts;
  if (!first || !second) return [];
  const { paper, tiles } = second.tiles.length < first.tiles.length ? second : first;
  const window = windowOf(paper);
  const shown = (tile: Tile): Item[] => whole.flatMap((item) => clip(item, tile.area));
  const filled = tiles.filter((tile) => shown(tile).length > 0);
  const pages = filled.map((tile) => {
    const single = filled.length === 1;
    const to: Vec2 = single
      ? [
          (window.x0 + window.x1 - extent.x0 - extent.x1) / 2,
          (window.y0 + window.y1 - extent.y0 - extent.y1) / 2,
        ]
      : [window.x0 - tile.area.x0, window.y0 - tile.area.y0];
    const edge = single ? [] : [frameItem(tile.area, 'phantom'), ...joinMarks(tile, filled)];
    return sheetOf(part, block, paper, move([...edge, ...shown(tile)], to), {
      id: single ? '1' : `${String(tile.row + 1)}-${String(tile.column + 1)}`,
      suffix: single ? '' : `, ${tileName(tile)}`,
    });
  });
  return filled.length > 1 ? [overview(part, block, paper, filled), ...pages] : pages;
};
