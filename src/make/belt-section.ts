import type { Section, SectionDimension, SectionShape } from '../drawing/belt-section.ts';
import type { BeltSection } from '../family/index.ts';
import { polygon } from '../geometry/loop.ts';
import { containsPoint, distanceToLoop } from '../geometry/loop-measure.ts';
import { distance2, type Vec2 } from '../geometry/vector.ts';

type Line = BeltSection['lines'][number];

/** Blade and fixture are cut through and hatched; the rest is outlined. */
const shapeOf = ({ points, closed, role }: Line): SectionShape => ({
  points,
  isClosed: closed,
  stroke: role === 'grinder' ? 'phantom' : 'visible',
  fill: !closed ? 'none' : role === 'blade' || role === 'fixture' ? 'hatch' : 'tint',
});

/** Where along a piece of an outline a label may point, the best place first. */
const SHARES = [1 / 2, 1 / 4, 3 / 4, 1 / 8, 7 / 8];
/** How far a label keeps from other parts, mm: nearer it could be theirs. */
const APART = 0.3;

/** Places for a label on an outline: on its longest piece first. */
const places = (points: readonly Vec2[]): Vec2[] =>
  points
    .slice(1)
    .map((b, i) => ({ a: points[i] ?? b, b }))
    .sort((p, q) => distance2(q.a, q.b) - distance2(p.a, p.b))
    .flatMap(({ a, b }) =>
      SHARES.map((t): Vec2 => [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])]),
    );

/** Where a label points: the first place that no other part covers or touches, if there is one. */
const anchor = (line: Line, lines: readonly Line[]): Vec2 => {
  const others = lines.filter((one) => one !== line && one.closed);
  const loops = others.map(({ points }) => polygon(points));
  const all = places(line.points);
  const isApart = (p: Vec2): boolean =>
    loops.every((loop) => !containsPoint(loop, p) && distanceToLoop(p, loop) > APART);
  return all.find(isApart) ?? all[0] ?? line.points[0] ?? [0, 0];
};

const dimensionOf = ({
  from,
  to,
  direction,
  text,
}: BeltSection['dimensions'][number]): SectionDimension => {
  if (direction === 'aligned')
    return { kind: 'note', at: [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2], text };
  return direction === 'horizontal'
    ? { kind: 'linear', axis: 'x', a: from, b: to, side: 'bottom', text }
    : { kind: 'linear', axis: 'y', a: from, b: to, side: 'right', text };
};

/** A family's section at the belt as the drawing wants it. */
export const sectionOf = ({ title, lines, dimensions }: BeltSection): Section => ({
  title,
  shapes: lines.map(shapeOf),
  dimensions: [
    ...dimensions.map(dimensionOf),
    ...lines.flatMap((line): SectionDimension[] =>
      line.label === undefined ? [] : [{ kind: 'note', at: anchor(line, lines), text: line.label }],
    ),
  ],
});
