import type { Shape } from '../check/distance/shape.ts';
import type { Workshop } from '../check/workshop.ts';
import type { Body } from '../check/distance/body.ts';
import { all, chain, ok, type Result } from '../core/result.ts';
import { cos, sin, tan } from '../core/trigonometry.ts';
import { radians } from '../core/units.ts';
import { place, type Frame } from '../geometry/frame.ts';
import { path, type PathLoop } from '../geometry/loop.ts';
import type { Vec3 } from '../geometry/vector.ts';
import { beltPath, supportDepth, type BeltPath } from '../grinder/belt-path.ts';
import { PLATEN_DEPTH } from '../grinder/rules.ts';
import type { Abrasive, Backing, Grinder } from '../grinder/schema.ts';

/** Machines are made of exact shapes alone. */
type Exact = Exclude<Shape, { readonly kind: 'mesh' }>;

/** What of a grinder a body stands for. */
export type MachinePart = 'belt' | 'platen' | 'wheels' | 'rest' | 'guards';

/** The closed line of a belt as a contour in (y, z). */
const contour = ({ pieces }: BeltPath): PathLoop =>
  path(
    pieces.map((piece) => {
      if (piece.kind === 'run') return { x: piece.from[0], y: piece.from[1], bulge: 0 };
      const start = radians(piece.start);
      return {
        x: piece.centre[0] + piece.radius * cos(start),
        y: piece.centre[1] + piece.radius * sin(start),
        bulge: tan(radians(piece.end - piece.start) / 4),
      };
    }),
  );

/** Local x along y of the machine, local y along z, local z along the stroke. */
const acrossStroke = (frame: Frame): Frame => ({
  origin: frame.origin,
  x: frame.y,
  y: frame.z,
  z: frame.x,
});

const box = (frame: Frame, min: Vec3, max: Vec3): Exact => ({
  kind: 'box',
  frame: {
    ...frame,
    origin: place(frame, [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2, (min[2] + max[2]) / 2]),
  },
  size: [max[0] - min[0], max[1] - min[1], max[2] - min[2]],
});

const beltShape = (grinder: Grinder, belt: Abrasive, backing: Backing, frame: Frame) =>
  chain(beltPath(grinder, backing), (line): Result<Exact[]> => {
    const { tracking, flutter, splice, width } = grinder.belt;
    const shape: Exact = {
      kind: 'belt',
      frame: acrossStroke(frame),
      path: contour(line),
      thickness: belt.thickness + flutter + splice,
      width: width + 2 * tracking,
    };
    return ok([shape]);
  });

const platenShape = (grinder: Grinder, backing: Backing, leaned: Frame): Exact[] => {
  const { platen } = grinder;
  if (platen.kind === 'none') return [];
  const depth = supportDepth(grinder, backing);
  const half = platen.width / 2;
  return [box(leaned, [-half, -PLATEN_DEPTH, platen.bottom], [half, depth, platen.top])];
};

const wheelShapes = ({ wheels }: Grinder, leaned: Frame): Exact[] =>
  wheels.map(({ centre: [y, z], diameter, width }) => ({
    kind: 'cylinder',
    from: place(leaned, [-width / 2, y, z]),
    to: place(leaned, [width / 2, y, z]),
    radius: diameter / 2,
  }));

const restShape = ({ rest }: Grinder, frame: Frame): Exact[] => {
  const half = rest.width / 2;
  return rest.kind === 'table'
    ? [box(frame, [-half, rest.gap, -rest.thickness], [half, rest.gap + rest.depth, 0])]
    : [box(frame, [-half, 0, -rest.height], [half, rest.reach, 0])];
};

/**
 * The machine as exact shapes, one body a kind of part, placed by `frame` (grinder to seat frame
 * without lean). Belt and wheels are true arcs: a faceted circle would report more room than
 * there is. The belt is widened by its tracking and thickened by flutter and splice. A convex
 * platen enters as the block up to its foremost line, which is larger than it is.
 */
export const machineBodies = (
  grinder: Grinder,
  belt: Abrasive,
  backing: Backing,
  frame: Frame,
  workshop: Workshop,
): Result<Readonly<Partial<Record<MachinePart, Body>>>> => {
  const t = radians(grinder.lean);
  const leaned: Frame = {
    origin: frame.origin,
    x: [1, 0, 0],
    y: [0, cos(t), sin(t)],
    z: [0, -sin(t), cos(t)],
  };
  return chain(beltShape(grinder, belt, backing, frame), (belts) => {
    const kinds: [MachinePart, Exact[]][] = [
      ['belt', belts],
      ['platen', platenShape(grinder, backing, leaned)],
      ['wheels', wheelShapes(grinder, leaned)],
      ['rest', restShape(grinder, frame)],
      [
        'guards',
        grinder.keepOuts.map(({ min, max, goes }) =>
          box(goes === 'platen' ? leaned : frame, min, max),
        ),
      ],
    ];
    const bodies = kinds
      .filter(([, shapes]) => shapes.length > 0)
      .map(([name, shapes]) =>
        chain(all(shapes.map((shape) => workshop.prepared(name, shape))), (solids) =>
          ok<[MachinePart, Body]>([name, { name, solids, chordError: 0 }]),
        ),
      );
    return chain(all(bodies), (list) => ok(Object.fromEntries(list)));
  });
};
