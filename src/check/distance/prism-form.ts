import type { Prism } from '../../model/prisms.ts';
import { formOf, type Form } from './form.ts';

/**
 * The form of prisms: each is a piece, its lower corners and then those above them in the same order.
 */
export const prismForm = (prisms: readonly Prism[]): Form => {
  const count = Int32Array.from(prisms, ({ polygon }) => 2 * polygon.length);
  const start = new Int32Array(count.length);
  count.forEach((corners, i) => {
    if (i + 1 < start.length) start[i + 1] = (start[i] ?? 0) + corners;
  });
  const points = new Float64Array(3 * count.reduce((sum, corners) => sum + corners, 0));
  // Which of them hang together is not asked: each has an anchor of its own.
  const anchors = new Float64Array(3 * prisms.length);
  let to = 0;
  prisms.forEach(({ polygon, from, to: top }, i) => {
    for (const level of [from, top]) {
      for (const [x, y] of polygon) {
        points[to] = x;
        points[to + 1] = y;
        points[to + 2] = level;
        to += 3;
      }
    }
    anchors.set(points.subarray(3 * (start[i] ?? 0), 3 * (start[i] ?? 0) + 3), 3 * i);
  });
  return formOf('prisms', { start, count, points, rounds: new Float64Array(0) }, anchors);
};
