import type { Issue } from '../core/issue.ts';
import { sweepOf } from '../geometry/arc.ts';
import type { Loop } from '../geometry/loop.ts';
import { loopGap } from '../geometry/loop-measure.ts';
import { oriented } from '../geometry/loop-transform.ts';
import { arcOfSegment, cornerTurns, isStraight, segments } from '../geometry/segment.ts';
import { text } from '../text/index.ts';
import type { Hole, PlatePart, PrintPart } from './part.ts';
import { PRINT, PROCESS, type Limit } from './process.ts';

const words = text.model.rules;

/** An error below what can be made, a warning below what makes no trouble, else nothing. */
const judged = (
  code: string,
  path: string,
  feature: string,
  value: number,
  limit: { readonly least: number; readonly advised: number },
  fix: string,
): Issue[] => {
  const isError = value < limit.least - 1e-9;
  if (!isError && value >= limit.advised - 1e-9) return [];
  const message = isError
    ? words.below(feature, value, limit.least)
    : words.tight(feature, value, limit.advised);
  return [{ code, severity: isError ? 'error' : 'warning', path, message, fix }];
};

const at = (limit: Limit, t: number): { readonly least: number; readonly advised: number } => ({
  least: limit.least(t),
  advised: limit.advised(t),
});

const pathOf = (part: string, hole: Hole): string => `${part}.${hole.id}`;

/** Pairs of holes, each once. */
const pairs = (holes: readonly Hole[]): [Hole, Hole][] =>
  holes.flatMap((one, i) => holes.slice(i + 1).map((other): [Hole, Hole] => [one, other]));

/**
 * What the cutting process of a plate cannot make, or makes badly, feature by feature: holes and
 * slots too small for the thickness, too little material between holes or to the outline, and
 * inner corners sharper than the cut (a note: they come out rounded).
 */
export const plateRules = (part: PlatePart): Issue[] => {
  const profile = PROCESS[part.process];
  return part.layers.flatMap(({ profile: { outer, holes: loops }, from, to }) => {
    const t = to - from;
    const sizes = part.holes.flatMap((hole) => {
      const isSlot = hole.slotLength !== undefined;
      const limit = at(isSlot ? profile.slot : profile.hole, t);
      const name = isSlot ? words.slot(part.name, hole.id) : words.hole(part.name, hole.id);
      return judged('feature-small', pathOf(part.id, hole), name, hole.size, limit, words.larger);
    });
    const edges = part.holes.flatMap((hole) => {
      const name = words.edge(part.name, hole.id);
      const gap = loopGap(hole.loop, outer);
      return judged(
        'edge-thin',
        pathOf(part.id, hole),
        name,
        gap,
        at(profile.edge, t),
        words.inward,
      );
    });
    const webs = pairs(part.holes).flatMap(([one, other]) => {
      const name = words.web(part.name, one.id, other.id);
      const gap = loopGap(one.loop, other.loop);
      return judged('web-thin', pathOf(part.id, one), name, gap, at(profile.web, t), words.apart);
    });
    const sharp = [
      ...innerCorners(oriented(outer, true)),
      ...loops.flatMap((loop) => innerCorners(oriented(loop, false))),
    ].filter((radius) => radius < profile.innerRadius);
    const note: Issue[] =
      sharp.length === 0
        ? []
        : [
            {
              code: 'inner-corner',
              severity: 'note',
              path: part.id,
              message: words.innerCorner(part.name, sharp.length, profile.innerRadius),
              fix: words.relieve,
            },
          ];
    return [...sizes, ...edges, ...webs, ...note];
  });
};

/** Radii of the corners that cut into material (0 for a sharp one), material on the left. */
const innerCorners = (loop: Loop): number[] => {
  if (loop.kind === 'circle') return [];
  const concave = segments(loop).flatMap((s) =>
    isStraight(s) || sweepOf(s.bulge) > 0 ? [] : [arcOfSegment(s).radius],
  );
  const sharp = cornerTurns(loop).filter((turn) => turn < -1);
  return [...concave, ...sharp.map(() => 0)];
};

/** What a printer with this nozzle cannot make, or makes badly, of a printed part. */
export const printRules = (part: PrintPart, nozzle: number): Issue[] => {
  const wall = PRINT.wall(nozzle);
  const sizes = part.holes.flatMap((hole) =>
    judged(
      'feature-small',
      pathOf(part.id, hole),
      words.hole(part.name, hole.id),
      hole.size,
      { least: PRINT.hole, advised: PRINT.hole },
      words.larger,
    ),
  );
  const layers = part.layers.flatMap(({ profile: { outer, holes } }, i) => {
    const path = `${part.id}.layers.${String(i)}`;
    const gaps = [
      ...holes.map((hole) => loopGap(hole, outer)),
      ...holes.flatMap((hole, k) => holes.slice(k + 1).map((other) => loopGap(hole, other))),
    ];
    const thinnest = Math.min(...gaps);
    const walls = Number.isFinite(thinnest)
      ? judged('wall-thin', path, words.wall(part.name, i + 1), thinnest, wall, words.thicker)
      : [];
    if (outer.kind === 'path') return walls;
    const post = { least: 2 * wall.least, advised: PRINT.post };
    const name = words.post(part.name, i + 1);
    return [...walls, ...judged('post-thin', path, name, 2 * outer.radius, post, words.thicker)];
  });
  return [...sizes, ...layers];
};
