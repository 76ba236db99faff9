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

/** Ways from a tall shape to its name, mm. */
const BESIDE = 3;

/** A wide shape is named inside; a tall one beside itself; a belt at its upper end. */
const labelOf = ({ label, points, role }: SectionLine): PictureLabel[] => {
  if (label === undefined || points.length === 0) return [];
  const x = points.map((p) => p[0]);
  const y = points.map((p) => p[1]);
  const [low, high] = [Math.min(...y), Math.max(...y)];
  const [left, right] = [Math.min(...x), Math.max(...x)];
  if (role === 'belt')
    return [{ at: [right + BESIDE, high - BESIDE], text: label, anchor: 'start' }];
  if (right - left > high - low)
    return [
      { at: [(left + right) / 2, (low + high) / 2], text: label, anchor: 'middle', level: true },
    ];
  const at: Vec2 = [(left + right) / 2 + BESIDE, low + (high - low) * 0.6];
  return [{ at: role === 'push' ? [right + BESIDE, at[1]] : at, text: label, anchor: 'start' }];
};

const ALONG = { horizontal: 'x', vertical: 'y', aligned: 'at' } as const;

/** The section at the belt as the fixture family states it; what `entered` knows is an input. */
export const beltSection = (
  section: BeltSection,
  entered: (path: Path) => Entered | undefined,
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
    return along === 'at'
      ? ({ from: at, to: at, along, side } as const)
      : ({ from, to, along, side } as const);
  };
  const inputs = section.inputs ?? [];
  const aligned = [...section.dimensions, ...inputs].filter((d) => d.direction === 'aligned');
  return sound({
    name: section.title,
    lines: [
      ...section.lines.map(({ points, closed, role }): PictureLine => ({ points, closed, role })),
      ...aligned.map(({ from, to }): PictureLine => ({
        points: [from, to],
        closed: false,
        role: 'fine',
      })),
    ],
    discs: [],
    labels: section.lines.flatMap(labelOf),
    measures: [
      ...section.dimensions.map((dimension, i): Measure => {
        const { path, text } = dimension;
        const known = path === undefined ? undefined : entered(path);
        return path !== undefined && known
          ? input(path, known.parameter, known.value, placing(dimension))
          : { ...reading(`dimension-${i}`, text, 0, 'mm', placing(dimension)), said: text };
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
