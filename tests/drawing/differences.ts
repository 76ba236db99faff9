import type { Vec2 } from '../../src/geometry/vector.ts';
import { boxOf, edgesOf, radiusOf, type Contour, type CutFile } from './cut-file.ts';
import type { ReadHole, ReadPlate } from './reader.ts';
import { rebuilt } from './rebuilt.ts';

/** What a drawing may be off from the cut file, mm: the project's own criterion. */
export const WITHIN = 0.005;

const gap = (p: Vec2, q: Vec2): number => Math.hypot(p[0] - q[0], p[1] - q[1]);
export const near = (a: number, b: number): boolean => Math.abs(a - b) <= WITHIN;
const nearest = (p: Vec2, points: readonly Vec2[]): number =>
  Math.min(...points.map((q) => gap(p, q)));

const middle = (contour: Contour): Vec2 => {
  const [low, high] = boxOf(contour);
  return [(low[0] + high[0]) / 2, (low[1] + high[1]) / 2];
};

/** Whether a row of the hole table is what a contour of the file is. */
const isContour = (hole: ReadHole, contour: Contour): boolean => {
  const edges = edgesOf(contour);
  if (hole.rectangle) {
    const [low, high] = boxOf(contour);
    const size: Vec2 = [high[0] - low[0], high[1] - low[1]];
    return (
      edges.length === 4 &&
      gap(middle(contour), hole.at) <= WITHIN &&
      gap(size, hole.rectangle) <= WITHIN
    );
  }
  const ends = edges.filter(({ bulge }) => Math.abs(Math.abs(bulge) - 1) < 1e-6);
  const [p, q] = ends.map(({ a, b }): Vec2 => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]);
  const [end] = ends;
  if (!hole.slot || !p || !q || !end || edges.length !== 4) return false;
  const turn = (Math.atan2(q[1] - p[1], q[0] - p[0]) * 180) / Math.PI;
  const off = (((turn - hole.slot.angle) % 180) + 180) % 180;
  return (
    near(gap(end.a, end.b), hole.size) &&
    near(gap(p, q) + hole.size, hole.slot.length) &&
    gap([(p[0] + q[0]) / 2, (p[1] + q[1]) / 2], hole.at) <= WITHIN &&
    // Over the length of a slot a hundredth of a degree is less than the criterion.
    Math.min(off, 180 - off) < 0.01
  );
};

/** What the drawing, read alone, has otherwise than the cut file. */
export const differences = (drawing: ReadPlate, { circles, contours }: CutFile): string[] => {
  const round = drawing.holes.filter((hole) => !hole.slot && !hole.rectangle);
  const other = drawing.holes.filter((hole) => hole.slot ?? hole.rectangle);
  const outlineCircle = drawing.circle
    ? [{ at: drawing.circle.at, size: drawing.circle.diameter, id: 'outline' }]
    : [];
  const wanted = [...round, ...outlineCircle];
  const outer = drawing.circle ? undefined : contours[0];
  const cut = drawing.circle ? contours : contours.slice(1);
  const found = rebuilt(drawing);
  const edges = outer ? edgesOf(outer) : [];
  const fileRadii = edges.flatMap(({ a, b, bulge }) =>
    bulge === 0 ? [] : [radiusOf(a, b, bulge)],
  );
  const drawnRadii = [
    ...drawing.corners.flatMap(({ radius }) => (radius > 0 ? [radius] : [])),
    ...drawing.freeRadii,
  ];
  const sorted = (values: readonly number[]): number[] => [...values].sort((a, b) => a - b);
  const radii = sorted(drawnRadii);
  return [
    ...(wanted.length === circles.length ? [] : ['number of round holes']),
    ...wanted
      .filter(
        ({ at, size }) =>
          !circles.some((c) => gap(c.centre, at) <= WITHIN && near(2 * c.radius, size)),
      )
      .map(({ id }) => `round hole ${id}`),
    ...(other.length === cut.length ? [] : ['number of slots and rectangles']),
    ...other
      .filter((hole) => !cut.some((contour) => isContour(hole, contour)))
      .map(({ id }) => `slot ${id}`),
    ...(found.length === edges.length ? [] : ['number of corners']),
    ...edges.filter(({ a }) => nearest(a, found) > WITHIN).map(({ a }) => `corner at ${String(a)}`),
    ...(fileRadii.length === radii.length ? [] : ['number of arcs']),
    ...sorted(fileRadii).flatMap((r, i) =>
      near(r, radii[i] ?? NaN) ? [] : [`radius ${String(r)}`],
    ),
  ];
};
