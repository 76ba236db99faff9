import { cos, sin } from '../../core/trigonometry.ts';
import { wantedHeightAt, wantedOn } from '../../blade/bevel.ts';
import { cornerOf } from '../../blade/corner.ts';
import { placeOn } from '../../blade/place.ts';
import { SIDES, type Side } from '../../blade/schema.ts';
import type { Shape } from '../../blade/shape.ts';
import { radians } from '../../core/units.ts';
import type { Vec2 } from '../../geometry/vector.ts';
import type { Field } from '../field.ts';
import { grindLine } from '../measure/line.ts';
import { bandsOf, type Band } from './bands.ts';

/** A line on the picture of a blade. */
export interface MapLine {
  readonly role: 'ground' | 'wanted';
  readonly side: Side;
  readonly points: readonly Vec2[];
}

/**
 * A picture of a ground blade as plain data, (u, -v) in mm: spine up, tip to the right, both faces
 * seen through one another. Bands are numbered in their order, so that each can have a pattern of
 * its own; what a colour says is also said by the band's number and its levels.
 */
export interface BladeMap {
  /** Closed, from the plunge along the spine to the tip and back along the edge. */
  readonly outline: readonly Vec2[];
  readonly bands: readonly Band[];
  readonly lines: readonly MapLine[];
}

/** What a map shows: the thickness, or what stands over the wanted faces, both sides together. */
export type MapValue = 'thickness' | 'standing';

/** Levels of what stands over, mm: what a maker feels, sees and measures. */
const STANDING = [-Infinity, -0.02, 0.02, 0.05, 0.1, 0.2, 0.5, Infinity] as const;

/** Even levels from thin to thick, eight at most, a round step apart. */
const thicknessLevels = (most: number): number[] => {
  const step = [0.1, 0.2, 0.25, 0.5, 1, 2].find((s) => most / s <= 8) ?? 5;
  const count = Math.max(1, Math.ceil(most / step - 1e-9));
  // The last level holds its own value, or a bar just as thick would be a band of its own.
  return Array.from({ length: count + 1 }, (_, i) => i * step + (i < count ? 0 : 1e-6));
};

/** Half thickness of one side as it is wanted, at every node; the blank's where nothing is wanted. */
const wantedFace = (shape: Shape, field: Field, side: Side, edge: number): Float64Array => {
  const { us, rows, v, stock } = field;
  const wanted = wantedOn(shape, side);
  if (wanted === undefined) return stock;
  const share = side === 'left' ? shape.blade.edge.shareLeft : 1 - shape.blade.edge.shareLeft;
  const face = stock.slice();
  us.forEach((u, i) => {
    if (u < 0) return;
    const bottom = v[(i + 1) * rows - 1] ?? 0;
    const height = bottom - (v[i * rows] ?? 0);
    const bevel = wantedHeightAt(shape.blade.line.follow, wanted, height);
    const rise = bevel > 0 ? (shape.thickness.value(u) / 2 - share * edge) / bevel : Infinity;
    for (let k = i * rows; k < (i + 1) * rows; k += 1)
      face[k] = Math.min(stock[k] ?? 0, share * edge + (bottom - (v[k] ?? 0)) * rise);
  });
  return face;
};

/** Half thickness of sides that are wanted otherwise than flat, at every node. */
export type WantedFaces = Partial<Record<Side, Float64Array>>;

const valueOf = (
  shape: Shape,
  field: Field,
  what: MapValue,
  edge: number,
  faces: WantedFaces,
): Float64Array => {
  const thick = field.left.map((left, k) => left + (field.right[k] ?? 0));
  if (what === 'thickness') return thick;
  const [left, right] = SIDES.map((s) => faces[s] ?? wantedFace(shape, field, s, edge));
  return thick.map((now, k) => now - (left?.[k] ?? 0) - (right?.[k] ?? 0));
};

const wantedLine = (shape: Shape, { us }: Field, side: Side): Vec2[] => {
  const wanted = wantedOn(shape, side);
  if (wanted === undefined) return [];
  const end = cornerOf(shape) ?? Infinity;
  return Array.from(us)
    .filter((u) => u >= 0 && u <= end)
    .map((u): Vec2 => {
      const { edge, height, slope } = placeOn(shape, u);
      const bevel = wantedHeightAt(shape.blade.line.follow, wanted, height);
      const at = radians(slope);
      return [edge[0] + bevel * sin(at), -(edge[1] - bevel * cos(at))];
    });
};

/**
 * The picture of a blade after any pass. `edge` is the edge thickness wanted in the end, both sides
 * together; with `faces`, where a side is wanted hollow, it decides what counts as standing over.
 */
export const bladeMap = (
  shape: Shape,
  field: Field,
  what: MapValue,
  edge: number,
  faces: WantedFaces = {},
): BladeMap => {
  const { us, rows, v } = field;
  const columns = Array.from(us, (u, i) => ({ u, i })).filter(({ u }) => u >= 0);
  const spine = columns.map(({ u, i }): Vec2 => [u, -(v[i * rows] ?? 0)]);
  const foot = columns.map(({ u, i }): Vec2 => [u, -(v[(i + 1) * rows - 1] ?? 0)]);
  const value = valueOf(shape, field, what, edge, faces);
  const most = value.reduce((max, x) => Math.max(max, x), 0);
  const levels = what === 'standing' ? STANDING : thicknessLevels(most);
  const lines = SIDES.flatMap((side): MapLine[] => {
    const ground = grindLine(field, side);
    return [
      { role: 'ground', side, points: columns.map(({ u, i }): Vec2 => [u, -(ground[i] ?? 0)]) },
      { role: 'wanted', side, points: wantedLine(shape, field, side) },
    ];
  });
  return {
    outline: [...spine, ...foot.reverse()],
    bands: bandsOf(field, value, levels),
    lines: lines.filter(({ points }) => points.length > 1),
  };
};
