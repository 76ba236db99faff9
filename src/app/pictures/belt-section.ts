import type { NumberParameter } from '../../core/parameter.ts';
import type { BeltSection } from '../../family/family.ts';
import type { Vec2 } from '../../geometry/vector.ts';
import {
  input,
  reading,
  sound,
  type Measure,
  type Picture,
  type PictureLabel,
  type PictureLine,
} from '../draw/picture.ts';
import type { Path } from '../../core/path.ts';

const middle = (a: Vec2, b: Vec2): Vec2 => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];

type SectionLine = BeltSection['lines'][number];
type Dimension = BeltSection['dimensions'][number];

/** A value of the design as it stands now, and the parameter it belongs to. */
export interface Entered {
  readonly parameter: NumberParameter;
  readonly value: number;
}

/** From a shape to a name beside it, mm. */
const BESIDE = 3;
/** Heights at which the width of a shape is looked at: the middle first, where it is as good. */
const LEVELS = [0.5, 0.6, 0.4, 0.75, 0.25, 0.9, 0.1];

/** The widest stretch of a shape at one height. */
const widest = (points: readonly Vec2[], y: number): readonly [number, number] => {
  const at = points
    .flatMap((b, i): number[] => {
      const a = points.at(i - 1) ?? b;
      if (a[1] > y === b[1] > y) return [];
      return [a[0] + ((b[0] - a[0]) * (y - a[1])) / (b[1] - a[1])];
    })
    .sort((a, b) => a - b);
  let best: readonly [number, number] = [at[0] ?? 0, at[1] ?? 0];
  for (let i = 2; i + 1 < at.length; i += 2) {
    const [from, to] = [at[i] ?? 0, at[i + 1] ?? 0];
    if (to - from > best[1] - best[0]) best = [from, to];
  }
  return best;
};

/** A wide shape is named inside; a tall one beside itself; a belt at its upper end. */
const labelOf = ({ label, points, closed, role }: SectionLine): PictureLabel[] => {
  if (label === undefined || points.length === 0) return [];
  const x = points.map((p) => p[0]);
  const y = points.map((p) => p[1]);
  const [low, high] = [Math.min(...y), Math.max(...y)];
  const [left, right] = [Math.min(...x), Math.max(...x)];
  const name = (at: Vec2, anchor: PictureLabel['anchor'], names = at): PictureLabel[] => [
    { at, names, text: label, anchor, level: true },
  ];
  if (role === 'belt') return name([right + BESIDE, high - BESIDE], 'start');
  if (!closed) return name([right + BESIDE, (low + high) / 2], 'start', [right, (low + high) / 2]);
  const chords = LEVELS.map((share) => {
    const level = low + (high - low) * share;
    const [from, to] = widest(points, level);
    return { from, to, level };
  });
  const chord = chords.reduce((best, one) =>
    one.to - one.from > 1.2 * (best.to - best.from) ? one : best,
  );
  const inside: Vec2 = [(chord.from + chord.to) / 2, chord.level];
  if (right - left > high - low) return name(inside, 'middle');
  return name([chord.to + BESIDE, chord.level], 'start', inside);
};

/** How long a dimension is as it is drawn, mm: the section is true to scale. */
const spanOf = ({ from, to, direction }: Dimension): number => {
  const [x, y] = [Math.abs(to[0] - from[0]), Math.abs(to[1] - from[1])];
  if (direction === 'aligned') return Math.hypot(x, y);
  return direction === 'horizontal' ? x : y;
};

const ALONG = { horizontal: 'x', vertical: 'y', aligned: 'at' } as const;

/**
 * The section at the belt as the fixture family states it; what `entered` knows is an input. A
 * brief one leaves the fixture's own sizes to the fields: their rows would take the drawing's room.
 */
export const beltSection = (
  section: BeltSection,
  entered: (path: Path) => Entered | undefined,
  brief = false,
): Picture => {
  const box = section.lines.flatMap((line) => line.points);
  const centre = {
    x: box.reduce((sum, p) => sum + p[0], 0) / Math.max(1, box.length),
    y: box.reduce((sum, p) => sum + p[1], 0) / Math.max(1, box.length),
  };
  const placing = ({ from, to, direction }: Pick<Dimension, 'from' | 'to' | 'direction'>) => {
    const at = middle(from, to);
    const along = ALONG[direction];
    const side = (along === 'x' ? at[1] > centre.y : at[0] > centre.x) ? 'high' : 'low';
    return { from, to, along, side } as const;
  };
  const inputs = brief ? [] : (section.inputs ?? []);
  return sound({
    name: section.title,
    lines: [
      ...section.lines.map(({ points, closed, role }): PictureLine => ({ points, closed, role })),
      ...inputs.flatMap(({ marks, to }): PictureLine[] =>
        marks ? [{ points: [marks, to], closed: false, role: 'fine' }] : [],
      ),
    ],
    discs: [],
    labels: section.lines.flatMap(labelOf),
    measures: [
      ...section.dimensions.map((dimension, i): Measure => {
        const { path } = dimension;
        const known = path === undefined ? undefined : entered(path);
        return path !== undefined && known
          ? input(path, known.parameter, known.value, placing(dimension))
          : reading(`dimension-${i}`, section.title, spanOf(dimension), 'mm', placing(dimension));
      }),
      ...inputs.flatMap((dimension): Measure[] => {
        const known = entered(dimension.path);
        return known
          ? [input(dimension.path, known.parameter, known.value, placing(dimension))]
          : [];
      }),
    ],
  });
};
