import DxfParser from 'dxf-parser';
import type { Vec2 } from '../../src/geometry/vector.ts';

/**
 * A cut file as a general-purpose reader has it, its lower left corner at the origin. No code of
 * the program takes part.
 */
export interface CutFile {
  readonly circles: readonly { readonly centre: Vec2; readonly radius: number }[];
  readonly contours: readonly Contour[];
}

export interface Contour {
  readonly vertices: readonly { readonly at: Vec2; readonly bulge: number }[];
}

/** Points of an edge between two vertices: its ends, and where a bulge takes it farthest. */
const reach = (a: Vec2, b: Vec2, bulge: number): Vec2[] => {
  if (bulge === 0) return [a];
  // Centre: from the middle of the chord, (1 - b^2) / 4b of the chord to its left.
  const f = (1 - bulge * bulge) / (4 * bulge);
  const c: Vec2 = [(a[0] + b[0]) / 2 - f * (b[1] - a[1]), (a[1] + b[1]) / 2 + f * (b[0] - a[0])];
  const radius = radiusOf(a, b, bulge);
  const from = Math.atan2(a[1] - c[1], a[0] - c[0]);
  const sweep = 4 * Math.atan(bulge);
  const full = 2 * Math.PI;
  const ends = [0, 1, 2, 3].map((i) => (i * Math.PI) / 2);
  const isOn = (angle: number): boolean => {
    const turn = (((Math.sign(sweep) * (angle - from)) % full) + full) % full;
    return turn <= Math.abs(sweep);
  };
  return [
    a,
    ...ends
      .filter(isOn)
      .map((t): Vec2 => [c[0] + radius * Math.cos(t), c[1] + radius * Math.sin(t)]),
  ];
};

/** Radius of an arc with a bulge over a chord: chord (1 + b^2) / 4 |b|. */
export const radiusOf = (a: Vec2, b: Vec2, bulge: number): number =>
  (Math.hypot(b[0] - a[0], b[1] - a[1]) * (1 + bulge * bulge)) / (4 * Math.abs(bulge));

export const edgesOf = ({ vertices }: Contour): { a: Vec2; b: Vec2; bulge: number }[] =>
  vertices.map(({ at, bulge }, i) => ({
    a: at,
    b: vertices[(i + 1) % vertices.length]?.at ?? at,
    bulge,
  }));

/** Lower left and upper right corner of a contour, arcs included. */
export const boxOf = (contour: Contour): readonly [Vec2, Vec2] => {
  const points = edgesOf(contour).flatMap(({ a, b, bulge }) => reach(a, b, bulge));
  const [xs, ys] = [points.map((p) => p[0]), points.map((p) => p[1])];
  return [
    [Math.min(...xs), Math.min(...ys)],
    [Math.max(...xs), Math.max(...ys)],
  ];
};

const areaOf = (contour: Contour): number => {
  const [low, high] = boxOf(contour);
  return (high[0] - low[0]) * (high[1] - low[1]);
};

interface Entity {
  readonly type: string;
  readonly center?: { x: number; y: number };
  readonly radius?: number;
  readonly vertices?: readonly { x: number; y: number; bulge?: number }[];
}

/** Reads a file; the contour that encloses most comes first. */
export const readCutFile = (dxf: string): CutFile => {
  const entities = (new DxfParser().parseSync(dxf)?.entities ?? []) as readonly Entity[];
  const round = entities.flatMap(({ type, center, radius }) =>
    type === 'CIRCLE' && center && radius !== undefined
      ? [{ centre: [center.x, center.y] as Vec2, radius }]
      : [],
  );
  const contours = entities
    .flatMap(({ vertices }): Contour[] =>
      vertices
        ? [{ vertices: vertices.map(({ x, y, bulge = 0 }) => ({ at: [x, y], bulge })) }]
        : [],
    )
    .sort((a, b) => areaOf(b) - areaOf(a));
  const corners = [
    ...contours.map((contour) => boxOf(contour)[0]),
    ...round.map(({ centre, radius }): Vec2 => [centre[0] - radius, centre[1] - radius]),
  ];
  const [x, y] = [Math.min(...corners.map((p) => p[0])), Math.min(...corners.map((p) => p[1]))];
  const put = (p: Vec2): Vec2 => [p[0] - x, p[1] - y];
  return {
    circles: round.map(({ centre, radius }) => ({ centre: put(centre), radius })),
    contours: contours.map(({ vertices }) => ({
      vertices: vertices.map(({ at, bulge }) => ({ at: put(at), bulge })),
    })),
  };
};
