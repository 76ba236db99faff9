import type { Issue } from '../../core/issue.ts';
import { crossings } from '../../geometry/intersect.ts';
import { containsPoint, pointOn, unionBox, type Box2 } from '../../geometry/loop-measure.ts';
import {
  arcOfSegment,
  isStraight,
  segmentBox,
  segmentGap,
  segmentLength,
  segments,
  type Segment,
} from '../../geometry/segment.ts';
import { distance2 } from '../../geometry/vector.ts';
import { text } from '../../text/index.ts';
import type { Contour } from './dxf-reader.ts';
import { lintIssue } from './lint-issue.ts';
import { overlapOf } from './overlap.ts';

/** Contours nearer than this touch, and segments this close along their length coincide, mm. */
const TOUCH = 0.01;
/** Shortest edge a cutting machine should be given, mm. */
const SHORTEST = 0.1;
/** Nearer than this to a shared corner, two neighbours are close by nature, mm. */
const CORNER = SHORTEST / 2;
/** Shorter edges have no length; corners nearer than this are one corner, mm. */
const NOTHING = 1e-6;

const say = text.exporting.lint;

/** The edges of a contour; an open one has no edge from its end to its start. */
const edges = ({ loop, closed }: Contour): Segment[] =>
  closed ? segments(loop) : segments(loop).slice(0, -1);

const edgeIssues = (contour: Contour, which: number): Issue[] =>
  edges(contour).flatMap((edge) => {
    const length = segmentLength(edge);
    if (length < NOTHING) return [lintIssue('dxf-zero-length', say.zeroLength(which, edge.a))];
    if (length < SHORTEST)
      return [lintIssue('dxf-short-edge', say.shortEdge(which, edge.a, length, SHORTEST))];
    return [];
  });

const roundIssues = (contour: Contour, which: number): Issue[] => {
  const own = edges(contour);
  const [first] = own;
  if (contour.loop.kind === 'circle' || first === undefined || own.some(isStraight)) return [];
  const { centre, radius } = arcOfSegment(first);
  const round = own
    .map(arcOfSegment)
    .every((arc) => distance2(arc.centre, centre) < TOUCH && Math.abs(arc.radius - radius) < TOUCH);
  return round && contour.closed ? [lintIssue('dxf-round-hole', say.roundHole(which, centre))] : [];
};

interface Placed {
  readonly edge: Segment;
  readonly box: Box2;
  readonly contour: number;
}

const boxesApart = (p: Box2, q: Box2): boolean =>
  ([0, 1] as const).some(
    (axis) => p.min[axis] > q.max[axis] + TOUCH || q.min[axis] > p.max[axis] + TOUCH,
  );

const pairIssues = ({ edge: s, box, contour }: Placed, other: Placed): Issue[] => {
  if (boxesApart(box, other.box)) return [];
  const t = other.edge;
  if (overlapOf(s, t, TOUCH) > TOUCH)
    return [lintIssue('dxf-overlap', say.overlap(contour, other.contour, s.a))];
  const own = contour === other.contour;
  const shared = [s.a, s.b].filter(
    (p) => own && Math.min(distance2(p, t.a), distance2(p, t.b)) < NOTHING,
  );
  const [meeting] = crossings(s, t).filter((p) => shared.every((c) => distance2(p, c) > CORNER));
  const near = shared.length === 0 && segmentGap(s, t) < TOUCH ? s.a : undefined;
  const at = meeting ?? near;
  if (at === undefined) return [];
  return own
    ? [lintIssue('dxf-self-intersection', say.selfIntersection(contour, at))]
    : [lintIssue('dxf-contours-touch', say.contoursTouch(contour, other.contour, at))];
};

const meetingIssues = (contours: readonly Contour[]): Issue[] => {
  const placed = contours.flatMap((contour, i) =>
    edges(contour)
      .filter((edge) => segmentLength(edge) >= NOTHING)
      .map((edge) => ({ edge, box: segmentBox(edge), contour: i + 1 })),
  );
  const found = placed.flatMap((s, i) =>
    placed
      .slice(i + 1)
      .flatMap((t) =>
        pairIssues(s, t).map((issue) => ({ issue, pair: `${s.contour} ${t.contour}` })),
      ),
  );
  // Two contours that meet once usually meet often; the worst of it says enough.
  const overlaps = found.filter(({ issue }) => issue.code === 'dxf-overlap');
  const worst = [...overlaps, ...found];
  return worst
    .filter(({ pair }, i) => worst.findIndex((other) => other.pair === pair) === i)
    .map(({ issue }) => issue);
};

/** As many outer contours as parts, every other one in one of them, and none within another. */
const nestingIssues = (contours: readonly Contour[], parts: number): Issue[] => {
  const depths = contours.map(
    ({ loop }, i) =>
      contours.filter((other, j) => j !== i && containsPoint(other.loop, pointOn(loop))).length,
  );
  const outer = depths.filter((depth) => depth === 0).length;
  return [
    ...(outer === parts ? [] : [lintIssue('dxf-outer', say.outer(outer, parts))]),
    ...depths.flatMap((depth, i) =>
      depth > 1 ? [lintIssue('dxf-nested', say.nested(i + 1))] : [],
    ),
  ];
};

/**
 * Defects of cut contours (mm) that a shop would find at the machine: open chains, edges of no
 * or too little length, doubled or touching segments, self-intersections, holes outside the
 * part or inside each other, more or fewer parts than there should be, and round holes that are
 * no circles.
 */
export const contourIssues = (contours: readonly Contour[], parts = 1): Issue[] => {
  const open = contours.flatMap(({ closed, loop }, i) =>
    closed ? [] : [lintIssue('dxf-open', say.open(i + 1, pointOn(loop)))],
  );
  const single = contours.flatMap((contour, i) => [
    ...edgeIssues(contour, i + 1),
    ...roundIssues(contour, i + 1),
  ]);
  const met = meetingIssues(contours);
  // Nesting means something only between whole contours that keep clear of each other.
  const nesting = open.length + met.length === 0 ? nestingIssues(contours, parts) : [];
  return [...open, ...single, ...met, ...nesting];
};

/** The box round all contours, mm; there must be at least one. */
export const contourBox = (contours: readonly Contour[]): Box2 =>
  unionBox(contours.flatMap((contour) => edges(contour).map(segmentBox)));
