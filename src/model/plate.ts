import type { Issue } from '../core/issue.ts';
import { hasError } from '../core/issue.ts';
import { ok, type Result } from '../core/result.ts';
import { selfCrossings } from '../geometry/intersect.ts';
import type { Loop } from '../geometry/loop.ts';
import {
  containsPoint,
  insideOf,
  pointOn,
  shortEdges,
  signedArea,
  touching,
} from '../geometry/loop-measure.ts';
import { normalised } from '../geometry/loop-transform.ts';
import { text } from '../text/index.ts';
import type { PlatePart } from './part.ts';

/** What a plate is made from: everything of the part but its layer, and the outline instead. */
export interface PlateSpec extends Omit<
  PlatePart,
  'kind' | 'layers' | 'holes' | 'engraving' | 'notes' | 'tight'
> {
  readonly outline: Loop;
  readonly thickness: number;
  readonly holes?: PlatePart['holes'];
  readonly engraving?: PlatePart['engraving'];
  readonly notes?: readonly string[];
  readonly tight?: readonly string[];
}

/** Edges shorter than this do not cut cleanly and are refused by shops, mm. */
export const SHORTEST_EDGE = 0.1;

/**
 * A plate from its outline and its holes: one layer from 0 to the thickness, the outline
 * anticlockwise and the holes clockwise. Fails, naming part and feature, when a contour crosses
 * itself, has no area or a very short edge, or when a hole is not strictly inside the outline
 * and apart from every other hole. (Widths of webs are for the process rules to judge.)
 */
export const plate = (spec: PlateSpec): Result<PlatePart> => {
  const { outline, thickness, holes = [], engraving = [], notes = [], tight = [], ...rest } = spec;
  const issues = plateIssues(spec);
  if (hasError(issues)) return { ok: false, issues };
  const profile = normalised({ outer: outline, holes: holes.map((hole) => hole.loop) });
  const layers = [{ profile, from: 0, to: thickness }];
  return ok({ kind: 'plate', ...rest, layers, holes, engraving, notes, tight }, issues);
};

const plateIssues = ({ id, outline, thickness, holes = [] }: PlateSpec): Issue[] => {
  const at = (code: string, feature: string, words: { message: string; fix: string }): Issue => ({
    code,
    severity: 'error',
    path: feature === '' ? id : `${id}.${feature}`,
    ...words,
  });
  const issues: Issue[] = [];
  if (!(thickness > 0))
    issues.push(at('plate-thickness', '', text.model.plateThickness(id, thickness)));
  const contours = [
    { name: 'outline', loop: outline },
    ...holes.map((h) => ({ name: h.id, loop: h.loop })),
  ];
  const broken = contours.flatMap(({ name, loop }) => {
    const reason = contourFault(loop);
    return reason === undefined
      ? []
      : [at('contour-fault', name, text.model.contourFault(id, name, reason))];
  });
  issues.push(...broken);
  const repeated = holes.filter((hole, i) => holes.findIndex((h) => h.id === hole.id) < i);
  issues.push(
    ...repeated.map((hole) => at('hole-repeated', hole.id, text.model.holeRepeated(id, hole.id))),
  );
  // Relations between contours mean nothing while one of them is broken.
  if (broken.length > 0) return issues;
  const isInside = insideOf(outline);
  holes.forEach((hole, i) => {
    if (!isInside(hole.loop))
      issues.push(at('hole-outside', hole.id, text.model.holeOutside(id, hole.id)));
    for (const other of holes.slice(i + 1))
      if (overlapping(hole.loop, other.loop))
        issues.push(at('holes-overlap', hole.id, text.model.holesOverlap(id, hole.id, other.id)));
  });
  return issues;
};

const overlapping = (one: Loop, other: Loop): boolean =>
  touching(one, other) || containsPoint(one, pointOn(other)) || containsPoint(other, pointOn(one));

/** Why a contour cannot be cut, in words; undefined for a sound one. */
const contourFault = (loop: Loop): string | undefined => {
  const numbers =
    loop.kind === 'circle'
      ? [...loop.centre, loop.radius]
      : loop.vertices.flatMap(({ x, y, bulge }) => [x, y, bulge]);
  if (!numbers.every(Number.isFinite)) return text.model.faultNotFinite;
  if (loop.kind === 'circle') return loop.radius > 0 ? undefined : text.model.faultNoArea;
  if (shortEdges(loop, SHORTEST_EDGE).length > 0) return text.model.faultShortEdge(SHORTEST_EDGE);
  if (selfCrossings(loop).length > 0) return text.model.faultCrossesItself;
  return Math.abs(signedArea(loop)) > 0 ? undefined : text.model.faultNoArea;
};
