import { outlineIssues } from '../blade/outline-rules.ts';
import { bladeParameters as p } from '../blade/parameters.ts';
import type { Blade, Outline } from '../blade/schema.ts';
import { shapeOf } from '../blade/shape.ts';
import type { Vec2 } from '../geometry/vector.ts';
import { dense, deviation, offCurve } from './deviation.ts';

type Dimensions = Extract<Outline, { kind: 'dimensions' }>;
type Key = 'heelHeight' | 'bellyStart' | 'bellyHeight' | 'spineDropStart' | 'spineSagitta';

/** Where the search starts for each value, as shares of the length, and where it ends, mm. */
const STARTS = [0.25, 0.5, 0.75];
const FINEST = 0.01;
const ROUNDS = 400;

const squares = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value * value, 0);

/** Pattern search (R. Hooke, T. A. Jeeves, 1961): a step each way along each value, then halved. */
const search = (
  from: Dimensions,
  keys: readonly Key[],
  cost: (outline: Dimensions) => number,
): Dimensions => {
  let best = from;
  let least = cost(from);
  let step = from.length / 16;
  for (let round = 0; round < ROUNDS && step > FINEST / 2; round += 1) {
    let moved = false;
    for (const key of keys)
      for (const way of [step, -step]) {
        const { min, max } = p.outline[key];
        const value = Math.min(max, Math.max(min, best[key] + way));
        const next = { ...best, [key]: value };
        const here = cost(next);
        if (here < least) [best, least, moved] = [next, here, true];
      }
    if (!moved) step /= 2;
  }
  return best;
};

/**
 * The blade's own dimensions that come nearest to drawn spine and edge (least squares), with the
 * greatest deviation; null where the nearest set is no blade. Values are rounded to 0.01 mm.
 */
export const fitDimensions = (blade: Blade, spine: readonly Vec2[], edge: readonly Vec2[]) => {
  const [length, tipDrop] = spine.at(-1) ?? [0, 0];
  const heel = edge[0]?.[1] ?? 0;
  const [spinePoints, edgePoints] = [dense(spine, length / 80), dense(edge, length / 80)];
  const shape = (outline: Dimensions) => shapeOf({ ...blade, outline });
  const base: Dimensions = {
    kind: 'dimensions',
    length,
    heelHeight: heel,
    bellyStart: length / 2,
    bellyHeight: heel,
    spineDropStart: length / 2,
    tipDrop: Math.max(0, tipDrop),
    spineSagitta: 0,
  };
  const off = (side: 'spine' | 'edge', points: readonly Vec2[]) => (outline: Dimensions) => {
    const curve = shape(outline)[side];
    const sum = squares(points.map((point) => offCurve(curve, point)));
    return Number.isFinite(sum) ? sum : Infinity;
  };
  const nearest = (keys: readonly Key[], start: Key, cost: (outline: Dimensions) => number) =>
    STARTS.map((share) => search({ ...base, [start]: share * length }, keys, cost)).reduce(
      (a, b) => (cost(b) < cost(a) ? b : a),
    );
  const byEdge = nearest(
    ['bellyStart', 'bellyHeight', 'heelHeight'],
    'bellyStart',
    off('edge', edgePoints),
  );
  const bySpine = nearest(
    ['spineDropStart', 'spineSagitta'],
    'spineDropStart',
    off('spine', spinePoints),
  );
  const { heelHeight, bellyStart, bellyHeight } = byEdge;
  const { spineDropStart, spineSagitta } = bySpine;
  const short = (value: number): number => Number(value.toFixed(2)) + 0;
  const outline: Dimensions = {
    kind: 'dimensions',
    length: short(length),
    heelHeight: short(heelHeight),
    bellyStart: short(bellyStart),
    bellyHeight: short(bellyHeight),
    spineDropStart: short(spineDropStart),
    tipDrop: short(base.tipDrop),
    spineSagitta: short(spineSagitta),
  };
  if (outlineIssues({ ...blade, outline }, 'blades.0').length > 0) return null;
  const found = shape(outline);
  const most = Math.max(
    deviation(found.spine, dense(spine, 0.5)),
    deviation(found.edge, dense(edge, 0.5)),
  );
  return Number.isFinite(most) ? { outline, deviation: most } : null;
};
