import type { Vec2 } from './vector.ts';

/**
 * A corner of a closed contour and the segment that STARTS there. `bulge` = tan(theta/4) of the
 * arc's included angle, positive anticlockwise, 0 for a straight segment, 1 for a half circle:
 * the convention of the published DXF reference (LWPOLYLINE, group 42).
 */
export interface Vertex {
  readonly x: number;
  readonly y: number;
  readonly bulge: number;
}

/** A closed contour of straight segments and arcs, without the first vertex repeated. */
export interface PathLoop {
  readonly kind: 'path';
  readonly vertices: readonly Vertex[];
}

export interface CircleLoop {
  readonly kind: 'circle';
  readonly centre: Vec2;
  readonly radius: number;
}

export type Loop = PathLoop | CircleLoop;

/**
 * A flat region: one outer contour (anticlockwise) and holes strictly inside it (clockwise).
 * It is the one source of a plate's DXF, drawing, template and solid.
 */
export interface Profile {
  readonly outer: Loop;
  readonly holes: readonly Loop[];
}

export const path = (vertices: readonly Vertex[]): PathLoop => ({ kind: 'path', vertices });

/** A closed polygon from its corners. */
export const polygon = (points: readonly Vec2[]): PathLoop =>
  path(points.map(([x, y]) => ({ x, y, bulge: 0 })));

export const circle = (centre: Vec2, radius: number): CircleLoop => ({
  kind: 'circle',
  centre,
  radius,
});

/** An axis-parallel rectangle by its lower left and upper right corner, anticlockwise. */
export const rectangle = ([x0, y0]: Vec2, [x1, y1]: Vec2): PathLoop =>
  polygon([
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ]);

/** A slot with round ends: the centres of the ends and the width, anticlockwise. */
export const slot = (a: Vec2, b: Vec2, width: number): PathLoop => {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const nx = (-(b[1] - a[1]) / length) * (width / 2);
  const ny = ((b[0] - a[0]) / length) * (width / 2);
  return path([
    { x: a[0] - nx, y: a[1] - ny, bulge: 0 },
    { x: b[0] - nx, y: b[1] - ny, bulge: 1 },
    { x: b[0] + nx, y: b[1] + ny, bulge: 0 },
    { x: a[0] + nx, y: a[1] + ny, bulge: 1 },
  ]);
};

/** A regular hexagon by its width across flats, corners on the x axis, anticlockwise. */
export const hexagon = ([x, y]: Vec2, acrossFlats: number): PathLoop => {
  const inner = acrossFlats / 2;
  const side = acrossFlats / Math.sqrt(3);
  return polygon([
    [x + side, y],
    [x + side / 2, y + inner],
    [x - side / 2, y + inner],
    [x - side, y],
    [x - side / 2, y - inner],
    [x + side / 2, y - inner],
  ]);
};
