import makerjs from 'makerjs';
import type { Issue } from '../core/issue.ts';
import { fail, ok, type Result } from '../core/result.ts';
import { circle, path, type Loop } from '../geometry/loop.ts';
import { crossings, loopCrossings } from '../geometry/intersect.ts';
import { signedArea } from '../geometry/loop-measure.ts';
import { oriented } from '../geometry/loop-transform.ts';
import { arcOfSegment, isStraight, segments } from '../geometry/segment.ts';
import { distance2 } from '../geometry/vector.ts';
import { text } from '../text/index.ts';
import { merged } from './merge.ts';

export type Operation = 'union' | 'subtract';

/** Areas of a boolean must add up within this share of the larger one. */
const AREA_SHARE = 1e-6;

const error = (code: string, words: { message: string; fix: string }): Issue => ({
  code,
  severity: 'error',
  path: '',
  ...words,
});

/** The contour as a model of the outline library. */
const toModel = (loop: Loop): makerjs.IModel => {
  if (loop.kind === 'circle')
    return { paths: { circle: new makerjs.paths.Circle([...loop.centre], loop.radius) } };
  const paths: makerjs.IPathMap = {};
  segments(loop).forEach((segment, i) => {
    if (isStraight(segment)) {
      paths[`edge${String(i)}`] = new makerjs.paths.Line([...segment.a], [...segment.b]);
      return;
    }
    const { centre, radius, start, sweep } = arcOfSegment(segment);
    const [from, to] = sweep > 0 ? [start, start + sweep] : [start + sweep, start];
    paths[`edge${String(i)}`] = new makerjs.paths.Arc([...centre], radius, from, to);
  });
  return { paths };
};

/** A chain of the outline library as a contour; undefined for an open one. */
const fromChain = ({ links, endless }: makerjs.IChain): Loop | undefined => {
  const alone = links[0]?.walkedPath.pathContext;
  if (links.length === 1 && isCircle(alone))
    return circle([alone.origin[0] ?? 0, alone.origin[1] ?? 0], alone.radius);
  if (!endless) return undefined;
  const vertices = links.map(({ walkedPath, reversed, endPoints }) => {
    const edge = walkedPath.pathContext;
    const start = endPoints[reversed ? 1 : 0] ?? [];
    const span = isArc(edge) ? makerjs.angle.ofArcSpan(edge) : 0;
    const bulge = Math.tan((span * Math.PI) / 720) * (reversed ? -1 : 1) + 0;
    return { x: start[0] ?? 0, y: start[1] ?? 0, bulge };
  });
  return merged(path(vertices));
};

// The library's own type guards do not narrow under the strict options used here.
const isCircle = (edge: makerjs.IPath | undefined): edge is makerjs.IPathCircle =>
  edge?.type === makerjs.pathType.Circle;
const isArc = (edge: makerjs.IPath): edge is makerjs.IPathArc => edge.type === makerjs.pathType.Arc;

/** Every closed contour of a model, or undefined when any chain is open. */
const contours = (model: makerjs.IModel): Loop[] | undefined => {
  const chains = makerjs.model.findChains(model, { byLayers: false });
  if (!Array.isArray(chains)) return undefined;
  const loops = chains.map(fromChain);
  return loops.every((loop) => loop !== undefined) ? loops : undefined;
};

const area = (loops: readonly Loop[]): number =>
  loops.reduce((sum, loop) => sum + Math.abs(signedArea(loop)), 0);

/** Whether the contours run along each other anywhere, where the library's booleans fail. */
const runTogether = (one: Loop, other: Loop): boolean =>
  segments(one).some((s) =>
    segments(other).some((t) => {
      if (isStraight(s) !== isStraight(t)) return false;
      const [p, q] = crossings(s, t);
      if (p === undefined || q === undefined || distance2(p, q) < 1e-6) return false;
      if (isStraight(s)) return true;
      return distance2(arcOfSegment(s).centre, arcOfSegment(t).centre) < 1e-6;
    }),
  );

/**
 * Two contours as one: a tab joined on or a notch cut out. They must cross, not merely touch or
 * share an edge (let a cutter overshoot), and one contour must remain. The result is held
 * against the intersection of the two: |A u B| + |A n B| = |A| + |B|, |A - B| + |A n B| = |A|.
 */
export const combine = (base: Loop, tool: Loop, operation: Operation): Result<Loop> => {
  if (runTogether(base, tool)) return fail(error('edges-coincide', text.model.edgesCoincide));
  if (loopCrossings(base, tool).length === 0)
    return fail(error('contours-apart', text.model.contoursApart));
  const { combineUnion, combineSubtraction, combineIntersection } = makerjs.model;
  const run = operation === 'union' ? combineUnion : combineSubtraction;
  const result = contours(run(toModel(base), toModel(tool)));
  const common = contours(combineIntersection(toModel(base), toModel(tool)));
  const whole = area(operation === 'union' ? [base, tool] : [base]);
  if (
    result === undefined ||
    common === undefined ||
    Math.abs(area(result) + area(common) - whole) > AREA_SHARE * whole
  )
    return fail(error('boolean-failed', text.model.booleanFailed));
  const [only] = result;
  if (only === undefined || result.length > 1)
    return fail(error('contour-not-single', text.model.contourNotSingle(result.length)));
  return ok(oriented(only, true));
};
