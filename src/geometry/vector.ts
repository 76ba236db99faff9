/** Points and directions in the plane and in space, mm. */
export type Vec2 = readonly [number, number];
export type Vec3 = readonly [number, number, number];

export const add3 = (a: Vec3, b: Vec3): Vec3 => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
export const sub3 = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
export const scale3 = (a: Vec3, k: number): Vec3 => [a[0] * k, a[1] * k, a[2] * k];
export const dot3 = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const cross3 = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
// A root of squares: `Math.hypot` took a twentieth of a plan, and is not settled to the last bit.
export const length3 = (a: Vec3): number => Math.sqrt(a[0] * a[0] + a[1] * a[1] + a[2] * a[2]);
/** The unit vector along a; a must not be zero. */
export const unit3 = (a: Vec3): Vec3 => scale3(a, 1 / length3(a));

export const add2 = (a: Vec2, b: Vec2): Vec2 => [a[0] + b[0], a[1] + b[1]];
export const sub2 = (a: Vec2, b: Vec2): Vec2 => [a[0] - b[0], a[1] - b[1]];
export const scale2 = (a: Vec2, k: number): Vec2 => [a[0] * k, a[1] * k];
export const dot2 = (a: Vec2, b: Vec2): number => a[0] * b[0] + a[1] * b[1];
/** z component of the cross product: positive when b lies anticlockwise of a. */
export const cross2 = (a: Vec2, b: Vec2): number => a[0] * b[1] - a[1] * b[0];
export const length2 = (a: Vec2): number => Math.sqrt(a[0] * a[0] + a[1] * a[1]);
export const distance2 = (a: Vec2, b: Vec2): number => apart2(a[0], a[1], b[0], b[1]);
/** The same of coordinates. */
export const apart2 = (ax: number, ay: number, bx: number, by: number): number =>
  Math.sqrt((ax - bx) * (ax - bx) + (ay - by) * (ay - by));
