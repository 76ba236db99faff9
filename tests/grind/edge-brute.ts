/**
 * An edge rest done by hand on a dense grid: a section of points is stood on a seat, slid against a
 * lip, tipped until a circle bites deep enough, cut by it, and measured. Shares nothing with the
 * program.
 */
const rad = Math.PI / 180;
const N = 4000;

/** Both sides of a section on the same even heights over the edge, mm from the midplane. */
export interface Grid {
  readonly height: number;
  readonly near: Float64Array;
  readonly far: Float64Array;
}

const at = (list: Float64Array, i: number): number => list[i] ?? NaN;

export const gridOf = (
  height: number,
  near: (h: number) => number,
  far: (h: number) => number,
): Grid => ({
  height,
  near: Float64Array.from({ length: N + 1 }, (_, i) => near((height * i) / N)),
  far: Float64Array.from({ length: N + 1 }, (_, i) => far((height * i) / N)),
});

export const turned = ({ height, near, far }: Grid): Grid => ({ height, near: far, far: near });

export interface Rest {
  readonly radius: number;
  readonly drop: number;
  readonly lip: number;
  readonly lipHeight: number;
}

interface Stood {
  readonly y: number;
  readonly z: number;
}

/** Where the middle of the edge comes to lie at a tilt: lowest point on 0, foremost on the lip. */
const stand = (grid: Grid, tilt: number, rest: Rest): Stood => {
  const [c, s] = [Math.cos(tilt * rad), Math.sin(tilt * rad)];
  let lowest = Infinity;
  for (let i = 0; i <= N; i += 1) {
    const h = (grid.height * i) / N;
    lowest = Math.min(lowest, h * c - at(grid.near, i) * s, h * c + at(grid.far, i) * s);
  }
  let foremost = Infinity;
  let before: [number, number] | undefined;
  for (let i = 0; i <= N; i += 1) {
    const h = (grid.height * i) / N;
    const y = -h * s - at(grid.near, i) * c;
    const z = h * c - at(grid.near, i) * s - lowest;
    if (z > rest.lipHeight) {
      // The lip's top edge meets the side between two points of the grid.
      if (before !== undefined) {
        const x = (rest.lipHeight - before[1]) / (z - before[1]);
        foremost = Math.min(foremost, before[0] + x * (y - before[0]));
      }
      break;
    }
    foremost = Math.min(foremost, y);
    before = [y, z];
  }
  return { y: rest.lip - foremost, z: -lowest };
};

/** The wheel's axis in the section: over the edge, and out from the midplane. */
const axisOf = (stood: Stood, tilt: number, { radius, drop }: Rest) => {
  const [c, s] = [Math.cos(tilt * rad), Math.sin(tilt * rad)];
  const [dy, dz] = [-radius - stood.y, drop - stood.z];
  return { h: -dy * s + dz * c, w: -(dy * c + dz * s) };
};

const biteAt = (
  grid: Grid,
  base: Float64Array,
  slope: number,
  tilt: number,
  rest: Rest,
): number => {
  const axis = axisOf(stand(grid, tilt, rest), tilt, rest);
  let deepest = -Infinity;
  for (let i = 0; i <= N; i += 1) {
    const h = (grid.height * i) / N;
    const square = rest.radius ** 2 - (h - axis.h) ** 2;
    if (square <= 0) continue;
    deepest = Math.max(deepest, at(base, i) - (axis.w - Math.sqrt(square)));
  }
  return deepest * Math.cos(slope * rad);
};

export interface Ground {
  readonly grid: Grid;
  readonly tilt: number;
  readonly lower: number;
  readonly upper: number;
  readonly deepestAt: number;
  readonly web: number;
}

/** Tips the section until the wheel is `depth` below the face and cuts what it reaches. */
export const grindAt = (
  grid: Grid,
  base: Float64Array,
  slope: number,
  depth: number,
  rest: Rest,
): Ground => {
  let [low, high] = [-40, 40];
  for (let i = 0; i < 46; i += 1) {
    const middle = (low + high) / 2;
    if (biteAt(grid, base, slope, middle, rest) > depth) high = middle;
    else low = middle;
  }
  const tilt = (low + high) / 2;
  const axis = axisOf(stand(grid, tilt, rest), tilt, rest);
  const near = Float64Array.from(grid.near);
  let [lower, upper, deepestAt, deepest, web] = [NaN, NaN, NaN, -Infinity, Infinity];
  let last = NaN;
  for (let i = 0; i <= N; i += 1) {
    const h = (grid.height * i) / N;
    const square = rest.radius ** 2 - (h - axis.h) ** 2;
    const into = square > 0 ? at(base, i) - (axis.w - Math.sqrt(square)) : -Infinity;
    const cross = h - (into / (into - last)) * (grid.height / N);
    if (into > 0 && last <= 0) lower = cross;
    if (into <= 0 && last > 0) upper = cross;
    if (into > deepest) [deepest, deepestAt] = [into, h];
    last = into;
    near[i] = Math.min(at(near, i), square > 0 ? axis.w - Math.sqrt(square) : Infinity);
    if (into > 0) web = Math.min(web, at(near, i) + at(grid.far, i));
  }
  return { grid: { ...grid, near }, tilt, lower, upper, deepestAt, web };
};
