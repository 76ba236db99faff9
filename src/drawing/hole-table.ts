import type { Loop } from '../geometry/loop.ts';
import { translated } from '../geometry/loop-transform.ts';
import type { Part } from '../model/part.ts';
import { text } from '../text/index.ts';
import { contourPoints, isListed, type Corner } from './corners.ts';
import { dimensionText } from './dimension.ts';
import { depthText, sizeText } from './hole-rows.ts';
import { fittedTable, heading, space, type Column, type Strip } from './layout.ts';
import { crossHolesOf, datumOf } from './part-views.ts';

type Head = Omit<Column, 'width'>;

const left = (title: string): Head => ({ title, align: 'left' });
const right = (title: string): Head => ({ title, align: 'right' });

/** Every hole with its place from the datum, size, depth or thread, and purpose. */
export const holeTable = (part: Part, width: number): Strip[] => {
  if (part.kind === 'hardware' || part.holes.length === 0) return [];
  const t = text.drawing.holes;
  const { at } = datumOf(part);
  const { id, x, y, size, depth, purpose } = t.columns;
  const rows = part.holes.map((hole) => [
    hole.id,
    dimensionText(hole.at[0] - at[0]),
    dimensionText(hole.at[1] - at[1]),
    sizeText(hole),
    depthText(hole, part.layers),
    hole.purpose,
  ]);
  const heads = [left(id), right(x), right(y), left(size), left(depth), left(purpose)];
  return [heading(t.title, width), ...fittedTable(heads, rows, width), space(2)];
};

/** The holes drilled into the front and left faces of a stock part. */
export const crossHoleTable = (part: Part, width: number): Strip[] => {
  const holes = crossHolesOf(part);
  if (holes.length === 0) return [];
  const t = text.drawing.holes;
  const { at, foot } = datumOf(part);
  const { id, face, along, up, size, depth, purpose } = t.columns;
  const rows = holes.map((hole) => {
    const deep = hole.depth === 'through' ? t.through : t.blind(dimensionText(hole.depth));
    return [
      hole.id,
      t.face[hole.face],
      dimensionText(hole.at[0] - (hole.face === 'y' ? at[0] : at[1])),
      dimensionText(hole.at[1] - foot),
      t.diameter(dimensionText(hole.size)),
      hole.thread === undefined ? deep : t.tapped(hole.thread, deep),
      hole.purpose,
    ];
  });
  const heads = [
    left(id),
    left(face),
    right(along),
    right(up),
    left(size),
    left(depth),
    left(purpose),
  ];
  return [heading(t.crossTitle, width), ...fittedTable(heads, rows, width), space(2)];
};

/** Corners in order from the one nearest to the datum. */
const fromDatum = (loop: Loop): readonly Corner[] => {
  const { corners } = contourPoints(loop);
  const distances = corners.map(({ at }) => Math.hypot(at[0], at[1]));
  const first = distances.indexOf(Math.min(...distances));
  return [...corners.slice(first), ...corners.slice(0, first)];
};

/**
 * Corners of the outlines that have too many to be dimensioned in the view. A print's are left to
 * its file, which a note says.
 */
export const cornerTables = (part: Part, width: number): Strip[] => {
  if (part.kind === 'hardware' || part.kind === 'print') return [];
  const t = text.drawing.corners;
  const { at } = datumOf(part);
  const optional = (value: number | undefined): string =>
    value === undefined ? '' : dimensionText(value);
  return part.layers
    .map((layer) => translated(layer.profile.outer, [-at[0], -at[1]]))
    .filter((loop) => isListed(contourPoints(loop)))
    .flatMap((loop) => {
      const rows = fromDatum(loop).map((corner, i) => [
        String(i + 1),
        dimensionText(corner.at[0]),
        dimensionText(corner.at[1]),
        optional(corner.fillet),
        optional(corner.next),
      ]);
      const heads = [t.number, t.x, t.y, t.fillet, t.next].map(right);
      return [heading(t.title, width), ...fittedTable(heads, rows, width), space(2)];
    });
};

/** Whether a print has outlines that only its file defines. */
export const hasUnlistedOutline = (part: Part): boolean =>
  part.kind === 'print' && part.layers.some((l) => isListed(contourPoints(l.profile.outer)));
