import { problem, type Issue } from '../core/issue.ts';
import { fail, ok, type Result } from '../core/result.ts';
import { outlineIssues } from '../blade/outline-rules.ts';
import { bladeParameters as p } from '../blade/parameters.ts';
import type { Blade, Outline } from '../blade/schema.ts';
import type { Vec2 } from '../geometry/vector.ts';
import { text } from '../text/index.ts';
import type { Contour } from './clean.ts';
import { fitDimensions } from './fit-dimensions.ts';
import { fitPoints } from './fit-points.ts';
import { across } from './extent.ts';
import { lay, type Laid, type OutlineChoice } from './lay.ts';

/** An outline as the blade can hold it, and how far the drawn line leaves it at most, mm. */
export interface Offer {
  readonly outline: Outline;
  readonly deviation: number;
}

/** An outline laid on the blade's axes: u from the plunge, v from the spine there; mm. */
export interface Traced {
  /** The whole contour, and spine and edge from plunge to tip. */
  readonly contour: readonly Vec2[];
  readonly spine: readonly Vec2[];
  readonly edge: readonly Vec2[];
  readonly length: number;
  readonly plungeBy: Laid['plungeBy'];
  /** By how much the drawing was turned, degrees, tip towards the spine; and what told it. */
  readonly turn: number;
  readonly turnBy: Laid['turnBy'];
  /** Whether the outline itself tells which of its sides is the edge; else a person must. */
  readonly edgeTold: boolean;
  readonly scale: number;
  readonly byPoints: Offer;
  /** Null where no set of dimensions is a blade. */
  readonly byDimensions: Offer | null;
  /** What lies behind the plunge as a box; null where the outline ends there. */
  readonly tang: Pick<Blade['tang'], 'length' | 'height' | 'drop'> | null;
}

const words = text.outline;

/** Code of the warning that a person must say which side is the edge. */
export const EDGE_UNSURE = 'edge-unsure';

/** Stretches behind the plunge shorter than this are no tang, mm. */
const LEAST_TANG = 1;
/** Points closer along the blade are one, mm. */
const CLOSE = 1e-3;

/** From the tip round to the plunge one way; u only falls, and what hangs over is measured. */
const walk = (points: readonly Vec2[], tip: number, way: 1 | -1, plunge: number) => {
  const n = points.length;
  const chain: Vec2[] = [points[tip] ?? [0, 0]];
  let hangs = 0;
  for (let i = 1; i < n; i += 1) {
    const next = points[(tip + way * i + n * 2) % n] ?? [0, 0];
    const last = chain.at(-1) ?? next;
    if (next[0] <= plunge) {
      const share = (last[0] - plunge) / Math.max(last[0] - next[0], 1e-12);
      if (last[0] - plunge > CLOSE) chain.push([plunge, last[1] + (next[1] - last[1]) * share]);
      break;
    }
    // A square end: the other corner of it is the first place from which this side leads back.
    const cornered = chain.length === 1 && Math.abs(next[0] - last[0]) <= CLOSE;
    if (next[0] < last[0] - CLOSE) chain.push(next);
    else if (cornered && Math.abs(next[1] - last[1]) > CLOSE)
      chain.push([last[0] - CLOSE, next[1]]);
    else hangs = Math.max(hangs, next[0] - last[0]);
  }
  return { chain: chain.toReversed(), hangs };
};

const mean = (list: readonly Vec2[]): number =>
  list.reduce((sum, [, v]) => sum + v, 0) / Math.max(1, list.length);

/** The box of everything behind the plunge; values that the blade cannot hold are left alone. */
const tangOf = (points: readonly Vec2[]): Traced['tang'] => {
  const behind = points.filter(([u]) => u <= 0);
  const length = -Math.min(0, ...behind.map(([u]) => u));
  if (length < LEAST_TANG) return null;
  // At the plunge itself the outline steps; the tang is looked at further back.
  const cuts = Array.from({ length: 40 }, (_, i) => across(points, (-length * (i + 0.5)) / 40));
  const spans = cuts.flatMap((cut) => (cut ? [cut] : []));
  const drop = Math.min(...spans.map(([low]) => low));
  const height = Math.max(...spans.map(([, high]) => high)) - drop;
  const held = (value: number, { min, max }: { readonly min: number; readonly max: number }) =>
    Number(Math.min(max, Math.max(min, value)).toFixed(2));
  return {
    length: held(length, p.tang.length),
    height: held(height, p.tang.height),
    drop: held(drop, p.tang.drop),
  };
};

/** Lays a contour on the blade's axes and fits what the blade can hold to it. */
export const traceOutline = (
  blade: Blade,
  { points: drawn }: Contour,
  choice: OutlineChoice,
): Result<Traced> => {
  const { points, tip, plunge, ...laid } = lay(drawn, choice);
  const { plungeBy, turn, turnBy, edgeTold, scale } = laid;
  const { min, max } = p.outline.length;
  if (!(-plunge >= min && -plunge <= max))
    return fail(problem('out-of-range', 'plunge', words.length(-plunge, min, max)));
  if (-plunge > choice.length)
    return fail(problem('plunge-off-outline', 'plunge', words.plunge(-plunge, choice.length)));
  const ways = [walk(points, tip, 1, plunge), walk(points, tip, -1, plunge)] as const;
  const [spineWay, edgeWay] =
    mean(ways[0].chain) <= mean(ways[1].chain) ? ways : [ways[1], ways[0]];
  const foot = spineWay.chain[0]?.[1] ?? 0;
  const moved = ([u, v]: Vec2): Vec2 => [u - plunge, v - foot];
  const [spine, edge] = [spineWay.chain.map(moved), edgeWay.chain.map(moved)];
  if (spine.length < 2 || edge.length < 2)
    return fail(problem('no-sides', 'plunge', words.noSides));
  const byPoints = fitPoints(spine, edge);
  const bare = { ...blade, ricasso: 0 };
  const wrong = outlineIssues({ ...bare, outline: byPoints.outline }, 'blades.0');
  if (wrong.length > 0) return { ok: false, issues: wrong };
  const hangs = Math.max(spineWay.hangs, edgeWay.hangs);
  const issues: Issue[] = [
    ...(hangs > 0.05 ? [problem('hangs-over', '', words.hangs(hangs), 'warning')] : []),
    ...(edgeTold || choice.otherEdge
      ? []
      : [problem(EDGE_UNSURE, '', words.edgeUnsure, 'warning')]),
  ];
  return ok(
    {
      contour: points.map(moved),
      spine,
      edge,
      length: -plunge,
      plungeBy,
      turn,
      turnBy,
      edgeTold,
      scale,
      byPoints,
      byDimensions: fitDimensions(bare, spine, edge),
      tang: tangOf(points.map(moved)),
    },
    issues,
  );
};
