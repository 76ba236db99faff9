import { add2, scale2, type Vec2 } from '../geometry/vector.ts';
import { translated } from '../geometry/loop-transform.ts';
import type { PlatePart, StockPart } from '../model/part.ts';
import { text } from '../text/index.ts';
import { boardOf } from './board.ts';
import { grow, heightOf, widthOf, type Box } from './box.ts';
import { checkBars } from './check-bars.ts';
import { clip } from './clip.ts';
import { dimensionText } from './dimension.ts';
import { loopItems } from './edges.ts';
import { names } from './labels.ts';
import { bounds, fillBox, frameItem, label, move, TEXT } from './items.ts';
import { heightOfAll, paragraph, stack, type Strip } from './layout.ts';
import { heightOfPart, markedOut, type Marked } from './marking.ts';
import { landscape, page, sizeOf, type Paper } from './paper.ts';
import { datumOf } from './part-views.ts';
import { factor, FULL_SIZE, SCALES, scaleText } from './scales.ts';
import type { Item, Sheet } from './sheet.ts';
import { joinMarks, MARGIN, STRIP, tilesOf, windowOf, type Tile } from './tiles.ts';
import type { TitleBlock } from './title-block.ts';

/** White space around the part, mm. */
const PAD = 3;

const tileName = (tile: Tile): string => text.drawing.template.tile(tile.row + 1, tile.column + 1);

/** What all pages of one part's template share. */
interface Job {
  readonly part: PlatePart | StockPart;
  readonly block: TitleBlock;
  readonly paper: Paper;
}

/** Words over the window: what it is, what to do with it, and what has to be checked first. */
const header = ({ part, block, paper }: Job, more: string): Strip[] => {
  const t = text.drawing.template;
  const width = sizeOf(paper)[0] - 2 * MARGIN - STRIP;
  const size = dimensionText(heightOfPart(part));
  const facts = t.facts(
    part.kind === 'stock'
      ? t.bar(part.material, part.section, size)
      : text.drawing.partsList.sheet(part.material, size),
    part.quantity,
    `${block.designId}-${part.id}`,
    block.revision,
  );
  return [
    paragraph(`${part.name}${more}`, width, { height: TEXT.heading, bold: true }),
    paragraph(facts, width),
    paragraph(t.actualSize, width, { bold: true }),
  ];
};

/** The words stand this far into the upper margin, mm. */
const RISE = 4;

/** The window under the longest words that a page of the job can have. */
const windowFor = (job: Job): Box => {
  const longest = header(job, `, ${text.drawing.template.tile(10, 10)}`);
  return windowOf(job.paper, heightOfAll(longest) - RISE + 1);
};

const sheetOf = (job: Job, id: string, more: string, items: readonly Item[]): Sheet => {
  const { part, paper } = job;
  const size = sizeOf(paper);
  return {
    id: `${part.id}-template-${id}`,
    title: `${part.name}, ${text.drawing.documentTypes.template}`,
    size,
    items: [
      ...stack(header(job, more), [MARGIN + STRIP, size[1] - MARGIN + RISE]),
      ...checkBars([MARGIN + STRIP, MARGIN + 1], 'x'),
      ...checkBars([MARGIN + STRIP - 3, MARGIN + STRIP], 'y'),
      ...items,
    ],
  };
};

/** The whole template in small with its tiles, so that they can be laid out. */
const overview = (job: Job, tiles: readonly Tile[]): Sheet => {
  const { part } = job;
  const opening = windowFor(job);
  const all = bounds(tiles.map((tile) => frameItem(tile.area, 'phantom')));
  const scale =
    SCALES.find(
      (s) =>
        factor(s) < 1 &&
        widthOf(all) * factor(s) < widthOf(opening) &&
        heightOf(all) * factor(s) < heightOf(opening),
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
    add2([opening.x0, opening.y0], [-all.x0 * k, -all.y0 * k]),
  );
  const more = text.drawing.template.overview(tiles.length, scaleText(scale));
  return sheetOf(job, 'overview', more, items);
};

/** All of a template on one page, in the middle of its opening. */
const single = (job: Job, { items, features }: Marked): Sheet => {
  const opening = windowFor(job);
  const whole = [...items, ...names(features, 1, boardOf(items)).items];
  const box = bounds(whole);
  const to: Vec2 = [
    (opening.x0 + opening.x1 - box.x0 - box.x1) / 2,
    (opening.y0 + opening.y1 - box.y0 - box.y1) / 2,
  ];
  return sheetOf(job, '1', '', move(whole, to));
};

/** One tile: what shows through its window, with the names of the holes whose middle is in it. */
const tiled = (
  job: Job,
  { items, features }: Marked,
  tile: Tile,
  tiles: readonly Tile[],
): Sheet => {
  const opening = windowFor(job);
  const { area } = tile;
  const seen = [
    frameItem(area, 'phantom'),
    ...joinMarks(tile, tiles),
    ...items.flatMap((item) => clip(item, area)),
  ];
  const here = features.filter(
    ({ at: [x, y] }) => x >= area.x0 && x <= area.x1 && y >= area.y0 && y <= area.y1,
  );
  const named = names(here, 1, boardOf(seen), area).items;
  const to: Vec2 = [opening.x0 - area.x0, opening.y0 - area.y0];
  const id = `${String(tile.row + 1)}-${String(tile.column + 1)}`;
  return sheetOf(job, id, `, ${tileName(tile)}`, move([...seen, ...named], to));
};

/**
 * Full-size templates of a part to be sawn and drilled, for a home printer: one page, upright or
 * lying, or tiles with overlap, crosses on every shared edge and an overview. Each page has check
 * bars of 100 mm and 4 in along both axes; tiles that show nothing are left out.
 */
export const templateSheets = (part: PlatePart | StockPart, block: TitleBlock): Sheet[] => {
  const marked = markedOut(part);
  const named = names(marked.features, 1, boardOf(marked.items)).items;
  const extent = grow(bounds([...marked.items, ...named]), PAD);
  const upright = page(block.paper);
  const [first, second] = [upright, landscape(upright.name)].map((paper) => {
    const job = { part, block, paper };
    return { job, tiles: tilesOf(windowFor(job), extent) };
  });
  if (!first || !second) return [];
  const { job, tiles } = second.tiles.length < first.tiles.length ? second : first;
  if (tiles.length === 1) return [single(job, marked)];
  const filled = tiles.filter((tile) =>
    marked.items.some((item) => clip(item, tile.area).length > 0),
  );
  return [overview(job, filled), ...filled.map((tile) => tiled(job, marked, tile, filled))];
};
