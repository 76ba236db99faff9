import type { Issue } from '../../core/issue.ts';
import { boundingBox, containsPoint, loopGap, pointOn } from '../../geometry/loop-measure.ts';
import type { Vec2 } from '../../geometry/vector.ts';
import { text } from '../../text/index.ts';
import type { Contour } from './dxf-reader.ts';
import { lintIssue } from './lint-issue.ts';

const say = text.exporting.lint;

/** Digits that a file may lose, mm. */
const SLACK = 0.001;

/**
 * Parts on one sheet (its corner the origin) that lie nearer to each other than the gap, or
 * nearer to the edge of the sheet than the margin; distances are exact, arcs included, mm.
 */
export const sheetIssues = (
  contours: readonly Contour[],
  { size, gap, margin }: { readonly size: Vec2; readonly gap: number; readonly margin: number },
): Issue[] => {
  const loops = contours.map(({ loop }) => loop);
  const outer = loops.filter(
    (loop) => !loops.some((other) => other !== loop && containsPoint(other, pointOn(loop))),
  );
  const boxes = outer.map(boundingBox);
  const near = (a: number, b: number): boolean => {
    const [p, q] = [boxes[a], boxes[b]];
    return (
      p !== undefined &&
      q !== undefined &&
      ([0, 1] as const).every(
        (axis) => p.min[axis] - gap <= q.max[axis] && q.min[axis] - gap <= p.max[axis],
      )
    );
  };
  return outer.flatMap((loop, i) => {
    const box = boxes[i] ?? boundingBox(loop);
    const edge = Math.min(
      ...([0, 1] as const).flatMap((axis) => [box.min[axis], size[axis] - box.max[axis]]),
    );
    const gaps = outer.flatMap((other, j) => (j > i && near(i, j) ? [loopGap(loop, other)] : []));
    const least = Math.min(...gaps);
    return [
      ...(edge < margin - SLACK ? [lintIssue('dxf-margin', say.margin(edge, margin))] : []),
      ...(least < gap - SLACK ? [lintIssue('dxf-gap', say.gap(least, gap))] : []),
    ];
  });
};
