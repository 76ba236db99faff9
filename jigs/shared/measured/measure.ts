import { atan2, degrees, type Side, type Vec2 } from '../../../src/family/index.ts';

/** What calipers and protractor would show on one section. */
export interface Gauged {
  readonly angle: number;
  readonly bevelHeight: number;
  readonly edgeThickness: number;
}

/** Corners nearer than this to each other count as one, mm. */
const SAME = 1e-6;

/** Corners of one side from the edge towards the spine, without repeats: (v, w away from the midplane). */
const sideChain = (section: readonly Vec2[], side: Side): Vec2[] => {
  const sign = side === 'left' ? 1 : -1;
  const height = Math.max(...section.map(([v]) => v));
  // The loop passes from one side to the other along the edge; keep the part of this side.
  const points = section
    .map(([v, w]): Vec2 => [v, sign * w])
    .filter((_, i, all) => {
      const next = all[(i + 1) % all.length];
      return !next || Math.hypot(next[0] - (all[i]?.[0] ?? 0), next[1] - (all[i]?.[1] ?? 0)) > SAME;
    });
  const top = points.filter(([v]) => height - v < SAME);
  const start = top.reduce<Vec2 | undefined>(
    (far, p) => (far && far[1] >= p[1] ? far : p),
    undefined,
  );
  if (!start) return [];
  const at = points.indexOf(start);
  const ordered = [...points.slice(at), ...points.slice(0, at)];
  // Walk the way that leads down this side.
  const forward = ordered[1];
  const backward = ordered.at(-1);
  const goesDown = (p: Vec2 | undefined): boolean => p !== undefined && height - p[0] > SAME;
  return goesDown(forward) || !goesDown(backward)
    ? ordered
    : [start, ...ordered.slice(1).reverse()];
};

/**
 * Angle, bevel height and edge thickness read off a section: the bevel is the straight run of
 * corners that starts at the edge, its angle lies between that run and the midplane, its height
 * is measured along the midplane.
 */
export const gauge = (section: readonly Vec2[], side: Side): Gauged | undefined => {
  const chain = sideChain(section, side);
  const [start, second] = [chain[0], chain[1]];
  if (!start || !second) return undefined;
  const [dv, dw] = [start[0] - second[0], second[1] - start[1]];
  if (!(dv > 0)) return undefined;
  let end = second;
  for (const p of chain.slice(2)) {
    const off = (start[0] - p[0]) * dw - (p[1] - start[1]) * dv;
    if (Math.abs(off) / Math.hypot(dv, dw) > 1e-5 || p[0] >= end[0]) break;
    end = p;
  }
  const [rise, run] = [end[1] - start[1], start[0] - end[0]];
  const height = start[0];
  const widths = section.filter(([v]) => height - v < SAME).map(([, w]) => w);
  return {
    angle: degrees(atan2(rise, run)),
    bevelHeight: run,
    edgeThickness: Math.max(...widths) - Math.min(...widths),
  };
};

/** How near a corner must be to the flank to lie on it, mm. */
const ON_FLANK = 1e-4;

/**
 * The same for a bevel of many facets: from the edge to where the flank begins, the angle that of
 * the straight line between the two.
 */
export const gaugeWhole = (section: readonly Vec2[], side: Side): Gauged | undefined => {
  const chain = sideChain(section, side);
  const [start] = chain;
  const flank = Math.max(...chain.map(([, w]) => w));
  const end = chain.find(([, w]) => w >= flank - ON_FLANK);
  const plain = gauge(section, side);
  if (!start || !end || !plain) return undefined;
  const bevelHeight = start[0] - end[0];
  return {
    angle: degrees(atan2(end[1] - start[1], bevelHeight)),
    bevelHeight,
    edgeThickness: plain.edgeThickness,
  };
};
