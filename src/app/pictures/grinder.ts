import { onCircle } from '../../geometry/arc.ts';
import type { Vec2 } from '../../geometry/vector.ts';
import { beltPath, leaned, type BeltPath } from '../../grinder/belt-path.ts';
import { keepOutSide, leanOf } from '../../grinder/keep-out.ts';
import { grinderParameters as p } from '../../grinder/parameters.ts';
import type { Grinder } from '../../grinder/schema.ts';
import { text } from '../../text/index.ts';
import {
  input,
  sound,
  type Measure,
  type Picture,
  type PictureLabel,
  type PictureLine,
} from '../draw/picture.ts';
import { cornersOf } from './rectangle.ts';

const words = text.app.grinder;
/** Largest angle of one straight piece of a drawn arc, degrees. */
const STEP = 6;
/** How much of the platen's unknown depth is drawn, mm. */
const PLATEN_DEPTH = 12;

const pointsOf = (path: BeltPath): Vec2[] =>
  path.pieces.flatMap((piece): Vec2[] => {
    if (piece.kind === 'run') return [piece.from, piece.to];
    const n = Math.max(2, Math.ceil((piece.end - piece.start) / STEP));
    return Array.from({ length: n + 1 }, (_, i) =>
      onCircle(piece.centre, piece.radius, piece.start + ((piece.end - piece.start) * i) / n),
    );
  });

const beltLine = (grinder: Grinder): PictureLine[] => {
  const [belt] = grinder.belts;
  const [backing] = grinder.backings;
  if (!belt || !backing) return [];
  const path = beltPath(grinder, backing, belt.thickness / 2);
  if (!path.ok) return [];
  const points = pointsOf(path.value);
  return [{ points: [...points, ...points.slice(0, 1)], closed: false, role: 'belt' }];
};

const platenSide = ({ platen, lean }: Grinder): PictureLine[] => {
  if (platen.kind === 'none') return [];
  const face = platen.liner;
  const corners: Vec2[] = [
    [-PLATEN_DEPTH, platen.top],
    [face, platen.top],
    [face, platen.bottom],
    [-PLATEN_DEPTH, platen.bottom],
  ];
  return [{ points: corners.map((c) => leaned(c, lean)), closed: true, role: 'grinder' }];
};

const platenMeasures = ({ platen, lean }: Grinder): Measure[] => {
  if (platen.kind === 'none') return [];
  const at = (z: number): Vec2 => leaned([0, z], lean);
  return [
    input('grinder.platen.top', p.platen.top, platen.top, {
      from: [0, 0],
      to: at(platen.top),
      along: 'y',
      side: 'high',
    }),
    input('grinder.platen.bottom', p.platen.bottom, platen.bottom, {
      from: [0, 0],
      to: at(platen.bottom),
      along: 'y',
      side: 'high',
    }),
  ];
};

/** The rest seen from the side: its box in (y, z). */
const restSide = ({ rest }: Grinder): readonly [Vec2, Vec2] =>
  rest.kind === 'table'
    ? [
        [rest.gap, -rest.thickness],
        [rest.gap + rest.depth, 0],
      ]
    : [
        [0, -rest.height],
        [rest.reach, 0],
      ];

const restMeasures = ({ rest }: Grinder): Measure[] => {
  if (rest.kind === 'arm')
    return [
      input('grinder.rest.reach', p.rest.armReach, rest.reach, {
        from: [0, -rest.height],
        to: [rest.reach, -rest.height],
        along: 'x',
        side: 'low',
      }),
      input('grinder.rest.height', p.rest.armHeight, rest.height, {
        from: [rest.reach, 0],
        to: [rest.reach, -rest.height],
        along: 'y',
        side: 'high',
      }),
    ];
  const end = rest.gap + rest.depth;
  return [
    input('grinder.rest.depth', p.rest.depth, rest.depth, {
      from: [rest.gap, -rest.thickness],
      to: [end, -rest.thickness],
      along: 'x',
      side: 'low',
    }),
    input('grinder.rest.gap', p.rest.gap, rest.gap, {
      from: [0, -rest.thickness],
      to: [rest.gap, -rest.thickness],
      along: 'x',
      side: 'low',
    }),
    input('grinder.rest.thickness', p.rest.thickness, rest.thickness, {
      from: [end, 0],
      to: [end, -rest.thickness],
      along: 'y',
      side: 'high',
    }),
  ];
};

const wheelMeasures = (grinder: Grinder): Measure[] =>
  grinder.wheels.map((wheel, i) => {
    const at = leaned([wheel.centre[0], wheel.centre[1]], grinder.lean);
    const of = text.app.list.item(text.grinder.parameters.wheels.one, i + 1);
    const place = { from: at, to: at, along: 'at', side: 'low', mark: '⌀' } as const;
    return input(`grinder.wheels.${i}.diameter`, p.wheels.diameter, wheel.diameter, place, of);
  });

