import { onCircle, type Arc } from '../geometry/arc.ts';
import { scale2, type Vec2 } from '../geometry/vector.ts';
import { text as words } from '../text/index.ts';
import { crossed, isFree, joins, onto, type Board } from './board.ts';
import { contains, type Box } from './box.ts';
import { arrow, dimensionText, leader } from './dimension.ts';
import { label, line, TEXT, textBox } from './items.ts';
import type { Item } from './sheet.ts';
import { textWidth } from './text-width.ts';

/** Something that has to be located: where it is, mm from the datum, and how far it reaches. */
export interface Feature {
  readonly at: Vec2;
  /** Half its size along x and y, mm: 0 for a corner. */
  readonly half: Vec2;
  /** Its name beside it in the view; corners have none. */
  readonly id?: string;
}

/** Labels that found their place, and how many found none beside what they belong to. */
export interface Labels {
  readonly items: Item[];
  readonly lost: number;
}

/** One way of drawing a label: longer leaders and crossed lines cost more. */
interface Candidate {
  readonly cost: number;
  readonly items: readonly Item[];
}

/** The cheapest candidate over all bands, where one of a band costs at least the band's floor. */
const cheapest = (
  floors: readonly number[],
  candidates: (floor: number) => Iterable<Candidate>,
): Candidate | undefined => {
  let best: Candidate | undefined;
  for (const floor of floors)
    for (const candidate of candidates(floor)) {
      if (!best || candidate.cost < best.cost) best = candidate;
      if (best.cost <= floor) return best;
    }
  return best;
};

/** The last resort: right of everything drawn, where there is always room. */
const aside = (value: string, board: Board): Item[] => {
  const right = Math.max(
    0,
    ...board.stretches.flat().map((p) => p[0]),
    ...board.texts.map((b) => b.x1),
  );
  return [label([right + 3, 0], value)];
};

/** Lengths of radius leaders that are tried, mm. */
const REACHES = [5, 8, 11, 15, 20, 26, 33, 42, 55, 70, 90];
/** So many arcs of one radius are tried. */
const TRIED = 12;

/** Leaders to a radius that can join the board: along several arcs, from inside and outside. */
function* radiusLeaders(
  arcs: readonly Arc[],
  k: number,
  reach: number,
  value: string,
  board: Board,
): Iterable<Candidate> {
  for (const arc of arcs.slice(0, TRIED))
    for (const share of [0.5, 0.3, 0.7])
      for (const way of [1, -1]) {
        const angle = arc.start + arc.sweep * share;
        const centre = scale2(arc.centre, k);
        const r = arc.radius * k;
        if (way < 0 && reach > r && r > 15) continue;
        const tip = onCircle(centre, r, angle);
        const bend = onCircle(centre, r + way * reach, angle);
        const items = leader(tip, bend, value);
        if (!joins(board, items)) continue;
        const lines = items.reduce(
          (sum, item) => sum + (item.kind === 'line' ? crossed(board, item.a, item.b) : 0),
          0,
        );
        yield { cost: reach + 6 * lines, items };
      }
}

/** Radii, each written once with the number of arcs that have it, where a leader finds room. */
export const radii = (arcs: readonly Arc[], k: number, start: Board): Labels => {
  const groups = new Map<string, Arc[]>();
  for (const arc of arcs) {
    const name = dimensionText(arc.radius);
    groups.set(name, [...(groups.get(name) ?? []), arc]);
  }
  let board = start;
  let lost = 0;
  const items: Item[] = [];
  for (const [radius, group] of groups) {
    // Arcs that go on round one middle are one to whoever sees them.
    const middles = new Set(group.map(({ centre }) => centre.map(dimensionText).join(' ')));
    const value = words.drawing.radius(radius, middles.size);
    const ground = board;
    const best = cheapest(REACHES, (reach) => radiusLeaders(group, k, reach, value, ground));
    if (!best) lost++;
    const chosen = best?.items ?? aside(value, board);
    items.push(...chosen);
    board = onto(board, chosen);
  }
  return { items, lost };
};

/** Directions in which names are tried, degrees, the usual places first. */
const DIRECTIONS = [45, 135, 315, 225, 90, 270, 0, 180, 67, 113, 23, 157, 293, 247, 337, 203];
/** How much further than beside the feature a name may stand, mm; with a leader from the third on. */
const EXTRAS = [0, 1.5, 4, 7, 10, 14, 19, 25, 32, 40, 50, 62, 76, 92];
const BESIDE = 2;
/** A leader is longer than its arrowhead, mm. */
const SHORTEST = 4;

/** Where a ray from the middle of a box leaves it. */
const leaving = (u: Vec2, w: number, h: number): number =>
  Math.min(
    Math.abs(u[0]) < 1e-6 ? Infinity : w / Math.abs(u[0]),
    Math.abs(u[1]) < 1e-6 ? Infinity : h / Math.abs(u[1]),
  );

/** Ways to write a name at a distance from its feature, in all directions. */
function* nameSpots(
  feature: Feature,
  id: string,
  k: number,
  extra: number,
  board: Board,
  within: Box | undefined,
): Iterable<Candidate> {
  const centre = scale2(feature.at, k);
  const reach = scale2(feature.half, k);
  const w = textWidth(id, TEXT.normal) / 2;
  const h = TEXT.normal / 2;
  for (const direction of DIRECTIONS) {
    const u = onCircle([0, 0], 1, direction);
    const t = leaving(u, reach[0] + w + 1.2, reach[1] + h + 1.2) + extra;
    const middle = onCircle(centre, t, direction);
    const name = label([middle[0], middle[1] - h], id, { align: 'centre' });
    const box = textBox(name);
    if (!isFree(board, box) || (within && !contains(within, box))) continue;
    if (extra < BESIDE) {
      yield { cost: extra, items: [name] };
      continue;
    }
    const rim = Math.min(leaving(u, reach[0], reach[1]), Math.max(...reach));
    const from = onCircle(centre, rim, direction);
    const to = onCircle(centre, t - leaving(u, w + 1, h + 1.8), direction);
    if (Math.hypot(to[0] - from[0], to[1] - from[1]) < SHORTEST) continue;
    const items = [line(from, to, 'dimension'), arrow(from, direction), name];
    if (joins(board, items)) yield { cost: extra + 5 * crossed(board, from, to), items };
  }
}

/**
 * Names beside their features, without a line where there is room, else with a leader. All stay
 * inside `within` where it is given, and one that cannot is left to the hole table.
 */
export const names = (
  features: readonly Feature[],
  k: number,
  start: Board,
  within?: Box,
): Labels => {
  let board = start;
  let lost = 0;
  const items: Item[] = [];
  for (const feature of features) {
    const { id } = feature;
    if (id === undefined) continue;
    const ground = board;
    const best = cheapest(EXTRAS, (extra) => nameSpots(feature, id, k, extra, ground, within));
    if (!best) lost++;
    const chosen = best?.items ?? (within ? [] : aside(id, board));
    items.push(...chosen);
    board = onto(board, chosen);
  }
  return { items, lost };
};
