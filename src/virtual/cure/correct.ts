import type { Reached } from '../hold/hold.ts';
import { acrossAt, cutterOf, depthAt, type Surface } from '../surface.ts';

/** A place on the wanted grind line, where the face is to run out on the flank; mm. */
export interface LinePoint {
  readonly u: number;
  readonly v: number;
  /** Half thickness of the blank there. */
  readonly half: number;
  /** Height of the line over the edge. */
  readonly bevel: number;
}

/** What a point of the wanted line asks of the pose that decides it. */
export interface Demand {
  /** The place before the belt's middle in that pose. */
  readonly m: number;
  /** By how much the face stands over the flank at the wanted line, mm: 0 is the wish. */
  readonly over: number;
  readonly bevel: number;
}

/**
 * For every point of a wanted grind line the pose that takes most off it, and how far that pose's
 * face is from running out on the flank just there.
 */
export const demandsOf = (
  points: readonly LinePoint[],
  reached: readonly Reached[],
  surface: Surface,
  beltHalf: number,
): Demand[] => {
  const cutters = reached.map(({ pose }) => cutterOf(pose, surface));
  return points.flatMap(({ u, v, half, bevel }): Demand[] => {
    let [least, decides] = [Infinity, NaN];
    for (const cutter of cutters) {
      const n = depthAt(cutter, u, v);
      if (n >= least || Math.abs(acrossAt(cutter, u, v, n)) > beltHalf) continue;
      [least, decides] = [n, cutter.m];
    }
    return Number.isNaN(decides) ? [] : [{ m: decides, over: least - half, bevel }];
  });
};

/** Value at m of a row of nodes, straight between them and level beyond. */
export const atNode = (nodes: readonly number[], values: readonly number[], m: number): number => {
  const after = nodes.findIndex((u) => u >= m);
  if (after === 0) return values[0] ?? 0;
  if (after < 0) return values.at(-1) ?? 0;
  const [a = 0, b = 1] = [nodes[after - 1], nodes[after]];
  const [p = 0, q = 0] = [values[after - 1], values[after]];
  return p + ((q - p) * (m - a)) / (b - a);
};

/**
 * Mean of scattered changes at even nodes, each change shared between the nodes beside it; a node
 * that nothing asks for takes what its neighbours take.
 */
export const gathered = (
  nodes: readonly number[],
  changes: readonly { readonly m: number; readonly by: number }[],
): number[] => {
  const spacing = (nodes[1] ?? 1) - (nodes[0] ?? 0);
  const known = nodes.flatMap((node) => {
    let [sum, weight] = [0, 0];
    for (const { m, by } of changes) {
      const share = 1 - Math.abs(m - node) / spacing;
      if (share <= 0) continue;
      sum += share * by;
      weight += share;
    }
    return weight > 0 ? [{ node, mean: sum / weight }] : [];
  });
  if (known.length === 0) return nodes.map(() => 0);
  const [at, means] = [known.map(({ node }) => node), known.map(({ mean }) => mean)];
  return nodes.map((node) => atNode(at, means, node));
};