/**
 * Where the middle of every wheel is, from the bare face and from the top of the rest: as it stands
 * at no lean, so that it is drawn only where the platen does not lean.
 */
const centreMeasures = ({ wheels, lean }: Grinder): Measure[] =>
  lean !== 0
    ? []
    : wheels.flatMap((wheel, i) => {
        const [y, z] = wheel.centre;
        const of = text.app.list.item(text.grinder.parameters.wheels.one, i + 1);
        const at = `grinder.wheels.${i}.centre`;
        return [
          input(
            `${at}.0`,
            p.wheels.y,
            y,
            { from: [0, z], to: [y, z], along: 'x', side: 'high' },
            of,
          ),
          input(
            `${at}.1`,
            p.wheels.z,
            z,
            { from: [y, 0], to: [y, z], along: 'y', side: 'low' },
            of,
          ),
        ];
      });

const keepOutNames = (grinder: Grinder): PictureLabel[] =>
  grinder.keepOuts.map((box) => ({
    at: leaned(
      [(box.min[1] + box.max[1]) / 2, (box.min[2] + box.max[2]) / 2],
      leanOf(box, grinder.lean),
    ),
    text: box.name,
    anchor: 'middle',
  }));

const restName = ({ rest }: Grinder, at: Vec2): PictureLabel => ({
  at,
  text: rest.kind === 'table' ? words.rest : words.arm,
  anchor: 'middle',
});

/** Side elevation: x = y of the grinder frame, y = z. */
export const grinderSide = (grinder: Grinder, brief: boolean): Picture => {
  const [low, high] = restSide(grinder);
  return sound({
    name: words.side,
    lines: [
      ...platenSide(grinder),
      { points: cornersOf(low, high), closed: true, role: 'grinder' },
      ...grinder.keepOuts.map((box): PictureLine => ({
        points: keepOutSide(box, grinder.lean),
        closed: true,
        role: 'hidden',
      })),
      ...beltLine(grinder),
    ],
    discs: grinder.wheels.map((wheel) => ({
      centre: leaned([wheel.centre[0], wheel.centre[1]], grinder.lean),
      radius: wheel.diameter / 2,
      role: 'grinder',
    })),
    labels: brief
      ? []
      : [restName(grinder, [(low[0] + high[0]) / 2, high[1] + 4]), ...keepOutNames(grinder)],
    measures: [
      ...platenMeasures(grinder),
      ...restMeasures(grinder),
      ...(brief ? [] : [...wheelMeasures(grinder), ...centreMeasures(grinder)]),
    ],
  });
};

const frontRest = ({ rest }: Grinder): PictureLine => {
  const half = rest.width / 2;
  const deep = rest.kind === 'table' ? rest.thickness : rest.height;
  return { points: cornersOf([-half, -deep], [half, 0]), closed: true, role: 'grinder' };
};

/** Front elevation, as the maker sees it: x along the stroke, y = z; the platen region only. */
export const grinderFront = (grinder: Grinder): Picture => {
  const { belt, platen, rest } = grinder;
  const half = belt.width / 2;
  const [low, high] = platen.kind === 'none' ? [-60, 160] : [platen.bottom, platen.top];
  const deep = rest.kind === 'table' ? rest.thickness : rest.height;
  const restWidth = rest.kind === 'table' ? p.rest.width : p.rest.armWidth;
  return sound({
    name: words.front,
    lines: [
      ...(platen.kind === 'none'
        ? []
        : [
            {
              points: cornersOf([-platen.width / 2, low], [platen.width / 2, high]),
              closed: true,
              role: 'grinder',
            } as const,
          ]),
      { points: cornersOf([-half, low - 6], [half, high + 6]), closed: true, role: 'belt' },
      frontRest(grinder),
      ...grinder.keepOuts.map((box): PictureLine => {
        const heights = keepOutSide(box, grinder.lean).map(([, z]) => z);
        return {
          points: cornersOf([box.min[0], Math.min(...heights)], [box.max[0], Math.max(...heights)]),
          closed: true,
          role: 'hidden',
        };
      }),
      {
        points: [
          [0, low - 12],
          [0, high + 12],
        ],
        closed: false,
        role: 'centre',
      },
    ],
    discs: [],
    labels: [],
    measures: [
      input('grinder.belt.width', p.belt.width, belt.width, {
        from: [-half, high + 6],
        to: [half, high + 6],
        along: 'x',
        side: 'high',
      }),
      input('grinder.rest.width', restWidth, rest.width, {
        from: [-rest.width / 2, -deep],
        to: [rest.width / 2, -deep],
        along: 'x',
        side: 'low',
      }),
    ],
  });
};
