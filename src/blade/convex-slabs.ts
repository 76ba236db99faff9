import type { Vec3 } from '../geometry/vector.ts';
import type { Rung, Section } from './section.ts';

/** Most by which a convex slab stands proud of what the mesh through its sections bounds, mm. */
export const PROUD = 1e-4;

/** A corner of one side of a slab: u, v and how far the side is from the midplane, mm. */
type Node = readonly [u: number, v: number, w: number];

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

const nodesOf = (section: Section, slab: Slab, side: Side): Node[] =>
  rungsOf(section, slab).map((rung) => [section.u, rung.v, rung[side]]);

/** The two triangles between neighbouring rungs, cut as the mesh cuts them. */
const trianglesOf = (a: readonly Node[], b: readonly Node[]): [Node, Node, Node][] =>
  a.slice(1).flatMap((end, i): [Node, Node, Node][] => {
    const [start, far, near] = [a[i] ?? end, b[i + 1] ?? end, b[i] ?? end];
    return [
      [start, near, far],
      [start, far, end],
    ];
  });

/** Whether no corner stands farther out than the plane of any triangle of its side, but for `PROUD`. */
const bulges = (slab: Slab, side: Side): boolean => {
  const [a, b] = [nodesOf(slab.here, slab, side), nodesOf(slab.next, slab, side)];
  const nodes = [...a, ...b];
  return trianglesOf(a, b).every(([[u, v, w], [u1, v1, w1], [u2, v2, w2]]) => {
    const [du, dv, dw, eu, ev, ew] = [u1 - u, v1 - v, w1 - w, u2 - u, v2 - v, w2 - w];
    const area = du * ev - dv * eu;
    if (area === 0) return true;
    const [slopeU, slopeV] = [(dw * ev - dv * ew) / area, (du * ew - dw * eu) / area];
    return nodes.every(([x, y, z]) => z <= w + slopeU * (x - u) + slopeV * (y - v) + PROUD);
  });
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
