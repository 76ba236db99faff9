import { bladeParameters as p } from '../../blade/parameters.ts';
import type { Blade } from '../../blade/schema.ts';
import { shapeOf, type Shape } from '../../blade/shape.ts';
import type { Vec2 } from '../../geometry/vector.ts';
import { text } from '../../text/index.ts';
import {
  input,
  reading,
  sound,
  type Measure,
  type Picture,
  type PictureLine,
} from '../draw/picture.ts';

const SAMPLES = 160;

/** Places from the end of the ricasso to the tip, every break of the curves among them. */
export const placesAlong = (shape: Shape): number[] => {
  const from = -shape.blade.ricasso;
  const step = (shape.length - from) / SAMPLES;
  const even = Array.from({ length: SAMPLES + 1 }, (_, i) => from + i * step);
  const breaks = [...shape.spine.breaks, ...shape.edge.breaks, 0];
  return [...even, ...breaks.filter((u) => u > from && u < shape.length)].sort((a, b) => a - b);
};

/** The side view as a closed contour: along the spine to the tip and back along the edge. */
export const sideView = (shape: Shape): Vec2[] => {
  const places = placesAlong(shape);
  const spine = places.map((u): Vec2 => [u, -shape.spine.value(u)]);
  const edge = places.map((u): Vec2 => [u, -shape.edge.value(u)]);
  return [...spine, ...edge.reverse()];
};

/** How much of a tang a brief drawing shows before it is broken off, mm. */
const STUB = 25;

/** Where the drawing ends on the left. */
const leftOf = ({ ricasso, tang }: Blade, brief: boolean): number =>
  -ricasso - (brief ? Math.min(tang.length, STUB) : tang.length);

/** A tang between two depths; broken off by a zigzag where it is longer than what is drawn. */
const tangLine = (blade: Blade, brief: boolean, top: number, bottom: number): PictureLine => {
  const right = -blade.ricasso;
  const left = leftOf(blade, brief);
  const middle = (top + bottom) / 2;
  const bite = Math.min(3, (top - bottom) / 4);
  const broken: Vec2[] =
    left > right - blade.tang.length
      ? [
          [left, middle + bite],
          [left - bite, middle + bite / 3],
          [left + bite, middle - bite / 3],
          [left, middle - bite],
        ]
      : [];
  return {
    points: [[right, top], [left, top], ...broken, [left, bottom], [right, bottom]],
    closed: true,
    role: 'fine',
  };
};

/** What an outline by points measures: it only tells. */
const readings = ({ edge, length }: Shape): Measure[] => {
  const heel: Vec2 = [0, -edge.value(0)];
  const tip: Vec2 = [length, -edge.value(length)];
  return [
    reading('length', p.outline.length.label, length, 'mm', {
      from: heel,
      to: tip,
      along: 'x',
      side: 'low',
    }),
    reading('heel', p.outline.heelHeight.label, edge.value(0), 'mm', {
      from: [0, 0],
      to: heel,
      along: 'y',
      side: 'low',
    }),
  ];
};

const outlineMeasures = (shape: Shape, at: string, brief: boolean): Measure[] => {
  const { outline: o } = shape.blade;
  if (o.kind !== 'dimensions') return readings(shape);
  const of = `${at}.outline`;
  const bellyEdge: Vec2 = [o.bellyStart, -o.bellyHeight];
  const tip: Vec2 = [o.length, -o.tipDrop];
  return [
    input(`${of}.length`, p.outline.length, o.length, {
      from: [0, -o.heelHeight],
      to: tip,
      along: 'x',
      side: 'low',
    }),
    input(`${of}.bellyStart`, p.outline.bellyStart, o.bellyStart, {
      from: [0, -o.heelHeight],
      to: bellyEdge,
      along: 'x',
      side: 'low',
    }),
    input(`${of}.spineDropStart`, p.outline.spineDropStart, o.spineDropStart, {
      from: [0, 0],
      to: [o.spineDropStart, 0],
      along: 'x',
      side: 'high',
    }),
    input(`${of}.heelHeight`, p.outline.heelHeight, o.heelHeight, {
      from: [0, 0],
      to: [0, -o.heelHeight],
      along: 'y',
      side: 'low',
    }),
    ...(brief
      ? []
      : [
          input(`${of}.bellyHeight`, p.outline.bellyHeight, o.bellyHeight, {
            from: [o.bellyStart, 0],
            to: bellyEdge,
            along: 'y',
            side: 'high',
          }),
        ]),
    input(`${of}.tipDrop`, p.outline.tipDrop, o.tipDrop, {
      from: [o.length, 0],
      to: tip,
      along: 'y',
      side: 'high',
    }),
  ];
};

const tangMeasures = (blade: Blade, at: string): Measure[] => {
  const { tang, ricasso } = blade;
  const left = -ricasso - tang.length;
  const top = -tang.drop;
  return [
    input(`${at}.tang.length`, p.tang.length, tang.length, {
      from: [left, top],
      to: [-ricasso, top],
      along: 'x',
      side: 'high',
    }),
    input(`${at}.tang.height`, p.tang.height, tang.height, {
      from: [left, top],
      to: [left, top - tang.height],
      along: 'y',
      side: 'low',
    }),
    ...(ricasso > 0
      ? [
          input(`${at}.ricasso`, p.ricasso, ricasso, {
            from: [-ricasso, 0],
            to: [0, 0],
            along: 'x',
            side: 'low',
          }),
        ]
      : []),
  ];
};

/** Side view of a blade with the dimensions of its outline as inputs; x = u, y = -v. */
export const bladeSide = (blade: Blade, at: string, brief: boolean): Picture => {
  const shape = shapeOf(blade);
  const heel = shape.edge.value(0);
  return sound({
    name: text.app.blade.side,
    lines: [
      tangLine(blade, brief, -blade.tang.drop, -blade.tang.drop - blade.tang.height),
      { points: sideView(shape), closed: true, role: 'blade' },
      {
        points: [
          [0, 0],
          [0, -heel],
        ],
        closed: false,
        role: 'hidden',
      },
      {
        points: [
          [0, 0],
          [shape.length, 0],
        ],
        closed: false,
        role: 'centre',
      },
    ],
    discs: [],
    labels: [],
    measures: [...outlineMeasures(shape, at, brief), ...(brief ? [] : tangMeasures(blade, at))],
  });
};

/** The blade seen from its spine, to the same scale as the side view: the taper. */
export const bladePlan = (blade: Blade, at: string, brief: boolean): Picture => {
  const shape = shapeOf(blade);
  const places = [...new Set([-blade.ricasso, ...shape.thickness.breaks, shape.length])].sort(
    (a, b) => a - b,
  );
  const half = (u: number): number => shape.thickness.value(u) / 2;
  const left = leftOf(blade, brief);
  const tang = blade.tang.thickness / 2;
  return sound({
    name: text.app.blade.plan,
    lines: [
      tangLine(blade, brief, tang, -tang),
      {
        points: [
          ...places.map((u): Vec2 => [u, half(u)]),
          ...places.map((u): Vec2 => [u, -half(u)]).reverse(),
        ],
        closed: true,
        role: 'blade',
      },
      {
        points: [
          [left, 0],
          [shape.length, 0],
        ],
        closed: false,
        role: 'centre',
      },
    ],
    discs: [],
    labels: [],
    measures: blade.thickness.flatMap((station, i): Measure[] => [
      input(`${at}.thickness.${i}.t`, p.thickness.t, station.t, {
        from: [station.u, half(station.u)],
        to: [station.u, half(station.u)],
        along: 'x',
        side: 'high',
      }),
    ]),
  });
};
