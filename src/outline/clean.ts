import type { Vec2 } from '../geometry/vector.ts';
import type { Flattened, Stroke } from './flatten.ts';

/** Points nearer than this are one, and wider gaps than that stay open; shares of the drawing. */
const SAME_SHARE = 1e-5;
const GAP_SHARE = 5e-3;
/** More loose ends than this are not joined: it is no outline. */
const MOST_LOOSE = 2000;

/** A line that goes round: its points, without the first repeated. Units of the file, y up. */
export interface Contour {
  readonly points: readonly Vec2[];
  /** Distance between its ends where they do not meet; 0 where they do. */
  readonly gap: number;
  readonly area: number;
}

/** What was found and mended in a drawing; lengths in units of the file. */
export interface Cleaned {
  readonly contours: readonly Contour[];
  readonly duplicates: number;
  /** Strokes without length. */
  readonly specks: number;
  /** Gaps that were bridged, the widest first. */
  readonly bridged: readonly { readonly at: Vec2; readonly size: number }[];
  readonly tooManyEnds: boolean;
}

const apart = (a: Vec2, b: Vec2): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

const areaOf = (points: readonly Vec2[]): number =>
  points.reduce((sum, [x, y], i) => {
    const [nx, ny] = points[(i + 1) % points.length] ?? [x, y];
    return sum + (x * ny - nx * y) / 2;
  }, 0);

/** Without repeated neighbours. */
const distinct = (points: readonly Vec2[], same: number): Vec2[] =>
  points.reduce<Vec2[]>((kept, point) => {
    const last = kept.at(-1);
    if (last === undefined || apart(last, point) > same) kept.push(point);
    return kept;
  }, []);

/** Equal for strokes through the same points, whichever way round and from wherever. */
const signature = ({ points }: Stroke, same: number): string =>
  points
    .map(([x, y]) => `${Math.round(x / same / 4)},${Math.round(y / same / 4)}`)
    .sort()
    .join(' ');

const withoutDuplicates = (strokes: readonly Stroke[], same: number): Stroke[] => {
  const seen = new Set<string>();
  return strokes.filter((stroke) => {
    const key = signature(stroke, same);
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
};

/** Joins loose ends that lie within `reach`, the nearest first. */
const joined = (loose: Vec2[][], reach: number, met: (at: Vec2, size: number) => void) => {
  const chains = [...loose];
  for (;;) {
    let best: { i: number; j: number; size: number; flip: [boolean, boolean] } | undefined;
    chains.forEach((a, i) => {
      const [a0, a1] = [a[0], a.at(-1)];
      chains.slice(i + 1).forEach((b, k) => {
        const [b0, b1] = [b[0], b.at(-1)];
        if (!a0 || !a1 || !b0 || !b1) return;
        const ways = [
          [a1, b0, false, false],
          [a1, b1, false, true],
          [a0, b0, true, false],
          [a0, b1, true, true],
        ] as const;
        for (const [p, q, first, second] of ways) {
          const size = apart(p, q);
          if (size <= reach && size < (best?.size ?? Infinity))
            best = { i, j: i + 1 + k, size, flip: [first, second] };
        }
      });
    });
    if (best === undefined) return chains;
    const { i, j, size, flip } = best;
    const [a, b] = [chains[i] ?? [], chains[j] ?? []];
    const [head, tail] = [flip[0] ? a.toReversed() : a, flip[1] ? b.toReversed() : b];
    met(head.at(-1) ?? [0, 0], size);
    chains.splice(j, 1);
    chains[i] = [...head, ...tail];
  }
};

/** Chains that meet exactly, found by their ends on a grid: quick where there are many. */
const chained = (loose: readonly Vec2[][], same: number): Vec2[][] => {
  const key = ([x, y]: Vec2): string => `${Math.round(x / same / 4)},${Math.round(y / same / 4)}`;
  const ends = new Map<string, Vec2[][]>();
  const free = new Set(loose);
  for (const line of loose)
    for (const end of [line[0], line.at(-1)])
      if (end) ends.set(key(end), [...(ends.get(key(end)) ?? []), line]);
  const extend = (chain: Vec2[]): Vec2[] => {
    for (;;) {
      const end = chain.at(-1);
      const next = end && ends.get(key(end))?.find((line) => free.has(line));
      if (end === undefined || next === undefined) return chain;
      free.delete(next);
      const [first = end] = next;
      chain.push(
        ...(apart(first, end) <= apart(next.at(-1) ?? end, end) ? next : next.toReversed()),
      );
    }
  };
  return loose.flatMap((line) => {
    if (!free.delete(line)) return [];
    return [extend(extend([...line]).toReversed())];
  });
};

/** Puts the strokes of a drawing together to contours, the largest closed one first. */
export const cleaned = ({ strokes, size }: Flattened): Cleaned => {
  const [same, reach] = [size * SAME_SHARE, size * GAP_SHARE];
  const shaped = strokes.map(({ points, closed }) => ({ closed, points: distinct(points, same) }));
  const sound = shaped.filter(({ points }) => points.length > 1);
  const single = withoutDuplicates(sound, same);
  const bridged: { at: Vec2; size: number }[] = [];
  const exact = chained(
    single.filter(({ closed }) => !closed).map(({ points }) => [...points]),
    same,
  );
  const goesRound = (line: readonly Vec2[]): boolean => {
    const [first, last] = [line[0], line.at(-1)];
    return (
      line.length > 3 && first !== undefined && last !== undefined && apart(first, last) <= 4 * same
    );
  };
  const loose = exact.filter((line) => !goesRound(line));
  const tooManyEnds = loose.length > MOST_LOOSE;
  const lines = tooManyEnds
    ? []
    : joined(loose, reach, (at, gap) => {
        if (gap > 4 * same) bridged.push({ at, size: gap });
      });
  const contours = [
    ...single.filter(({ closed }) => closed).map(({ points }) => points),
    ...exact.filter(goesRound),
    ...lines,
  ].map((line): Contour => {
    const [first = [0, 0], last = [0, 0]] = [line[0], line.at(-1)];
    const isClosed = single.some(({ closed, points }) => closed && points === line);
    const open = isClosed ? 0 : apart(first, last);
    const points = open <= 4 * same && apart(first, last) <= 4 * same ? line.slice(0, -1) : line;
    if (open > 4 * same && open <= reach) bridged.push({ at: last, size: open });
    return { points, gap: open <= reach ? 0 : open, area: Math.abs(areaOf(points)) };
  });
  return {
    contours: contours
      .filter(({ points, area }) => points.length > 2 && area > same * size)
      .sort((a, b) => Number(a.gap > 0) - Number(b.gap > 0) || b.area - a.area),
    duplicates: sound.length - single.length,
    specks: shaped.length - sound.length,
    bridged: bridged.sort((a, b) => b.size - a.size),
    tooManyEnds,
  };
};
