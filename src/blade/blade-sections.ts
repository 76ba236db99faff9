import { acos } from '../core/trigonometry.ts';
import type { Curve } from './curve.ts';
import type { Blade } from './schema.ts';
import { blankSection, groundSection, type Section, type SideCuts } from './section.ts';
import { shapeOf, type Shape } from './shape.ts';

export interface BladeOptions {
  /** Most by which what joins the sections may leave the true surface, mm; down to 1e-4. */
  readonly chord: number;
  /** The cuts of each side, in any order; a side without is still the full blank. */
  readonly sides?: SideCuts;
  /** Where the cuts end towards the tang (u, mm, at least -ricasso); the plunge unless stated. */
  readonly plunge?: number;
  /** A part of the blade alone. */
  readonly only?: Strip;
}

/** What of a blade lies within so many mm (v) of its spine, or of its edge. */
export interface Strip {
  readonly along: 'spine' | 'edge';
  readonly reach: number;
}

/** Closest spacing of sections, mm: features that jump along the blade end within it. */
const CLOSEST = 0.02;
/** Widest spacing of sections, mm, so that no feature is stepped over. */
const WIDEST = 8;

/** Steps of the spine corner's quarter circle that keep within the chord error. */
const cornerSteps = (radius: number, chord: number): number =>
  radius > 0 ? Math.max(2, Math.ceil(Math.PI / 4 / acos(1 - Math.min(chord / radius, 0.5)))) : 0;

/** Whether the middle section lies on the surface between its neighbours, within `chord`. */
const joins = (a: Section, middle: Section, b: Section, chord: number): boolean =>
  middle.rungs.every((m, i) => {
    const [p, q] = [a.rungs[i], b.rungs[i]];
    if (p === undefined || q === undefined) return false;
    const off = (key: 'v' | 'left' | 'right'): number => m[key] - (p[key] + q[key]) / 2;
    return Math.hypot(off('v'), Math.max(Math.abs(off('left')), Math.abs(off('right')))) <= chord;
  });

/** Sections from one u to another so close that straight joints keep within `chord`. */
const sectionsBetween = (
  at: (u: number) => Section,
  from: number,
  to: number,
  chord: number,
): Section[] => {
  const refine = (a: Section, b: Section): Section[] => {
    if (b.u - a.u <= CLOSEST) return [b];
    const middle = at((a.u + b.u) / 2);
    return b.u - a.u <= WIDEST && joins(a, middle, b, chord)
      ? [b]
      : [...refine(a, middle), ...refine(middle, b)];
  };
  const first = at(from);
  return [first, ...refine(first, at(to))];
};

/** Places at which outline or thickness bend, strictly between two others. */
const bends = ({ spine, edge, thickness }: Shape, from: number, to: number): number[] =>
  [...new Set([...spine.breaks, ...edge.breaks, ...thickness.breaks])]
    .filter((u) => u > from && u < to)
    .sort((a, b) => a - b);

/** The greater of two curves, or the less. */
const limited = (of: 'max' | 'min', curve: Curve, other: Curve, off: number): Curve => {
  const sign = of === 'max' ? 1 : -1;
  const isOther = (u: number): boolean => sign * (other.value(u) + off - curve.value(u)) > 0;
  return {
    value: (u) => Math[of](curve.value(u), other.value(u) + off),
    slope: (u) => (isOther(u) ? other : curve).slope(u),
    breaks: curve.breaks,
  };
};

/** A strip of a blade: that along the edge is sharp where it is cut off, and at the tip's spine. */
const stripOf = (shape: Shape, { along, reach }: Strip): Shape => {
  const { blade, spine, edge } = shape;
  return along === 'spine'
    ? { ...shape, edge: limited('min', edge, spine, reach) }
    : {
        ...shape,
        blade: { ...blade, spineRadius: 0 },
        spine: limited('max', spine, edge, -reach),
      };
};

/**
 * Ricasso and blade as they stand after the given cuts, as sections square to the spine line in blade
 * coordinates, from the tang to the tip: the blank with its spine corners rounded, and two sections at
 * one u for the wall of the plunge. Without cuts it is the slab that every pre-ground blade fits into.
 * Sections stand on every bend of outline and thickness and halve until straight joints keep within
 * `chord` mm; only a feature that jumps along the blade is drawn out over 0.02 mm instead.
 */
export const bladeSections = (blade: Blade, options: BladeOptions): Section[] => {
  const { chord, sides = {}, plunge = 0, only } = options;
  const whole = shapeOf(blade);
  const shape = only && only.reach < Infinity ? stripOf(whole, only) : whole;
  const corner = cornerSteps(shape.blade.spineRadius, chord);
  const back = -blade.ricasso;
  const ground = (u: number): Section => groundSection(shape, u, corner, sides);
  const wall = ground(plunge);
  const blank = (u: number): Section => blankSection(shape, u, wall);
  const chain = (at: (u: number) => Section, from: number, to: number): Section[] => {
    const stops = [...bends(shape, from, to), to];
    return stops.flatMap((stop, i) => {
      const run = sectionsBetween(at, stops[i - 1] ?? from, stop, chord);
      return i === 0 ? run : run.slice(1);
    });
  };
  return [
    ...(plunge > back ? chain(blank, back, plunge) : []),
    ...chain(ground, plunge, shape.length),
  ];
};

/** Both ends of tang or handle, a box that meets the blade in the plane at the end of the ricasso. */
export const tangSections = ({ ricasso, tang }: Blade): Section[] => {
  const { length, drop, height, thickness } = tang;
  const [left, right] = [thickness / 2, thickness / 2];
  const rungs = [drop, drop + height].map((v) => ({ v, left, right }));
  return [-ricasso - length, -ricasso].map((u) => ({ u, rungs }));
};
