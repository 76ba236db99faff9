import { cos, sin, tan } from '../../core/trigonometry.ts';
import { radians } from '../../core/units.ts';
import type { Face } from '../section/ground.ts';

/** What a wheel cuts in a section: its axis over the edge (h) and out from the midplane (w), mm. */
export interface Circle {
  readonly h: number;
  readonly w: number;
  readonly radius: number;
}

/** A bevel with the tangent of its angle: a side is asked for its surface some 100,000 times. */
export interface Bevel extends Face {
  readonly rise: number;
}

export const bevelled = (face: Face): Bevel => ({ ...face, rise: tan(radians(face.angle)) });

/**
 * One side of a section that stands on its edge, h counted from the edge up along the midplane and
 * w outwards from it, mm. Its surface is the least of stock, bevels and hollows at every h: a
 * section is carried forward by adding what each pass takes.
 */
export interface Half {
  readonly stock: number;
  readonly bevels: readonly Bevel[];
  readonly hollows: readonly Circle[];
}

/** Both sides of a section as it faces the wheel. */
export interface EdgeSection {
  readonly height: number;
  /** Towards the wheel. */
  readonly near: Half;
  /** Towards the maker. */
  readonly far: Half;
}

/** A straight stretch w = at + rise h. */
interface Straight {
  readonly at: number;
  readonly rise: number;
}

const straights = ({ stock, bevels }: Half): Straight[] => [
  { at: stock, rise: 0 },
  ...bevels.map(({ edge, rise }) => ({ at: edge, rise })),
];

/** Surface of a circle at h: w - sqrt(R^2 - (h - axis)^2); Infinity beside it. */
export const circleAt = ({ h: axis, w, radius }: Circle, h: number): number => {
  const square = radius * radius - (h - axis) ** 2;
  return square > 0 ? w - Math.sqrt(square) : Infinity;
};

/** Distance of the surface from the midplane at h, mm; negative past it. */
export const halfAt = ({ stock, bevels, hollows }: Half, h: number): number => {
  let least = stock;
  for (let i = 0; i < bevels.length; i += 1) {
    const { edge, rise } = bevels[i] as Bevel;
    least = Math.min(least, edge + rise * h);
  }
  for (let i = 0; i < hollows.length; i += 1)
    least = Math.min(least, circleAt(hollows[i] as Circle, h));
  return least;
};

/** A side after one more hollow. */
export const hollowed = (half: Half, circle: Circle): Half => ({
  ...half,
  hollows: [...half.hollows, circle],
});

/** A side as it was before any hollow. */
export const unhollowed = (half: Half): Half => ({ ...half, hollows: [] });

/** Where a straight stretch meets a circle: (at + rise h - w)^2 + (h - axis)^2 = R^2. */
const onCircle = ({ at, rise }: Straight, { h: axis, w, radius }: Circle): number[] => {
  const [a, b] = [1 + rise * rise, rise * (at - w) - axis];
  const square = b * b - a * ((at - w) ** 2 + axis * axis - radius * radius);
  if (square < 0) return [];
  const half = Math.sqrt(square);
  return [(-b - half) / a, (-b + half) / a];
};

/** Where two circles meet: on the line through their common points. */
const onBoth = (p: Circle, q: Circle): number[] => {
  const [dh, dw] = [q.h - p.h, q.w - p.w];
  const apart = Math.hypot(dh, dw);
  if (apart === 0) return [];
  const along = (apart * apart + p.radius ** 2 - q.radius ** 2) / (2 * apart);
  const square = p.radius ** 2 - along * along;
  if (square < 0) return [];
  const off = Math.sqrt(square);
  return [-1, 1].map((side) => p.h + (along * dh + side * off * dw) / apart);
};

/**
 * Every h from `from` to `to`, ends included, between which the surface is one straight stretch or
 * one arc: all meetings of its parts, on the surface or hidden under it.
 */
export const breaks = (half: Half, from: number, to: number): number[] => {
  const lines = straights(half);
  const { hollows } = half;
  const inside: number[] = [];
  const keep = (h: number): void => {
    if (h > from && h < to) inside.push(h);
  };
  lines.forEach((p, i) => {
    for (const q of lines.slice(i + 1)) keep((q.at - p.at) / (p.rise - q.rise));
    for (const circle of hollows) onCircle(p, circle).forEach(keep);
  });
  hollows.forEach((p, i) => {
    for (const q of hollows.slice(i + 1)) onBoth(p, q).forEach(keep);
  });
  return [from, ...inside.sort((p, q) => p - q), to];
};

/** The straight face of a side on which a hollow is measured. */
export interface FaceLine {
  /** Between midplane and face, degrees: 0 on the flat of the stock. */
  readonly angle: number;
  /** Distance of the face's line from the midplane at the edge's height, mm. */
  readonly out: number;
}

/**
 * The face that the place `centre` above the edge, along the face, lies on: the bevel up to its
 * shoulder, the flat of the stock above it and where there is no bevel.
 */
export const faceAt = ({ stock, bevels: [bevel] }: Half, centre: number): FaceLine => {
  if (bevel === undefined) return { angle: 0, out: stock };
  const shoulder = (stock - bevel.edge) / sin(radians(bevel.angle));
  return centre <= shoulder ? { angle: bevel.angle, out: bevel.edge } : { angle: 0, out: stock };
};

/**
 * The circle of a wheel that hollows a face `depth` deep at `centre`, along the face from the foot
 * of the edge's corner: its axis R - d outside the face.
 */
export const circleOn = (
  { angle, out }: FaceLine,
  radius: number,
  centre: number,
  depth: number,
): Circle => {
  const [c, s] = [cos(radians(angle)), sin(radians(angle))];
  const square = radius - depth;
  return { h: centre * c - square * s, w: out + centre * s + square * c, radius };
};
