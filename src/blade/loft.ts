import { fineAll } from '../core/units.ts';
import type { Mesh } from '../geometry/mesh.ts';
import type { Section } from './section.ts';

/** Points closer than this are one, mm. */
const WELD = 1e-8;

/** Collects triangles over shared vertices; a triangle that has lost a side is left out. */
const collector = () => {
  const vertices: number[] = [];
  const triangles: number[] = [];
  // Rounded places of the vertices at the u that was met last: sections come in its order, so that
  // no other vertex can be the same.
  let here = NaN;
  let first = 0;
  let [vs, ws]: [number[], number[]] = [[], []];
  const vertex = (u: number, v: number, w: number): number => {
    const [ru, rv, rw] = [Math.round(u / WELD), Math.round(v / WELD), Math.round(w / WELD)];
    if (ru !== here) {
      here = ru;
      first = vertices.length / 3;
      [vs, ws] = [[], []];
    }
    for (let i = 0; i < vs.length; i += 1) if (vs[i] === rv && ws[i] === rw) return first + i;
    vs.push(rv);
    ws.push(rw);
    vertices.push(u, v, w);
    return first + vs.length - 1;
  };
  const triangle = (a: number, b: number, c: number): void => {
    if (a !== b && b !== c && c !== a) triangles.push(a, b, c);
  };
  return {
    vertex,
    quad: (a: number, b: number, c: number, d: number): void => {
      triangle(a, b, c);
      triangle(a, c, d);
    },
    mesh: (): Mesh => ({
      vertices: fineAll(vertices),
      triangles: new Uint32Array(triangles),
    }),
  };
};

/**
 * The closed mesh through sections with equal numbers of rungs, in order along u: strips down
 * both sides, over spine and edge, and a ladder across the first and the last section. Two
 * sections at one u make a wall; a section shrunk to a point or a line closes by itself.
 */
export const loft = (sections: readonly Section[]): Mesh => {
  const { vertex, quad, mesh } = collector();
  const loops = sections.map(({ u, rungs }) => ({
    left: rungs.map(({ v, left }) => vertex(u, v, left)),
    right: rungs.map(({ v, right }) => vertex(u, v, -right)),
  }));
  type Loop = (typeof loops)[number];
  /** Both ways round: left from spine to edge, right back to the spine, closed over the spine. */
  const rounds = loops.map(({ left, right }) => [...left, ...right.toReversed()]);
  const at = (list: readonly number[], i: number): number => list[i % list.length] ?? 0;
  loops.forEach(({ left }, s) => {
    const [a, b] = [rounds[s], rounds[s + 1]];
    if (a === undefined || b === undefined) return;
    for (let i = 0; i < a.length; i += 1) {
      const [p, q, r, t] = [at(a, i), at(b, i), at(b, i + 1), at(a, i + 1)];
      if (i < left.length) quad(p, q, r, t);
      // The other diagonal: both sides of a blade are cut into triangles alike.
      else quad(q, r, t, p);
    }
  });
  const ladder = ({ left, right }: Loop, forward: boolean): void =>
    left.slice(1).forEach((_, i) => {
      const rung = [at(left, i), at(left, i + 1), at(right, i + 1), at(right, i)] as const;
      if (forward) quad(rung[3], rung[2], rung[1], rung[0]);
      else quad(...rung);
    });
  const [first, last] = [loops[0], loops.at(-1)];
  if (first) ladder(first, false);
  if (last) ladder(last, true);
  return mesh();
};
