import type { Issue } from '../core/issue.ts';
import { sweepOf } from '../geometry/arc.ts';
import type { Loop } from '../geometry/loop.ts';
import { boundingBox, gapsFrom, loopGap } from '../geometry/loop-measure.ts';
import { oriented } from '../geometry/loop-transform.ts';
import { arcOfSegment, cornerTurns, isStraight, segments } from '../geometry/segment.ts';
import { text } from '../text/index.ts';
import type { Hole, PlatePart, PrintPart } from './part.ts';
import { PRINT, PROCESS, type Limit } from './process.ts';

const words = text.model.rules;

/** What a process cannot make, or makes badly: an issue with the numbers it stands on. */
export interface Violation extends Issue {
  /** What was measured: "The diameter of hole "a" of Base". */
  readonly feature: string;
  /** As drawn and as the process needs it, mm; a note states none. */
  readonly value?: number;
  readonly least?: number;
}

/** One size of one feature to be judged; features that agree in all else are named together. */
interface Size {
  readonly code: string;
  /** Path of the feature, and the names it goes by in words. */
  readonly path: string;
  readonly ids: readonly string[];
  readonly value: number;
  readonly limit: { readonly least: number; readonly advised: number };
  readonly fix: string;
  readonly label: (ids: readonly string[]) => string;
}

/** Sizes nearer than this are one size, mm. */
const SAME = 1e-6;

/** Errors below what can be made, warnings below what makes no trouble, else nothing. */
const judged = (part: string, process: string, sizes: readonly Size[]): Violation[] => {
  const small = sizes.filter(({ value, limit }) => value < limit.advised - 1e-9);
  const together = small.reduce<Size[]>((groups, size) => {
    const i = groups.findIndex(
      (group) => group.code === size.code && Math.abs(group.value - size.value) < SAME,
    );
    const known = groups[i];
    // Which features share a size matters for an advice; what cannot be made is named one by one.
    if (known === undefined || size.value < size.limit.least - 1e-9) return [...groups, size];
    return groups.with(i, { ...known, ids: [...known.ids, ...size.ids] });
  }, []);
  return together.map(({ code, path, ids, value, limit, fix, label }) => {
    const { least, advised } = limit;
    const feature = label(ids);
    const isError = value < least - 1e-9;
    return {
      code,
      severity: isError ? 'error' : 'warning',
      path: ids.length > 1 ? part : path,
      message: isError
        ? words.below(feature, value, process, least)
        : words.tight(feature, value, process, advised),
      fix,
      feature,
      value,
      least,
    };
  });
};

const at = (limit: Limit, t: number): { readonly least: number; readonly advised: number } => ({
  least: limit.least(t),
  advised: limit.advised(t),
});

/** Pairs of holes, each once. */
const pairs = (holes: readonly Hole[]): [Hole, Hole][] =>
  holes.flatMap((one, i) => holes.slice(i + 1).map((other): [Hole, Hole] => [one, other]));

/**
 * What the process of a plate cannot make, or makes badly: each violation names the feature, its
 * value, the process and the limit. Slots are judged by their width. Inner corners sharper than
 * the beam are noted, because a part that has to fit into them would not (mm, all limits from
 * `PROCESS`).
 */
export const plateRules = (part: PlatePart): Violation[] => {
  const profile = PROCESS[part.process];
  const process = words.process[part.process];
  return part.layers.flatMap(({ profile: { outer, holes: loops }, from, to }) => {
    const t = to - from;
    const sizes = part.holes.map(({ id, size, slotLength }): Size => {
      const isSlot = slotLength !== undefined;
      const limit = at(isSlot ? profile.slot : profile.hole, t);
      return {
        code: isSlot ? 'slot-narrow' : 'feature-small',
        path: `${part.id}.${id}`,
        ids: [id],
        value: size,
        limit,
        fix: size < limit.least - 1e-9 ? words.otherProcess : words.larger,
        label: (ids) => (isSlot ? words.slot : words.hole)(part.name, ids),
      };
    });
    const toOutline = gapsFrom(outer);
    const edges = part.holes.map(({ id, loop }): Size => ({
      code: 'edge-thin',
      path: `${part.id}.${id}`,
      ids: [id],
      value: toOutline(loop),
      limit: at(profile.edge, t),
      fix: words.inward,
      label: (ids) => words.edge(part.name, ids),
    }));
    const web = at(profile.web, t);
    const webs = pairs(part.holes)
      .filter(([one, other]) => boxGap(one.loop, other.loop) < web.advised)
      .map(([one, other]): Size => ({
        code: 'web-thin',
        path: `${part.id}.${one.id}`,
        ids: [words.pair(one.id, other.id)],
        value: loopGap(one.loop, other.loop),
        limit: web,
        fix: words.apart,
        label: (ids) => words.web(part.name, ids),
      }));
    const sharp = [
      ...innerCorners(oriented(outer, true)),
      ...loops.flatMap((loop) => innerCorners(oriented(loop, false))),
    ].filter((radius) => radius < profile.innerRadius);
    const note: Violation[] =
      sharp.length === 0
        ? []
        : [
            {
              code: 'inner-corner',
              severity: 'note',
              path: part.id,
              message: words.innerCorner(part.name, sharp.length, profile.innerRadius),
              fix: words.relieve,
              feature: words.corners(part.name),
            },
          ];
    return [...judged(part.id, process, [...sizes, ...edges, ...webs]), ...note];
  });
};

/** Distance of the boxes round two contours, mm: the contours themselves are no nearer. */
const boxGap = (one: Loop, other: Loop): number => {
  const [a, b] = [boundingBox(one), boundingBox(other)];
  const apart = ([0, 1] as const).map((axis) =>
    Math.max(a.min[axis] - b.max[axis], b.min[axis] - a.max[axis], 0),
  );
  return Math.hypot(...apart);
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

/** What a printer with this nozzle (mm) cannot make, or makes badly, of a printed part. */
export const printRules = (part: PrintPart, nozzle: number): Violation[] => {
  const wall = PRINT.wall(nozzle);
  const sizes = part.holes.map(({ id, size }): Size => ({
    code: 'feature-small',
    path: `${part.id}.${id}`,
    ids: [id],
    value: size,
    limit: { least: PRINT.hole, advised: PRINT.hole },
    fix: words.larger,
    label: (ids) => words.hole(part.name, ids),
  }));
  const layers = part.layers.flatMap(({ profile: { outer, holes } }, i): Size[] => {
    const toOutline = gapsFrom(outer);
    const gaps = [
      ...holes.map((hole) => toOutline(hole)),
      ...holes.flatMap((hole, k) => holes.slice(k + 1).map((other) => loopGap(hole, other))),
    ];
    const layer = {
      path: `${part.id}.layers.${String(i)}`,
      ids: [words.layer(i + 1)],
      fix: words.thicker,
    } as const;
    const walls: Size[] =
      gaps.length === 0
        ? []
        : [
            {
              ...layer,
              code: 'wall-thin',
              value: Math.min(...gaps),
              limit: wall,
              label: (ids) => words.wall(part.name, ids),
            },
          ];
    if (outer.kind === 'path') return walls;
    const post: Size = {
      ...layer,
      code: 'post-thin',
      value: 2 * outer.radius,
      limit: { least: 2 * wall.least, advised: PRINT.post },
      label: (ids) => words.post(part.name, ids),
    };
    return [...walls, post];
  });
  return judged(part.id, words.printing(nozzle), [...sizes, ...layers]);
};
