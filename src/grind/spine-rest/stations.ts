import { tan } from '../../core/trigonometry.ts';
import { bevelPlace, edgeOffsetsOn, wantedOn, type Wanted } from '../../blade/bevel.ts';
import { cornerOf } from '../../blade/corner.ts';
import { placeOn } from '../../blade/place.ts';
import type { Blade, Side } from '../../blade/schema.ts';
import { problem, type Issue } from '../../core/issue.ts';
import { radians } from '../../core/units.ts';
import { shapeOf, type Shape } from '../../blade/shape.ts';
import { text } from '../../text/index.ts';
import { barSection, type Section } from '../section/section.ts';

/** A place of a blade as it comes to the rest. */
export interface Station {
  readonly u: number;
  readonly height: number;
  readonly thickness: number;
  /** Direction of the spine (or of its chord on the nose) against the stroke, degrees. */
  readonly slope: number;
  /** The unground bar, belt side negative w. */
  readonly bar: Section;
  /** Whether the place has a say in the setoff. */
  readonly steers: boolean;
}

/** A blade of the family, prepared for many questions. */
export interface Bladework {
  readonly blade: Blade;
  readonly shape: Shape;
  readonly stations: readonly Station[];
  /** Where the spine ends in a corner before the tip, u. */
  readonly corner?: number;
  /** Index of the station where bevels are promised. */
  readonly reference: number;
  /** Indices of the stations where a maker measures. */
  readonly heel: number;
  readonly middle: number;
  readonly tip: number;
}

/** Even steps along a blade. */
const STEPS = 72;

/** A place lower than this is not ground on a rest, mm: it would lie under the step. */
const LEAST_HEIGHT = 4;

/** A place steers the setoff while it has this share of the height at the bevel place. */
const STEERING = 0.5;

/** Share of the height and the thickness that a rounded spine corner may take. */
const ROUND = { height: 0.5, thickness: 0.45 } as const;

const nearest = (stations: readonly Station[], u: number): number =>
  stations.reduce(
    (best, station, i) =>
      Math.abs(station.u - u) < Math.abs((stations[best]?.u ?? Infinity) - u) ? i : best,
    0,
  );

/**
 * The places of a blade from plunge to tip at which it is solved: even steps, the bevel place and
 * the middle, as far as the blade is high enough to be ground on a rest and before a corner
 * in which its spine ends.
 * `noseWidth` is what a hollow spine stands on; `ends` are the places where the belt's edges stop,
 * without which the steps would pass over what it leaves. The heel to measure is a tenth of the
 * length from the plunge, the tip the last place that steers: half as high as the bevel place.
 */
export const bladework = (
  blade: Blade,
  noseWidth: number,
  ends: readonly number[] = [],
): Bladework => {
  const shape = shapeOf(blade);
  const { length } = shape;
  const promised = bevelPlace(blade);
  const highest = placeOn(shape, promised, noseWidth).height;
  const us = [
    ...Array.from({ length: STEPS + 1 }, (_, i) => (length * i) / STEPS),
    promised,
    length / 10,
    length / 2,
    ...ends.filter((u) => u > 0 && u < length),
  ];
  const stations = [...new Set(us)]
    .sort((p, q) => p - q)
    .map((u): Station => {
      const { height, thickness, slope } = placeOn(shape, u, noseWidth);
      const r = Math.min(blade.spineRadius, ROUND.height * height, ROUND.thickness * thickness);
      const steers = height >= STEERING * highest;
      return { u, height, thickness, slope, bar: barSection(thickness, height, r), steers };
    });
  const low = stations.findIndex(({ u, height }) => u > promised && height < LEAST_HEIGHT);
  const high = low < 0 ? stations : stations.slice(0, low);
  const corner = cornerOf(shape);
  const solved = corner === undefined ? high : high.filter(({ u }) => u <= corner);
  const lastSteering = solved.findLastIndex(({ steers }) => steers);
  return {
    blade,
    shape,
    stations: solved,
    ...(corner === undefined || solved.length === high.length ? {} : { corner }),
    reference: nearest(solved, promised),
    heel: nearest(solved, length / 10),
    middle: nearest(solved, length / 2),
    tip: Math.max(0, lastSteering),
  };
};

/** A word about blades whose line is told up to a corner of the spine alone. */
export const cornerIssues = (works: readonly Bladework[]): Issue[] =>
  works.flatMap(({ blade, shape, corner }, i): Issue[] => {
    if (corner === undefined) return [];
    const why = text.grind.plan.spineCorner(blade.name, corner, shape.length);
    return [{ ...problem('spine-corner', `blades.${i}.outline`, why), severity: 'note' }];
  });

/** The edge of one side at a station when the whole edge is `edge` thick, from the midplane, mm. */
export const edgeOf = ({ shape }: Bladework, { u }: Station, side: Side, edge: number): number =>
  edgeOffsetsOn(shape, u, edge)[side];

/** Whether a blade comes unground at a station: its edge as thick as the stock. */
export const isBar = ({ blade }: Bladework, { thickness }: Station): boolean =>
  blade.edge.asHeatTreated >= thickness - 1e-9;

/** What is wanted of a side at the bevel place. */
export interface Wish extends Wanted {
  /** Height of the bevel on the planes of face and flank, beyond the spine where it is more, mm. */
  readonly whole: number;
}

/** The wish of one side, or none for a side that this rest does not grind. */
export const wishOf = (work: Bladework, side: Side, noseWidth: number): Wish | undefined => {
  const { shape, blade, stations, reference } = work;
  const wanted = wantedOn(shape, side, noseWidth);
  const station = stations[reference];
  if (wanted === undefined || station === undefined) return undefined;
  const rise = station.thickness / 2 - edgeOf(work, station, side, blade.edge.wanted);
  return { ...wanted, whole: rise / tan(radians(wanted.angle)) };
};
