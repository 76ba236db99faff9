import { SIDES, type Side } from '../../blade/schema.ts';
import type { ModelPoint, VirtualJob } from '../job.ts';
import type { VirtualGrind } from '../types.ts';

/** Wanted upper limit of a hollow over the edge at u, straight between the plan's places, mm. */
const upperAt = (places: readonly ModelPoint[], u: number): number | undefined => {
  const after = places.findIndex((place) => place.u >= u);
  const [left, right] = [places[after - 1], places[after]];
  if (right === undefined) return undefined;
  if (left === undefined) return right.u === u ? right.wanted : undefined;
  return left.wanted + ((right.wanted - left.wanted) * (u - left.u)) / (right.u - left.u);
};

const hollowOn = (
  { start, passes }: VirtualGrind,
  places: readonly ModelPoint[],
  side: Side,
): Float64Array | undefined => {
  const pass = passes.findLast((one) => one.pass.side === side)?.pass;
  if (pass?.holding.kind !== 'edge-rest' || pass.surface.round === undefined) return undefined;
  const { us, rows, v } = start;
  const { depth } = pass.holding;
  const { radius } = pass.surface.round;
  const half = Math.sqrt(Math.max(0, depth * (2 * radius - depth)));
  const came = start[side];
  const face = came.slice();
  us.forEach((u, i) => {
    const upper = upperAt(places, u);
    if (upper === undefined) return;
    const [first, last] = [i * rows, (i + 1) * rows - 1];
    const bottom = v[last] ?? 0;
    let k = last;
    while (k > first && bottom - (v[k] ?? 0) < upper) k -= 1;
    const height = bottom - (v[k] ?? 0);
    if (height <= 0) return;
    // Along the bevel it came with, whose angle is that of its face up to the limit.
    const along = Math.hypot(1, ((came[k] ?? 0) - (came[last] ?? 0)) / height);
    const middle = upper * along - half;
    for (let j = first; j <= last; j += 1) {
      const off = (bottom - (v[j] ?? 0)) * along - middle;
      if (Math.abs(off) >= half) continue;
      const cut = Math.sqrt(radius * radius - off * off) - (radius - depth);
      face[j] = (came[j] ?? 0) - cut * along;
    }
  });
  return face;
};

/**
 * Half thickness of each hollow side as it is wanted, at every node: the bevel it came with less a
 * circle of the wheel's radius, as deep as the pass stops, whose upper limit is the wanted one. A
 * place beyond those of the plan, and a side that is not hollowed, is wanted as it came. Nothing for
 * a blade that is not hollowed at all.
 */
export const wantedHollows = (
  grind: VirtualGrind,
  { model }: Pick<VirtualJob, 'model'>,
): Partial<Record<Side, Float64Array>> => {
  const hollows = SIDES.map((side) => {
    const places = model.find((one) => one.side === side)?.places ?? [];
    return { side, face: hollowOn(grind, places, side) };
  });
  if (hollows.every(({ face }) => face === undefined)) return {};
  return Object.fromEntries(hollows.map(({ side, face }) => [side, face ?? grind.start[side]]));
};
