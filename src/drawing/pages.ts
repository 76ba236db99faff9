import { createStore } from '../core/store.ts';
import { INSET } from './arrange.ts';
import { heightOf, widthOf, type Box } from './box.ts';
import { bounds, move } from './items.ts';
import { pour, stack, type Strip } from './layout.ts';
import { spaceOf, type Paper } from './paper.ts';
import { factor, FULL_SIZE, SCALES, type Scale } from './scales.ts';
import type { Item } from './sheet.ts';
import { BLOCK_WIDTH } from './title-block.ts';

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** A picture that can be drawn at any scale. */
export interface Drawn {
  /** The picture at a scale, and the box around it. */
  readonly at: (k: number) => { readonly items: Item[]; readonly box: Box };
  /** What it takes at full size without its words, mm; with the scale this grows and they do not. */
  readonly bare: Size;
}

/** A picture with its box, drawn once at each scale: every size of paper tries them. */
export const drawnOnce = (
  draw: (k: number) => Item[],
  bare: Size = { width: 0, height: 0 },
): Drawn => {
  const drawn = createStore<ReturnType<Drawn['at']>>(SCALES.length);
  const at: Drawn['at'] = (k) =>
    drawn(String(k), () => {
      const items = draw(k);
      return { items, box: bounds(items) };
    });
  return { at, bare };
};

/** What pictures take side by side or one below the other, the air between them left out. */
export const rowOf = (sizes: readonly Size[]): Size => ({
  width: sizes.reduce((sum, { width }) => sum + width, 0),
  height: Math.max(0, ...sizes.map(({ height }) => height)),
});
export const columnOf = (sizes: readonly Size[]): Size => ({
  width: Math.max(0, ...sizes.map(({ width }) => width)),
  height: sizes.reduce((sum, { height }) => sum + height, 0),
});
export const extentOf = (box: Box): Size => ({ width: widthOf(box), height: heightOf(box) });

/** A page with a picture left and a column of strips above the title block. */
export interface Page {
  readonly draw: Drawn;
  readonly scales: readonly Scale[];
  readonly strips: readonly Strip[];
  /**
   * What stands left of the title block, below the picture; below that of a later page where this
   * one would be smaller for it.
   */
  readonly foot?: (width: number) => Strip;
}

/** A page on its paper; strips that found no room are left. */
export interface Laid {
  readonly paper: Paper;
  readonly scale: Scale;
  readonly items: readonly Item[];
  readonly rest: readonly Strip[];
}

const centred = (items: readonly Item[], have: Box, box: Box): Item[] =>
  move(items, [
    (box.x0 + box.x1 - have.x0 - have.x1) / 2,
    (box.y0 + box.y1 - have.y0 - have.y1) / 2,
  ]);

/** Where a picture may stand: beside the column, or all over the title block where none is needed. */
const areasOf = (paper: Paper, block: number, foot: number, column: boolean): Box[] => {
  const s = spaceOf(paper);
  const [left, top] = [s.x0 + INSET, s.y1 - INSET];
  const low = s.y0 + INSET + (foot > 0 ? foot + INSET : 0);
  const beside = { x0: left, y0: low, x1: s.x1 - BLOCK_WIDTH - INSET, y1: top };
  const above = { x0: left, y0: s.y0 + block + INSET, x1: s.x1 - INSET, y1: top };
  return column || foot > 0 ? [beside] : [above, beside];
};

const fits = (have: Box, area: Box): boolean =>
  widthOf(have) <= widthOf(area) && heightOf(have) <= heightOf(area);

/** Far above what rounding does to a length on paper, mm. */
const ROUNDING = 1e-6;

/** Whether a picture is too large for an area without its words already, and need not be drawn. */
const isTooLarge = ({ bare }: Drawn, k: number, area: Box): boolean =>
  bare.width * k > widthOf(area) + ROUNDING || bare.height * k > heightOf(area) + ROUNDING;

