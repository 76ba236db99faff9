import { localise, place, turnBack } from '../geometry/frame.ts';
import { polygon, type Loop } from '../geometry/loop.ts';
import { containsPoint } from '../geometry/loop-measure.ts';
import { add3, cross2, scale3, sub2, type Vec2 } from '../geometry/vector.ts';
import type { Body } from './bodies.ts';
import { around, type Box } from './box.ts';
import { projected, type Eye } from './eye.ts';

const EPS = 1e-6;

/** Places along either side of what two bodies share of a view at which they are compared. */
const LOOKS = 6;

/** Whether an outline turns back on itself: what stands in its bay is neither before nor behind. */
export const isHollowed = ({ outer, path }: Body): boolean =>
  path === undefined &&
  outer.some((here, i) => {
    const before = outer.at(i - 1) ?? here;
    const after = outer[(i + 1) % outer.length] ?? here;
    return cross2(sub2(here, before), sub2(after, here)) < -EPS;
  });

const seenBox = ({ outer, frame, from, to }: Body, eye: Eye): Box =>
  around(
    outer.flatMap(([x, y]) =>
      [from, to].map((z): Vec2 => projected(place(frame, [x, y, z]), eye, 1)),
    ),
  );

/** A body and its outline as a contour. */
interface Looked {
  readonly body: Body;
  readonly outline: Loop;
}
const looked = (body: Body): Looked => ({ body, outline: polygon(body.outer) });

/** How near to the eye a prism comes on the ray through a point of the view; its holes are filled. */
const nearest = (
  { body: { outer, frame, from, to }, outline }: Looked,
  eye: Eye,
  [u, v]: Vec2,
): number => {
  const [ox, oy, oz] = localise(frame, add3(scale3(eye.right, u), scale3(eye.up, v)));
  const [dx, dy, dz] = turnBack(frame, eye.towards);
  let found = -Infinity;
  if (Math.abs(dz) > EPS) {
    const t = ((dz > 0 ? to : from) - oz) / dz;
    if (containsPoint(outline, [ox + t * dx, oy + t * dy])) found = t;
  }
  outer.forEach(([bx, by], i) => {
    const [ax, ay] = outer.at(i - 1) ?? [bx, by];
    const [sx, sy] = [bx - ax, by - ay];
    const square = dx * sy - dy * sx;
    if (Math.abs(square) < EPS) return;
    const t = ((ax - ox) * sy - (ay - oy) * sx) / square;
    const along = ((ax - ox) * dy - (ay - oy) * dx) / square;
    const z = oz + t * dz;
    if (t > found && along >= 0 && along <= 1 && z >= from && z <= to) found = t;
  });
  return found;
};

/** How much oftener a hides b than b hides a, looked at all over what they share of a view. */
export const hidesOftener = (a: Body, b: Body, eye: Eye): number => {
  const [one, two] = [seenBox(a, eye), seenBox(b, eye)];
  const [x0, x1] = [Math.max(one.x0, two.x0), Math.min(one.x1, two.x1)];
  const [y0, y1] = [Math.max(one.y0, two.y0), Math.min(one.y1, two.y1)];
  if (x1 <= x0 || y1 <= y0) return 0;
  const [first, second] = [looked(a), looked(b)];
  let sum = 0;
  for (let i = 0; i < LOOKS; i += 1)
    for (let j = 0; j < LOOKS; j += 1) {
      const at: Vec2 = [x0 + ((i + 0.5) / LOOKS) * (x1 - x0), y0 + ((j + 0.5) / LOOKS) * (y1 - y0)];
      const near = nearest(first, eye, at);
      const other = near > -Infinity ? nearest(second, eye, at) : near;
      if (other > -Infinity) sum += Math.sign(near - other);
    }
  return sum;
};
