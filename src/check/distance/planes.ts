import { widening } from './bounds.ts';
import { int, real } from './flat.ts';
import { clearPlaced, placeCopy, support } from './placed.ts';
import {
  CENTRE,
  END_POSE,
  firstOf,
  FROM,
  HALF,
  secondOf,
  SPIN,
  split,
  START_POSE,
  STRAY,
  STRAY_PER,
  STRIDE,
  sweepAt,
  TO,
  type Relative,
} from './relative.ts';
import type { Nearest, Room } from './room.ts';
import type { PlaneSolid, TreeSolid } from './solid.ts';
import { NODE } from './tree.ts';

/**
 * Least height of a moving body above a plane that stands still, by the same branch and bound:
 * the height of a convex piece is that of its lowest point, and over a straight way that of its
 * lower end. Heights below zero count as zero: the body has reached into the half-space.
 */
export const searchPlane = (
  room: Room,
  a: TreeSolid,
  plane: PlaneSolid,
  motion: Relative,
  near: Nearest,
  slack: number,
): void => {
  const [nx, ny, nz] = plane.normal;
  const { boxes, next } = a.tree;
  /** Lower bound of the height of node i's box anywhere in motion node m. */
  const height = (node: number, m: number): number => {
    const i = node * NODE;
    const k = m * STRIDE;
    const d = motion.data;
    let sum = -plane.offset;
    for (let r = 0; r < 3; r++) {
      const n = plane.normal[r as 0 | 1 | 2];
      sum += n * real(d, k + CENTRE + r) - Math.abs(n) * real(d, k + HALF + r);
    }
    for (let c = 0; c < 3; c++) {
      const along = nx * real(d, k + c) + ny * real(d, k + 3 + c) + nz * real(d, k + 6 + c);
      const far = Math.abs(real(boxes, i + c)) + real(boxes, i + 3 + c);
      const e = k + SPIN + c;
      const spin =
        Math.abs(nx) * real(d, e) + Math.abs(ny) * real(d, e + 3) + Math.abs(nz) * real(d, e + 6);
      sum += along * real(boxes, i + c) - Math.abs(along) * real(boxes, i + 3 + c) - far * spin;
    }
    return sum;
  };
  /** Compares one piece; false when the motion node must be halved. */
  const comparePiece = (piece: number, m: number, reach: number): boolean => {
    const at = m * STRIDE;
    const d = motion.data;
    const stray = real(d, at + STRAY) + real(d, at + STRAY_PER) * reach;
    let lowest = Infinity;
    room.compared++;
    for (const [pose, t] of [
      [START_POSE, real(d, at + FROM)],
      [END_POSE, real(d, at + TO)],
    ] as const) {
      clearPlaced(room.a);
      placeCopy(room.a, a.pieces, piece, d, at + pose);
      const p = 3 * support(room.a, -nx, -ny, -nz);
      const x = real(room.a.points, p);
      const y = real(room.a.points, p + 1);
      const z = real(room.a.points, p + 2);
      const above = nx * x + ny * y + nz * z - plane.offset;
      if (above < lowest) lowest = above;
      if (above >= near.best) continue;
      near.best = Math.max(0, above);
      near.found = true;
      near.sweep = sweepAt(motion, m);
      near.t = t;
      near.points.set([x, y, z, x - above * nx, y - above * ny, z - above * nz]);
    }
    const lower = lowest - stray;
    if (near.best > 0 && lower < near.best - slack) return false;
    near.floor = Math.min(near.floor, Math.max(0, lower));
    return true;
  };
  const visit = (node: number, m: number): void => {
    const bound = height(node, m);
    if (near.best <= 0) return;
    if (bound >= near.best - slack) {
      near.floor = Math.min(near.floor, Math.max(0, bound));
      return;
    }
    const right = int(next, node);
    const straight = sweepAt(motion, m) >= 0;
    const loose = widening(boxes, node, motion.data, m);
    if (right < 0 && straight) {
      if (comparePiece(~right, m, real(boxes, node * NODE + 6))) return;
    } else if (right >= 0 && (straight || loose < real(boxes, node * NODE + 3))) {
      visit(node + 1, m);
      visit(right, m);
      return;
    }
    if (split(motion, m)) {
      visit(node, firstOf(motion, m));
      visit(node, secondOf(motion, m));
    } else near.floor = Math.min(near.floor, Math.max(0, bound));
  };
  visit(0, motion.root);
};
