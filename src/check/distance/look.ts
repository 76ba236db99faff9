import { aim, lowestTo, turnRound } from './bounds.ts';
import { grown, int, real } from './flat.ts';
import { STRAY, STRAY_PER, STRIDE } from './relative.ts';
import type { TreeSolid } from './solid.ts';
import { NODE } from './tree.ts';

/** Room for one look through a tree after another. */
export interface Look {
  /** Nodes still to be looked into, and the least place of each. */
  nodes: Int32Array;
  bounds: Float64Array;
  /** What was found, and a direction turned round. */
  readonly out: Float64Array;
  readonly back: Float64Array;
}

export const createLook = (): Look => ({
  nodes: new Int32Array(256),
  bounds: new Float64Array(256),
  out: new Float64Array(3),
  back: new Float64Array(3),
});

/** Makes room for two more nodes. */
const widen = (look: Look, top: number): void => {
  if (top + 2 <= look.nodes.length) return;
  look.nodes = grown(look.nodes, new Int32Array(2 * look.nodes.length));
  look.bounds = grown(look.bounds, new Float64Array(2 * look.bounds.length));
};

/**
 * Least d.p over all corners below a tree node to within `slack`, and never above it: what no box
 * can tell of a body that lies along a face without being along the axes. Written to `out[2]`.
 */
const lowestBelow = (
  look: Look,
  solid: TreeSolid,
  node: number,
  way: Float64Array,
  from: number,
  slack: number,
): void => {
  const { out } = look;
  const { next } = solid.tree;
  let best = Infinity;
  let floor = Infinity;
  let top = 1;
  lowestTo(out, 0, solid, node, way, from);
  look.nodes[0] = node;
  look.bounds[0] = real(out, 0);
  while (top > 0) {
    top--;
    const bound = real(look.bounds, top);
    if (bound >= best - slack) {
      if (bound < floor) floor = bound;
      continue;
    }
    const at = int(look.nodes, top);
    const right = int(next, at);
    if (right < 0) {
      best = bound;
      continue;
    }
    widen(look, top);
    lowestTo(out, 0, solid, at + 1, way, from);
    lowestTo(out, 1, solid, right, way, from);
    // The lower one is looked into first.
    const left = real(out, 0) <= real(out, 1);
    look.nodes[top] = left ? right : at + 1;
    look.bounds[top++] = real(out, left ? 1 : 0);
    look.nodes[top] = left ? at + 1 : right;
    look.bounds[top++] = real(out, left ? 0 : 1);
  }
  out[2] = best < floor ? best : floor;
};

/**
 * The room between node a of the moving body, anywhere in motion node m, and node b along a
 * direction of the still body's: as of `lowMovingTo` and `highStillTo`, but from what the bodies
 * really reach, to within `slack`; and how much of it straying from straight ways takes.
 */
export const roomAlong = (
  { look, aimed }: { readonly look: Look; readonly aimed: Float64Array },
  moving: TreeSolid,
  a: number,
  still: TreeSolid,
  b: number,
  normal: Float64Array,
  data: Float64Array,
  m: number,
  slack: number,
): readonly [room: number, stray: number] => {
  const { out, back } = look;
  aim(aimed, data, m, normal);
  lowestBelow(look, moving, a, aimed, 0, slack);
  const start = real(out, 2) + real(aimed, 3);
  lowestBelow(look, moving, a, aimed, 4, slack);
  const end = real(out, 2) + real(aimed, 7);
  turnRound(back, normal);
  lowestBelow(look, still, b, back, 0, slack);
  const k = m * STRIDE;
  const reach = real(moving.tree.boxes, a * NODE + 6);
  const stray = real(data, k + STRAY) + real(data, k + STRAY_PER) * reach;
  return [Math.min(start, end) - stray + real(out, 2), stray];
};
