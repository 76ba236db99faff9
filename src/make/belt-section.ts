import type { Section, SectionDimension, SectionShape } from '../drawing/belt-section.ts';
import type { BeltSection } from '../family/index.ts';
import type { Vec2 } from '../geometry/vector.ts';

type Line = BeltSection['lines'][number];

/** Blade and fixture are cut through and hatched; the rest is outlined. */
const shapeOf = ({ points, closed, role }: Line): SectionShape => ({
  points,
  isClosed: closed,
  stroke: role === 'grinder' ? 'phantom' : 'visible',
  fill: !closed ? 'none' : role === 'blade' || role === 'fixture' ? 'hatch' : 'tint',
});

/** Where a label points: the middle of the longest piece of the outline. */
const anchor = (points: readonly Vec2[]): Vec2 => {
  let best: Vec2 = points[0] ?? [0, 0];
  let longest = -1;
  points.slice(1).forEach((b, i) => {
    const a = points[i] ?? b;
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (length > longest) {
      longest = length;
      best = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
    }
  });
  return best;
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
      line.label === undefined ? [] : [{ kind: 'note', at: anchor(line.points), text: line.label }],
    ),
  ],
});
