import { fine } from '../core/units.ts';
import { add3, cross3, dot3, scale3, sub3, type Vec3 } from './vector.ts';

/** A right-handed rigid placement: where a local origin and the local axes stand, mm. */
export interface Frame {
  readonly origin: Vec3;
  readonly x: Vec3;
  readonly y: Vec3;
  readonly z: Vec3;
}

export const WORLD: Frame = { origin: [0, 0, 0], x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] };

/** A frame from its origin and two unit axes square to each other; z follows by the right hand. */
export const frame = (origin: Vec3, x: Vec3 = WORLD.x, y: Vec3 = WORLD.y): Frame => ({
  origin,
  x,
  y,
  z: cross3(x, y),
});

/** A local point in the frame's parent coordinates. */
export const place = (f: Frame, p: Vec3): Vec3 => add3(f.origin, turn(f, p));

/** A local direction in the frame's parent coordinates. */
export const turn = (f: Frame, d: Vec3): Vec3 =>
  add3(add3(scale3(f.x, d[0]), scale3(f.y, d[1])), scale3(f.z, d[2]));

/** A parent direction in the frame's local coordinates. */
export const turnBack = ({ x, y, z }: Frame, d: Vec3): Vec3 => [dot3(d, x), dot3(d, y), dot3(d, z)];

/** A parent point in the frame's local coordinates. */
export const localise = (f: Frame, p: Vec3): Vec3 => turnBack(f, sub3(p, f.origin));

/** The placement of `inner`, given in `outer`'s coordinates, in outer's parent. */
export const compose = (outer: Frame, inner: Frame): Frame => ({
  origin: place(outer, inner.origin),
  x: turn(outer, inner.x),
  y: turn(outer, inner.y),
  z: turn(outer, inner.z),
});

/** The frame on the grid of solids; its axes stay unit and square to some 1e-12. */
export const onGrid = ({ origin: [u, v, w], x, y, z }: Frame): Frame => {
  const axis = ([a, b, c]: Vec3): Vec3 => [
    fine(a, 'direction'),
    fine(b, 'direction'),
    fine(c, 'direction'),
  ];
  return { origin: [fine(u), fine(v), fine(w)], x: axis(x), y: axis(y), z: axis(z) };
};

export const shift = (f: Frame, by: Vec3): Frame => ({ ...f, origin: add3(f.origin, by) });

/** Whether two frames are the same to the last bit. */
export const isSameFrame = (one: Frame, other: Frame): boolean => {
  if (one === other) return true;
  for (const k of [0, 1, 2] as const) {
    if (one.origin[k] !== other.origin[k] || one.x[k] !== other.x[k]) return false;
    if (one.y[k] !== other.y[k] || one.z[k] !== other.z[k]) return false;
  }
  return true;
};
