import { localise, type Frame } from '../geometry/frame.ts';
import type { Loop, Profile } from '../geometry/loop.ts';
import { containsPoint, distanceToLoop } from '../geometry/loop-measure.ts';
import { cross3, dot3, length3, type Vec2 } from '../geometry/vector.ts';
import type { Part } from '../model/part.ts';
import { CHECK_CHORD } from './chord.ts';

/** Layers standing in a frame. */
export interface Stack {
  readonly layers: Part['layers'];
  readonly frame: Frame;
}

/** Axes that differ by less than this in direction lie along each other: a nanometre over a metre. */
const PARALLEL = 1e-9;

/** Farther apart than this the prisms of two stacks do not meet either, mm. */
const OFF = 2 * CHECK_CHORD;

/** How far a contour reaches from a point, mm; an arc lies within its height of its chord. */
const reachFrom = ([x, y]: Vec2, loop: Loop): number => {
  if (loop.kind === 'circle')
    return Math.hypot(loop.centre[0] - x, loop.centre[1] - y) + loop.radius;
  const { vertices } = loop;
  return vertices.reduce((most, a, i) => {
    const b = vertices[i + 1] ?? vertices[0] ?? a;
    const height = (Math.abs(a.bulge) * Math.hypot(b.x - a.x, b.y - a.y)) / 2;
    const far = Math.max(Math.hypot(a.x - x, a.y - y), Math.hypot(b.x - x, b.y - y));
    return Math.max(most, far + height);
  }, 0);
};

/** How far a point lies from the nearest material of a profile, mm; 0 in it. */
const roomAround = (p: Vec2, { outer, holes }: Profile): number => {
  if (!containsPoint(outer, p)) return distanceToLoop(p, outer);
  const hole = holes.find((loop) => containsPoint(loop, p));
  return hole ? distanceToLoop(p, hole) : 0;
};

/** Whether the layers of a bar, as rounds about its own z axis, miss all layers of another stack. */
const misses = (bar: Stack, stack: Stack): boolean => {
  const [u, v, w] = localise(stack.frame, bar.frame.origin);
  const up = dot3(bar.frame.z, stack.frame.z) > 0;
  return bar.layers.every(({ profile, from, to }) => {
    const reach = reachFrom([0, 0], profile.outer);
    const [low, high] = up ? [w + from, w + to] : [w - to, w - from];
    return stack.layers.every(
      (other) =>
        low - other.to > OFF ||
        other.from - high > OFF ||
        roomAround([u, v], other.profile) - reach > OFF,
    );
  });
};

/**
 * Whether outlines alone tell that two stacks do not meet: their layers lie side by side, and each
 * pair of them is apart in height or one is, as a round about its own axis, in the free of the
 * other's outline. What is bolted through or pinned is told by it without their prisms, exactly; `false`
 * tells nothing.
 */
export const standBeside = (one: Stack, other: Stack): boolean =>
  length3(cross3(one.frame.z, other.frame.z)) < PARALLEL &&
  (misses(one, other) || misses(other, one));
