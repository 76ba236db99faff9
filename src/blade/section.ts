import { cos } from '../core/trigonometry.ts';
import type { Vec2 } from '../geometry/vector.ts';
import type { Cut, Station } from './cut.ts';
import type { Side } from './schema.ts';
import type { Shape } from './shape.ts';

/** Distance of a side's surface from the midplane at v, mm. */
type Surface = (v: number) => number;

/** A chord across the section: v, and the surfaces left (+w) and right (-w) of the midplane. */
export interface Rung {
  readonly v: number;
  readonly left: number;
  readonly right: number;
}

/** The section in the plane u = constant, from spine to edge. */
export interface Section {
  readonly u: number;
  readonly rungs: readonly Rung[];
}

export type SideCuts = { readonly [side in Side]?: readonly Cut[] };

/** Places between spine and edge at which the ends of a cut are looked for. */
const LOOKS = 48;
const TRIES = 150;

const stationOf = ({ spine, edge, thickness }: Shape, u: number): Station => ({
  u,
  spine: spine.value(u),
  edge: Math.max(edge.value(u), spine.value(u)),
  thickness: thickness.value(u),
});

/** The spine radius that the section has room for. */
const roundOf = ({ blade }: Shape, { spine, edge, thickness }: Station): number =>
  Math.min(blade.spineRadius, (edge - spine) / 2, 0.45 * thickness);

/** Blank of one side: half the thickness, with the rounded spine corner. */
const stockOf =
  ({ spine, thickness }: Station, radius: number): Surface =>
  (v) => {
    const above = radius - (v - spine);
    return above > 0
      ? thickness / 2 - radius + Math.sqrt(Math.max(radius ** 2 - above ** 2, 0))
      : thickness / 2;
  };

/** The unground blank in the plane u = constant. */
export interface BlankColumn {
  /** Where spine and edge are, v. */
  readonly spine: number;
  readonly edge: number;
  /** Radius of the spine corners, as far as the section has room for it. */
  readonly radius: number;
  /** Half the thickness at v, rounded at the spine, mm. */
  readonly half: (v: number) => number;
}

/** The section of the unground blank at u, for work on the surface itself. */
export const blankColumn = (shape: Shape, u: number): BlankColumn => {
  const station = stationOf(shape, u);
  const radius = roundOf(shape, station);
  return { spine: station.spine, edge: station.edge, radius, half: stockOf(station, radius) };
};

/** Depths and lengths that count as none, mm. */
const NOTHING = 1e-14;

/**
 * Where a depth begins between a place without and one with some. Looked for straight between the
 * two, which finds the end of a flat cut at once, and by halves where that comes no nearer or a
 * cut stands beside the section.
 */
const beginning = (depth: (v: number) => number, out: number, into: number): number => {
  let [a, b] = [out, into];
  let [da, db] = [depth(a), depth(b)];
  for (let i = 0; i < TRIES; i += 1) {
    const straight = a + ((b - a) * da) / (da - db);
    const inside = Math.min(a, b) < straight && straight < Math.max(a, b);
    const v = inside && i % 3 < 2 ? straight : (a + b) / 2;
    const d = depth(v);
    if (Math.abs(d) < NOTHING || Math.abs(b - a) < NOTHING) return v;
    if (d > 0) [b, db] = [v, d];
    else [a, da] = [v, d];
  }
  return b;
};

/**
 * Where a cut begins and ends in a section: from spine to edge, the first and the last place at
 * which it is deeper than what was there. A cut that takes nothing begins and ends where it comes
 * closest.
 */
const limitsOf = ({ spine, edge }: Station, before: Surface, cut: Surface): Vec2 => {
  const depth = (v: number): number => before(v) - cut(v);
  const look = (i: number): number => spine + ((edge - spine) * i) / LOOKS;
  let [first, last] = [0, LOOKS];
  while (first <= LOOKS && !(depth(look(first)) > 0)) first += 1;
  if (first > LOOKS) {
    let nearest = spine;
    for (let i = 0; i <= LOOKS; i += 1) if (depth(look(i)) >= depth(nearest)) nearest = look(i);
    return [nearest, nearest];
  }
  while (!(depth(look(last)) > 0)) last -= 1;
  return [
    first === 0 ? look(first) : beginning(depth, look(first - 1), look(first)),
    last === LOOKS ? look(last) : beginning(depth, look(last + 1), look(last)),
  ];
};

const between = ([from, to]: Vec2, inner: number): number[] =>
  Array.from({ length: inner + 2 }, (_, i) => from + ((to - from) * i) / (inner + 1));

/** One side after its cuts, and the places at which they begin, end and bend. */
const sideOf = (
  station: Station,
  stock: Surface,
  cuts: readonly Cut[],
): { surface: Surface; places: number[] } => {
  let surface = stock;
  const places: number[] = [];
  for (const cut of cuts) {
    const section = cut(station);
    const before = surface;
    places.push(...between(limitsOf(station, before, section.at), section.inner));
    surface = (v) => Math.min(before(v), section.at(v));
  }
  return { surface, places };
};

/**
 * The section at u after the cuts, its spine corners in `corner` steps. The number of rungs
 * depends on corner and cuts alone, so that neighbouring sections join rung by rung.
 */
export const groundSection = (shape: Shape, u: number, corner: number, cuts: SideCuts): Section => {
  const station = stationOf(shape, u);
  const { spine, edge } = station;
  const radius = roundOf(shape, station);
  const stock = stockOf(station, radius);
  const left = sideOf(station, stock, cuts.left ?? []);
  const right = cuts.right === cuts.left ? left : sideOf(station, stock, cuts.right ?? []);
  const places = [...left.places, ...right.places, edge];
  for (let i = 0; i <= corner; i += 1)
    places.push(spine + (corner > 0 ? radius * (1 - cos((Math.PI / 2) * (i / corner))) : 0));
  places.sort((a, b) => a - b);
  return {
    u,
    rungs: places.map((v) => {
      const w = left.surface(v);
      return { v, left: w, right: right === left ? w : right.surface(v) };
    }),
  };
};

/**
 * The section of the unground blank at u with its rungs where those of `other` are: as far from
 * the spine on the rounded corner, in proportion below it. At the u of the other they lie in one
 * plane rung by rung, so that the wall between them closes.
 */
export const blankSection = (shape: Shape, u: number, other: Section): Section => {
  const [here, there] = [stationOf(shape, u), stationOf(shape, other.u)];
  const radius = Math.min(roundOf(shape, here), roundOf(shape, there));
  const scale = (here.edge - here.spine - radius) / (there.edge - there.spine - radius);
  const stock = stockOf(here, roundOf(shape, here));
  return {
    u,
    rungs: other.rungs.map((rung) => {
      const below = rung.v - there.spine;
      const v = here.spine + (below <= radius ? below : radius + (below - radius) * scale);
      return { v, left: stock(v), right: stock(v) };
    }),
  };
};
