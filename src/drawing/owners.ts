import type { Vec2 } from '../geometry/vector.ts';
import type { Face2, Scene } from './scene.ts';
import { bandOf, sideBands } from './side-bands.ts';

/** Whether a point is on a face, by the parity of the sides right of it. */
type Covers = (x: number, y: number) => boolean;

const coverOf = ({ rings, box }: Face2): Covers => {
  const bands = sideBands(rings, box);
  const { starts, sides } = bands;
  return (x, y) => {
    if (x < box.x0 || x > box.x1 || y < box.y0 || y > box.y1) return false;
    const band = bandOf(bands, y);
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
};

interface Shown {
  readonly owner: string;
  readonly covers: Covers;
}

/** Cells along each side of a picture in which its faces are looked up. */
const CELLS = 48;

/** Tells whose face shows at a point of a picture: the last one drawn there. */
export const ownersIn = ({ faces, box }: Scene): ((p: Vec2) => string | undefined) => {
  const cellOf = (value: number, from: number, to: number): number =>
    Math.max(0, Math.min(CELLS - 1, Math.floor(((value - from) / (to - from)) * CELLS)));
  const column = (x: number): number => cellOf(x, box.x0, box.x1);
  const row = (y: number): number => cellOf(y, box.y0, box.y1);
  const cells: Shown[][] = Array.from({ length: CELLS * CELLS }, () => []);
  for (const face of faces) {
    const shown = { owner: face.owner, covers: coverOf(face) };
    const [left, right] = [column(face.box.x0), column(face.box.x1)];
    const [low, high] = [row(face.box.y0), row(face.box.y1)];
    for (let j = low; j <= high; j++)
      for (let i = left; i <= right; i++) cells[j * CELLS + i]?.push(shown);
  }
  return ([x, y]) => {
    const shown = cells[row(y) * CELLS + column(x)] ?? [];
    for (let i = shown.length - 1; i >= 0; i -= 1) {
      const one = shown[i];
      if (one?.covers(x, y)) return one.owner;
    }
    return undefined;
  };
};
