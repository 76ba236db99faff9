import { plain } from '../core/units.ts';
import type { Profile } from '../geometry/loop.ts';
import { boundingBox, containsPoint, distanceToLoop } from '../geometry/loop-measure.ts';
import { scale2, type Vec2 } from '../geometry/vector.ts';
import { text } from '../text/index.ts';
import { COLUMN } from './arrange.ts';
import { linear } from './dimension.ts';
import { blockHeight, sheetOf } from './document.ts';
import { loopItems } from './edges.ts';
import { frameItem, label, TEXT } from './items.ts';
import { fittedTable, heading, paragraph, space, type Strip } from './layout.ts';
import { left, right } from './lists.ts';
import { drawnOnce, laidOut, type Laid, type Page } from './pages.ts';
import { SHEETS } from './paper.ts';
import { factor, FULL_SIZE, SCALES } from './scales.ts';
import type { Item, Sheet } from './sheet.ts';
import type { TitleBlock } from './title-block.ts';

/** A sheet of metal with the pieces that are cut from it, its lower left corner at the origin, mm. */
export interface CuttingPlan {
  /** The cut file that it shows. */
  readonly file: string;
  readonly size: Vec2;
  /** "Mild steel, 8 mm". */
  readonly material: string;
  readonly pieces: readonly {
    readonly part: string;
    readonly name: string;
    readonly cut: Profile;
  }[];
}

/** What all sheets of a design have in common, mm. */
export interface CuttingPlanInfo {
  readonly title: string;
  readonly gap: number;
  readonly margin: number;
}

/** Parts in the order in which they lie, each once, with how many of it there are. */
const partsOf = ({ pieces }: CuttingPlan) =>
  [...new Map(pieces.map((piece) => [piece.part, piece])).values()].map(({ part, name }) => ({
    part,
    name,
    count: pieces.filter((piece) => piece.part === part).length,
  }));

/** Places along either side of a piece at which its number is tried. */
const TRIED = 12;

/** The place in a piece that is farthest from all its edges: there its number stands. */
const roomiest = ({ outer, holes }: Profile): Vec2 => {
  const { min, max } = boundingBox(outer);
  const shares = Array.from({ length: TRIED }, (_, i) => (i + 0.5) / TRIED);
  const places = shares.flatMap((s) =>
    shares.map((t): Vec2 => [min[0] + s * (max[0] - min[0]), min[1] + t * (max[1] - min[1])]),
  );
  const inside = places.filter((p) => containsPoint(outer, p));
  const room = (p: Vec2): number =>
    Math.min(
      ...[outer, ...holes].map((loop) =>
        loop !== outer && containsPoint(loop, p) ? 0 : distanceToLoop(p, loop),
      ),
    );
  return inside.reduce<{ at: Vec2; room: number }>(
    (best, at) => {
      const here = room(at);
      return here > best.room ? { at, room: here } : best;
    },
    { at: [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2], room: 0 },
  ).at;
};

const picture = (plan: CuttingPlan, k: number): Item[] => {
  const numbers = new Map(partsOf(plan).map(({ part }, i) => [part, String(i + 1)]));
  const [width, height] = scale2(plan.size, k);
  return [
    frameItem({ x0: 0, y0: 0, x1: width, y1: height }, 'phantom'),
    ...linear({ axis: 'x', a: [0, 0], b: [width, 0], at: -9, text: plain(plan.size[0], 1) }),
    ...linear({ axis: 'y', a: [0, 0], b: [0, height], at: -9, text: plain(plan.size[1], 1) }),
    ...plan.pieces.flatMap(({ part, cut }) => {
      const [x, y] = scale2(roomiest(cut), k);
      return [
        ...[cut.outer, ...cut.holes].flatMap((loop) => loopItems(loop, k, 'visible')),
        label([x, y - TEXT.small / 2], numbers.get(part) ?? '', { align: 'centre' }),
      ];
    }),
  ];
};

const listed = (plan: CuttingPlan, info: CuttingPlanInfo, block: TitleBlock): Strip[] => {
  const t = text.drawing.cuttingPlan;
  const heads = [right(t.item), left(t.name), right(t.quantity), left(t.drawing)];
  const rows = partsOf(plan).map(({ part, name, count }, i) => [
    String(i + 1),
    name,
    String(count),
    `${block.designId}-${part}`,
  ]);
  const size = plan.size.map((one) => plain(one, 1)).join(' × ');
  return [
    heading(plan.file, COLUMN),
    paragraph(t.sheet(plan.material, size, plain(info.gap, 1), plain(info.margin, 1)), COLUMN),
    paragraph(text.drawing.notes.kerf(block.kerf ?? 0), COLUMN),
    space(2),
    ...fittedTable(heads, rows, COLUMN),
    space(4),
  ];
};

/** Which piece is which on every sheet of metal, and how many of each lie on it. */
export const cuttingPlans = (
  plans: readonly CuttingPlan[],
  info: CuttingPlanInfo,
  block: TitleBlock,
): Sheet[] => {
  const papers = SHEETS[block.paper].filter((paper) => paper.orientation === 'landscape');
  const pages = plans.map((plan): Page => ({
    draw: drawnOnce((k) => picture(plan, k), { width: plan.size[0], height: plan.size[1] }),
    scales: SCALES.filter((scale) => factor(scale) <= 1),
    strips: listed(plan, info, block),
  }));
  const about = {
    id: 'cutting-plan',
    title: info.title,
    documentType: text.drawing.documentTypes.cuttingPlan,
    scale: FULL_SIZE,
  };
  const height = blockHeight(about, block);
  // Pieces lie close: the paper is the smallest of those on which they are drawn largest.
  const tried = papers.map((paper) => laidOut(pages, [paper], height));
  const scaleOf = (laid: readonly Laid[]): number =>
    laid.length < plans.length ? 0 : Math.min(...laid.map(({ scale }) => factor(scale)));
  const best = Math.max(...tried.map(scaleOf));
  const laid = tried.find((one) => scaleOf(one) === best) ?? [];
  return laid.map(({ paper, scale, items }, i) =>
    sheetOf({ ...about, scale }, block, paper, [i + 1, laid.length], items),
  );
};
