import { bevelPlace } from '../../blade/bevel.ts';
import { wantedCut } from '../../blade/cut.ts';
import { bladeParameters as p } from '../../blade/parameters.ts';
import type { Blade, Side } from '../../blade/schema.ts';
import { groundSection, type Section, type SideCuts } from '../../blade/section.ts';
import { shapeOf, type Shape } from '../../blade/shape.ts';
import type { Design } from '../../document/schema.ts';
import type { Vec2 } from '../../geometry/vector.ts';
import { wantedHollow } from '../../grind/edge-rest/wanted.ts';
import { frontWheel } from '../../grinder/front-wheel.ts';
import { text } from '../../text/index.ts';
import { input, sound, type Measure, type Picture } from '../draw/picture.ts';

const CORNER = 6;
/** Seen from the tang: left (+w) is drawn on the left. */
const SIGN: Readonly<Record<Side, -1 | 1>> = { left: -1, right: 1 };

const contour = ({ rungs }: Section): Vec2[] => [
  ...rungs.map(({ v, left }): Vec2 => [-left, -v]),
  ...[...rungs].reverse().map(({ v, right }): Vec2 => [right, -v]),
];

const wantedCuts = (shape: Shape, u: number, hollowRadius: number | null): SideCuts => {
  const { bevels } = shape.blade;
  if ([bevels.left, bevels.right].some(({ kind }) => kind === 'hollow'))
    return {
      left: wantedHollow(shape, u, 'left', hollowRadius),
      right: wantedHollow(shape, u, 'right', hollowRadius),
    };
  const left = wantedCut(shape, 'left', shape.blade.edge.wanted);
  const right = wantedCut(shape, 'right', shape.blade.edge.wanted);
  return { ...(left ? { left: [left] } : {}), ...(right ? { right: [right] } : {}) };
};

const bevelMeasure = (blade: Blade, at: string, side: Side, edge: number, half: number) => {
  const bevel = blade.bevels[side];
  const x = SIGN[side] * half;
  const path = `${at}.bevels.${side}`;
  const where = side === 'left' ? 'low' : 'high';
  const of = text.app.setup.sides[side];
  const up = (
    height: number,
    along: 'y' | 'at',
  ): Pick<Measure, 'from' | 'to' | 'along' | 'side'> => ({
    from: [x, -edge],
    to: [x, -edge + height],
    along,
    side: where,
  });
  switch (bevel.kind) {
    case 'height':
      return [input(`${path}.height`, p.bevels.height, bevel.height, up(bevel.height, 'y'), of)];
    case 'angle': {
      // The angle stands beside the face it belongs to.
      const spot: Vec2 = [SIGN[side] * half * 2.5, -edge * 0.75];
      const place = { from: spot, to: spot, along: 'at', side: where } as const;
      return [input(`${path}.angle`, p.bevels.angle, bevel.angle, place, of)];
    }
    case 'hollow':
      return [input(`${path}.centre`, p.bevels.centre, bevel.centre, up(bevel.centre, 'y'), of)];
    case 'full':
    case 'none':
      return [];
  }
};

/** Radius of the hollow that the wheel of a design leaves, its last belt on; null where it has none. */
export const hollowRadius = ({ grinder, fixture, sequence }: Design): number | null => {
  const wheel = frontWheel(grinder, String(fixture.parameters['wheel'] ?? 'contact'));
  const belt = grinder.belts.find(({ id }) => id === sequence.at(-1)?.belt);
  return wheel ? wheel.diameter / 2 + (belt?.thickness ?? 0) : null;
};

/**
 * The section where the bevels are stated, as wanted, inside the blank; hollows by a wheel of the
 * radius given, mm.
 */
export const bladeSection = (blade: Blade, at: string, radius: number | null): Picture => {
  const shape = shapeOf(blade);
  const u = bevelPlace(blade);
  const blank = groundSection(shape, u, CORNER, {});
  const wanted = groundSection(shape, u, CORNER, wantedCuts(shape, u, radius));
  const edge = shape.edge.value(u);
  const half = shape.thickness.value(u) / 2;
  const share = blade.edge.wanted * blade.edge.shareLeft;
  return sound({
    name: text.app.blade.section,
    lines: [
      { points: contour(wanted), closed: true, role: 'blade' },
      { points: contour(blank), closed: true, role: 'blank' },
      {
        points: [
          [0, -shape.spine.value(u) + 2],
          [0, -edge - 2],
        ],
        closed: false,
        role: 'centre',
      },
    ],
    discs: [],
    labels: [],
    measures: [
      ...bevelMeasure(blade, at, 'left', edge, half),
      ...bevelMeasure(blade, at, 'right', edge, half),
      input(`${at}.edge.wanted`, p.edge.wanted, blade.edge.wanted, {
        from: [-share, -edge],
        to: [blade.edge.wanted - share, -edge],
        along: 'x',
        side: 'low',
      }),
    ],
  });
};