/** The page with its picture at the largest scale that fits on the paper. */
const lay = (page: Page, paper: Paper, block: number): Laid | undefined => {
  const { draw, scales, strips, foot } = page;
  const s = spaceOf(paper);
  const [left, low] = [s.x0 + INSET, s.y0 + INSET];
  const below = foot?.(s.x1 - BLOCK_WIDTH - INSET - left);
  const areas = areasOf(paper, block, below?.height ?? 0, strips.length > 0);
  for (const scale of scales) {
    const k = factor(scale);
    if (areas.every((one) => isTooLarge(draw, k, one))) continue;
    const { items, box } = draw.at(k);
    const area = areas.find((one) => items.length === 0 || fits(box, one));
    if (!area) continue;
    const room = s.y1 - s.y0 - block - 2 * INSET;
    const [first = [], ...rest] = pour(strips, [room]);
    return {
      paper,
      scale,
      items: [
        ...(items.length > 0 ? centred(items, box, area) : []),
        ...(below ? stack([below], [left, low + below.height]) : []),
        ...stack(first, [s.x1 - BLOCK_WIDTH + INSET, s.y1 - INSET]),
      ],
      rest: rest.flat(),
    };
  }
  return undefined;
};

/** Strips as they are; none where they are nothing but air. */
const said = (strips: readonly Strip[]): readonly Strip[] =>
  strips.some(({ items }) => items.length > 0) ? strips : [];

/** Air between pictures that share a sheet, mm. */
const BETWEEN = 15;

/** Two pictures side by side, their middles at one height. */
const beside = (one: Page, other: Page): Page => ({
  draw: drawnOnce(
    (k) => {
      const [a, b] = [one.draw.at(k), other.draw.at(k)];
      const up = (a.box.y0 + a.box.y1 - b.box.y0 - b.box.y1) / 2;
      return [...a.items, ...move(b.items, [a.box.x1 - b.box.x0 + BETWEEN, up])];
    },
    rowOf([one.draw.bare, other.draw.bare]),
  ),
  scales: one.scales.filter((scale) => other.scales.includes(scale)),
  strips: [],
});

/** Whether pictures that share a sheet are no smaller than each on one of its own. */
const isNoLess = (shared: Laid | undefined, alone: readonly (Laid | undefined)[]): boolean =>
  shared !== undefined && alone.every((one) => one && factor(shared.scale) >= factor(one.scale));

/** The page on the smallest of the papers that holds it. */
const laidOn = (page: Page, papers: readonly Paper[], block: number): Laid | undefined => {
  for (const paper of papers) {
    const found = lay(page, paper, block);
    if (found) return found;
  }
  return undefined;
};

const footless = ({ draw, scales, strips }: Page): Page => ({ draw, scales, strips });

/**
 * Pages on their papers, `block` mm kept free for the title block. The column beside the pictures is
 * one stream: what finds no room goes on beside the next. Pictures that need no column stand side
 * by side as long as none gets smaller by it.
 */
export const laidOut = (
  pages: readonly Page[],
  papers: readonly Paper[],
  block: number,
): readonly Laid[] => {
  const laid: Laid[] = [];
  let rest: readonly Strip[] = [];
  let foot: Page['foot'];
  const waiting = [...pages];
  for (let page = waiting.shift(); page; page = waiting.shift()) {
    let one: Page = { ...(foot && { foot }), ...page, strips: [...rest, ...page.strips] };
    let found = laidOn(one, papers, block);
    foot = undefined;
    if (one.foot && waiting.length > 0) {
      const free = laidOn(footless(one), papers, block);
      if (!isNoLess(found, [free])) {
        foot = one.foot;
        [one, found] = [footless(one), free];
      }
    }
    for (let next = waiting[0]; next; next = waiting[0]) {
      if (one.strips.length > 0 || next.strips.length > 0 || one.foot || next.foot) break;
      const both = beside(one, next);
      const shared = laidOn(both, papers, block);
      if (!isNoLess(shared, [found, laidOn(next, papers, block)])) break;
      [one, found] = [both, shared];
      waiting.shift();
    }
    if (!found) continue;
    laid.push(found);
    rest = said(found.rest);
  }
  const bare: Page = { draw: drawnOnce(() => []), scales: [FULL_SIZE], strips: [] };
  for (let more = rest.length; more > 0 && rest.length > 0; more--) {
    const found = laidOn({ ...bare, strips: rest }, papers, block);
    if (!found) break;
    laid.push(found);
    rest = said(found.rest);
  }
  return laid;
};
