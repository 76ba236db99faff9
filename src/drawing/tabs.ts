import { localise, place, turnBack } from '../geometry/frame.ts';
import { polygon } from '../geometry/loop.ts';
import { containsPoint, signedArea } from '../geometry/loop-measure.ts';
import { add2, dot3, scale2, sub2, type Vec2, type Vec3 } from '../geometry/vector.ts';
import { upOf, type Body } from './bodies.ts';
import type { Eye } from './eye.ts';

const EPS = 1e-6;

/** A half plane of a body's own plane: what lies where the distance is positive. */
type Beyond = (p: Vec2) => number;

/** The part of an outline in a half plane (Sutherland and Hodgman), without edges along its rim. */
const cutBy = (outer: readonly Vec2[], beyond: Beyond): Vec2[] =>
  outer.flatMap((here, i): Vec2[] => {
    const before = outer.at(i - 1) ?? here;
    const after = outer[(i + 1) % outer.length] ?? here;
    const [a, b, c] = [beyond(before), beyond(here), beyond(after)];
    const crossing = add2(before, scale2(sub2(here, before), a / (a - b)));
    if (a > EPS && b < -EPS) return [crossing];
    if (a < -EPS && b > EPS) return [crossing, here];
    return b > EPS || (b > -EPS && (a > EPS || c > EPS)) ? [here] : [];
  });

/** How far a place in the plane of a prism lies over a face of a plate that stands along the prism. */
const overFace = (body: Body, plate: Body, level: number, way: 1 | -1): Beyond | undefined => {
  if (Math.abs(turnBack(plate.frame, upOf(body))[2]) > EPS) return undefined;
  return ([x, y]) => way * (localise(plate.frame, place(body.frame, [x, y, body.from]))[2] - level);
};

/** Whether an outline, over the whole length of its prism, lies in one of the slots of a plate. */
const isInSlot = (outer: readonly Vec2[], body: Body, plate: Body): boolean => {
  const points = outer.flatMap(([x, y]) =>
    [body.from, body.to].map((z): Vec3 => localise(plate.frame, place(body.frame, [x, y, z]))),
  );
  return plate.holes.some((hole) => {
    const slot = polygon(hole);
    return points.every(
      ([x, y, z]) => z > plate.from - EPS && z < plate.to + EPS && containsPoint(slot, [x, y]),
    );
  });
};

const doMeet = (a: Body, b: Body): boolean =>
  ([0, 1, 2] as const).every((i) => a.min[i] < b.max[i] - EPS && b.min[i] < a.max[i] - EPS);

/** The outline of a body without a tab in a plate whose face hides it from the eye. */
const without = (body: Body, plate: Body, { towards }: Eye): Body => {
  const up = dot3(upOf(plate), towards);
  if (Math.abs(up) < EPS) return body;
  const over = up > 0 ? overFace(body, plate, plate.to, 1) : overFace(body, plate, plate.from, -1);
  if (over === undefined) return body;
  const tab = cutBy(body.outer, (p) => -over(p));
  const rest = cutBy(body.outer, over);
  const isTab = tab.length > 2 && rest.length > 2 && signedArea(polygon(tab)) > EPS;
  return isTab && isInSlot(tab, body, plate) ? { ...body, outer: rest } : body;
};

/**
 * Bodies without the tabs that end within a slot of a plate and are seen from the side of their root:
 * the plate hides them, and no order of the whole bodies shows that.
 */
export const withoutHiddenTabs = (bodies: readonly Body[], eye: Eye): Body[] => {
  const plates = bodies.filter(({ holes }) => holes.length > 0);
  return bodies.map((body) =>
    body.holes.length > 0 || body.path !== undefined
      ? body
      : plates
          .filter((plate) => plate.owner !== body.owner && doMeet(plate, body))
          .reduce((rest, plate) => without(rest, plate, eye), body),
  );
};
