import { BufferAttribute, BufferGeometry } from 'three';
import { atan2, cos, sin } from '../../core/trigonometry.ts';
import type { Vec2, Vec3 } from '../../geometry/vector.ts';

/** How far a belt is drawn on at its lower and its upper end, mm: a fixture sees little of it. */
const ON = { below: 45, above: 80 };

/** More of a path beyond its last point, as it runs there: straight on, or around the same circle. */
const onwards = (path: readonly Vec2[], far: number): Vec2[] => {
  const [before, at, end] = [path.at(-3), path.at(-2), path.at(-1)];
  if (!at || !end) return [];
  let heading = atan2(end[1] - at[1], end[0] - at[0]);
  const turn = before ? heading - atan2(at[1] - before[1], at[0] - before[0]) : 0;
  const step = before ? Math.hypot(end[0] - at[0], end[1] - at[1]) : far;
  const more: Vec2[] = [];
  let [y, z] = end;
  for (let gone = 0; step > 0 && gone < far; gone += step) {
    heading += turn;
    [y, z] = [y + step * cos(heading), z + step * sin(heading)];
    more.push([y, z]);
  }
  return more;
};

const longer = (path: readonly Vec2[]): readonly Vec2[] => {
  const [first, last] = [path[0], path.at(-1)];
  if (!first || !last) return path;
  const up = last[1] >= first[1];
  const back = onwards([...path].reverse(), up ? ON.below : ON.above).reverse();
  return [...back, ...path, ...onwards(path, up ? ON.above : ON.below)];
};

/** A belt as a solid: its abrasive along a path (y, z), mm, its thickness on the side away from the maker. */
export const ribbon = (path: readonly Vec2[], width: number, thick: number): BufferGeometry => {
  const run = longer(path);
  const rings = run.map((at, i): Vec3[] => {
    const [before, after] = [run[i - 1] ?? at, run[i + 1] ?? at];
    const [dy, dz] = [after[0] - before[0], after[1] - before[1]];
    const long = Math.hypot(dy, dz) || 1;
    // Square to the path, to where y falls.
    const side = dz >= 0 ? 1 : -1;
    const back: Vec2 = [at[0] - (side * thick * dz) / long, at[1] + (side * thick * dy) / long];
    const x = width / 2;
    return [
      [-x, ...at],
      [x, ...at],
      [x, ...back],
      [-x, ...back],
    ];
  });
  const corners: number[] = [];
  const face = (a?: Vec3, b?: Vec3, c?: Vec3, d?: Vec3): void => {
    if (a && b && c && d) corners.push(...a, ...b, ...c, ...a, ...c, ...d);
  };
  rings.forEach((ring, i) => {
    const next = rings[i + 1];
    if (next) ring.forEach((p, k) => face(p, ring[(k + 1) % 4], next[(k + 1) % 4], next[k]));
  });
  for (const ring of [rings[0], rings.at(-1)])
    if (ring) face(...(ring as [Vec3, Vec3, Vec3, Vec3]));
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(Float32Array.from(corners), 3));
  geometry.computeVertexNormals();
  return geometry;
};
