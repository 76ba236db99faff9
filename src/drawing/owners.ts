import type { Vec2 } from '../geometry/vector.ts';
import type { Box } from './box.ts';
import type { Scene } from './scene.ts';
import { bandOf, sideBands, type SideBands } from './side-bands.ts';

/** A face that was drawn, with its sides by level. */
interface Shown extends SideBands {
  readonly owner: string;
  readonly box: Box;
}

/** Whether a point is on a face, by the parity of the sides right of it. */
const covers = (shown: Shown, x: number, y: number): boolean => {
  const { box, starts, sides } = shown;
  if (x < box.x0 || x > box.x1 || y < box.y0 || y > box.y1) return false;
  const band = bandOf(shown, y);
  const end = starts[band + 1] as number;
  let inside = false;
  for (let i = starts[band] as number; i < end; i += 4) {
    const y0 = sides[i + 1] as number;
    const y1 = sides[i + 3] as number;
    if (y0 > y === y1 > y) continue;
    const x0 = sides[i] as number;
    if (x < x0 + ((y - y0) / (y1 - y0)) * ((sides[i + 2] as number) - x0)) inside = !inside;
  }
  return inside;
};

/** Cells along each side of a picture in which its faces are looked up. */
const CELLS = 48;

const cellOf = (value: number, from: number, to: number): number =>
  Math.max(0, Math.min(CELLS - 1, Math.floor(((value - from) / (to - from)) * CELLS)));

const ownerAt = (cells: readonly (readonly Shown[])[], box: Box, [x, y]: Vec2) => {
  const shown = cells[cellOf(y, box.y0, box.y1) * CELLS + cellOf(x, box.x0, box.x1)] ?? [];
  for (let i = shown.length - 1; i >= 0; i -= 1) {
    const one = shown[i];
    if (one !== undefined && covers(one, x, y)) return one.owner;
  }
  return undefined;
};

/** Tells whose face shows at a point of a picture: the last one drawn there. */
export const ownersIn = ({ faces, box }: Scene): ((p: Vec2) => string | undefined) => {
  const cells: Shown[][] = Array.from({ length: CELLS * CELLS }, () => []);
  for (const face of faces) {
    const shown = { owner: face.owner, box: face.box, ...sideBands(face.rings, face.box) };
    const left = cellOf(face.box.x0, box.x0, box.x1);
    const right = cellOf(face.box.x1, box.x0, box.x1);
    const high = cellOf(face.box.y1, box.y0, box.y1);
    for (let j = cellOf(face.box.y0, box.y0, box.y1); j <= high; j++)
      for (let i = left; i <= right; i++) cells[j * CELLS + i]?.push(shown);
  }
  return (p) => ownerAt(cells, box, p);
};
