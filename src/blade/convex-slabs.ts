import type { Vec3 } from '../geometry/vector.ts';
import type { Rung, Section } from './section.ts';

/** Most by which a convex slab stands proud of what the mesh through its sections bounds, mm. */
export const PROUD = 1e-4;

type Side = 'left' | 'right';
const SIDES: readonly Side[] = ['left', 'right'];

/** What lies between two sections, from one rung to another. */
interface Slab {
  readonly here: Section;
  readonly next: Section;
  readonly from: number;
  readonly to: number;
}

const rungsOf = ({ rungs }: Section, { from, to }: Slab): readonly Rung[] =>
  rungs.slice(from, to + 1);

/**
 * Whether none of a side's corners stands farther out than the plane through three of them, (u, v) and
 * how far the side is from the midplane, but for `PROUD`; three in line have none.
 */
const under = (
  slab: Slab,
  side: Side,
  [u, p]: readonly [u: number, rung: Rung],
  [u1, q]: readonly [u: number, rung: Rung],
  [u2, r]: readonly [u: number, rung: Rung],
): boolean => {
  const [du, dv, dw] = [u1 - u, q.v - p.v, q[side] - p[side]];
  const [eu, ev, ew] = [u2 - u, r.v - p.v, r[side] - p[side]];
  const area = du * ev - dv * eu;
  if (area === 0) return true;
  const [slopeU, slopeV] = [(dw * ev - dv * ew) / area, (du * ew - dw * eu) / area];
  for (const section of [slab.here, slab.next]) {
    const level = p[side] + slopeU * (section.u - u) - slopeV * p.v + PROUD;
    for (let i = slab.from; i <= slab.to; i += 1) {
      const rung = section.rungs[i];
      if (rung && rung[side] > level + slopeV * rung.v) return false;
    }
  }
  return true;
};

/** Whether a side bulges: every triangle between its rungs, cut as the mesh cuts them, has none outside. */
const bulges = (slab: Slab, side: Side): boolean => {
  const { here, next, from, to } = slab;
  for (let i = from; i < to; i += 1) {
    const [a, b] = [here.rungs[i], here.rungs[i + 1]];
    const [c, d] = [next.rungs[i], next.rungs[i + 1]];
    if (!a || !b || !c || !d) return false;
    const [start, far] = [[here.u, a] as const, [next.u, d] as const];
    if (!under(slab, side, start, [next.u, c], far)) return false;
    if (!under(slab, side, start, far, [here.u, b])) return false;
  }
  return true;
};

const isConvex = (slab: Slab): boolean => SIDES.every((side) => bulges(slab, side));

/** The corners of both sides. */
const cornersOf = (nodes: readonly (readonly [u: number, rung: Rung])[]): Vec3[] =>
  nodes.flatMap(([u, { v, left, right }]): Vec3[] => [
    [u, v, left],
    [u, v, -right],
  ]);

const hullOf = (slab: Slab): Vec3[] =>
  cornersOf(
    [slab.here, slab.next].flatMap((section) =>
      rungsOf(section, slab).map((rung) => [section.u, rung] as const),
    ),
  );

/** The two wedges of a slab between neighbouring rungs: over one triangle each, always convex. */
const wedgesOf = ({ here, next, from, to }: Slab): Vec3[][] => {
  const [a, b] = [here.rungs[from], here.rungs[to]];
  const [c, d] = [next.rungs[from], next.rungs[to]];
  if (!a || !b || !c || !d) return [];
  return [
    cornersOf([
      [here.u, a],
      [next.u, c],
      [next.u, d],
    ]),
    cornersOf([
      [here.u, a],
      [next.u, d],
      [here.u, b],
    ]),
  ];
};

/** A slab as few convex ones: whole, or else as far from its first rung as it is convex, and the rest. */
const convexOf = (slab: Slab): Vec3[][] => {
  const { from, to } = slab;
  if (to === from) return [];
  for (let end = to; end > from; end -= 1) {
    const part = { ...slab, to: end };
    if (isConvex(part)) return [hullOf(part), ...convexOf({ ...slab, from: end })];
  }
  return [...wedgesOf({ ...slab, to: from + 1 }), ...convexOf({ ...slab, from: from + 1 })];
};

/**
 * The corners of convex pieces that fill what the mesh through sections bounds, and stand proud of it
 * by at most `PROUD` mm. Between two sections a blade is convex but for hollow cuts and for features
 * that jump: a piece from spine to edge for each, where the mesh has dozens of triangles.
 */
export const convexSlabs = (sections: readonly Section[]): Vec3[][] =>
  sections.slice(1).flatMap((next, i) => {
    const here = sections[i];
    // Two sections at one u are a wall: there is nothing between them.
    if (!here || next.u === here.u) return [];
    return convexOf({ here, next, from: 0, to: next.rungs.length - 1 });
  });
