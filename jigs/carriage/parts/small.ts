import {
  circle,
  clearanceHole,
  cos,
  hexagon,
  type Layer,
  materialOf,
  nut,
  type PlatePart,
  polygon,
  type PrintPart,
  radians,
  rectangle,
  type Result,
  sin,
  type StockPart,
  tan,
  tapDrill,
  type Vec2,
} from '../../../src/family/index.ts';
import { plate, printed, words as shared } from '../../shared/parts/context.ts';
import { tapped } from '../../shared/parts/holes.ts';
import type { Context } from '../context.ts';
import { FOOT, HEEL, JAW, SOLE } from '../layout/sizes.ts';
import { words } from './words.ts';

/** The foot: a round bar along z, tapped from one side for the screws that hold it. */
export const foot = ({ l }: Context): StockPart => {
  const { name, density } = materialOf('steel');
  const { diameter, standard } = tapDrill('M5');
  return {
    kind: 'stock',
    id: 'foot-bar',
    name: words.names.foot,
    quantity: 1,
    material: name,
    density,
    finish: words.finish.stock,
    section: words.section.round(2 * FOOT.radius),
    layers: [
      {
        profile: { outer: circle([0, 0], FOOT.radius), holes: [] },
        from: 0,
        to: 2 * l.foot.half,
      },
    ],
    holes: [],
    crossHoles: [-1, 1].map((side, i) => ({
      id: `screw-${String(i + 1)}`,
      face: 'y' as const,
      at: [0, l.foot.half + side * l.foot.screwX] as Vec2,
      size: diameter,
      thread: 'M5',
      depth: FOOT.drill,
      purpose: `${words.purpose.footThread} (${standard})`,
    })),
    notes: [words.notes.foot],
    tight: [],
  };
};

/** Slices of a half ball, its rims on the ball, from its pole upwards. */
const ball = (radius: number): Layer[] => {
  const rim = (i: number): number => radians(HEEL.step * (i + 0.5));
  const count = Math.round(90 / HEEL.step - 0.5);
  const level = (i: number): number => (i >= count ? radius : radius * (1 - cos(rim(i))));
  return Array.from({ length: count }, (_, i) => ({
    profile: { outer: circle([0, 0], radius * sin(rim(i))), holes: [] },
    // The pole is flat as far as the first rim.
    from: i === 0 ? 0 : level(i),
    to: level(i + 1),
  }));
};

/** The heel screw: threaded rod with a rounded end at z = 0. */
export const heelScrew = ({ l }: Context): StockPart => {
  const { name, density } = materialOf('steel');
  const { tipRadius } = HEEL;
  const shank: Layer = {
    profile: { outer: circle([0, 0], tipRadius), holes: [] },
    from: tipRadius,
    to: l.heel.length,
  };
  return {
    kind: 'stock',
    id: 'heel-screw',
    name: words.names.heel,
    quantity: 1,
    material: name,
    density,
    finish: words.finish.stock,
    section: words.section.rod,
    layers: [...ball(tipRadius), shank],
    holes: [],
    crossHoles: [],
    notes: [words.notes.heel(tipRadius)],
    tight: [],
  };
};

/** The jaw: x across, y up from its lower end. */
export const jaw = (c: Context): Result<PlatePart> => {
  const { v } = c;
  const at = (below: number): Vec2[] => [[v.jawWidth / 2, JAW.end - below]];
  return plate(c, {
    id: 'jaw',
    name: words.names.jaw,
    thickness: v.plate,
    outline: rectangle([0, 0], [v.jawWidth, JAW.end + JAW.grip]),
    holes: [
      ...tapped('clamp', at(JAW.screw), 'M6', words.purpose.clampThread),
      ...tapped('jack', at(JAW.jack), 'M6', words.purpose.jackThread),
    ],
    notes: [words.notes.jaw],
  });
};

/** The push block under the tail, printed upside up: nut pockets below, passages above. */
export const palm = (c: Context): PrintPart => {
  const { name, density, play } = printed(c);
  const { front, back, height, pocket, screwX, screwY } = c.l.palm;
  const bore = clearanceHole('M5', 'normal');
  const outer = rectangle([-SOLE.palmHalf, 0], [SOLE.palmHalf, back - front]);
  const at: Vec2[] = [-screwX, screwX].map((x): Vec2 => [x, screwY - front]);
  const flats = nut('M5').acrossFlats + play;
  const holes = at.map((p) => circle(p, (bore.diameter + play) / 2));
  return {
    kind: 'print',
    id: 'push-block',
    name: words.names.palm,
    quantity: 1,
    material: name,
    density,
    finish: shared.finish.print,
    layers: [
      { profile: { outer, holes: at.map((p) => hexagon(p, flats)) }, from: 0, to: pocket },
      { profile: { outer, holes }, from: pocket, to: height },
    ],
    holes: holes.map((loop, i) => ({
      id: `palm-${String(i + 1)}`,
      loop,
      at: loop.centre,
      size: 2 * loop.radius,
      purpose: `${words.purpose.palmPassage} (${bore.standard})`,
    })),
    notes: [words.notes.palm, words.notes.printSolid],
    tight: [],
  };
};

const gaugePrint = (
  c: Context,
  id: string,
  name: string,
  corners: readonly Vec2[],
  note: string,
  quantity: number,
): PrintPart => {
  const filament = printed(c);
  return {
    kind: 'print',
    id,
    name,
    quantity,
    material: filament.name,
    density: filament.density,
    finish: shared.finish.print,
    layers: [{ profile: { outer: polygon(corners), holes: [] }, from: 0, to: 20 }],
    holes: [],
    notes: [note],
    tight: [],
  };
};

/** Thickness of gauge walls, and how deep they hang, mm. */
const WALL = 6;
const HANG = 12;

/** Stands on the upright; its lip gives the height of the edge. Profile (away from the belt, up). */
export const edgeGauge = (c: Context): PrintPart => {
  const { l, v } = c;
  const rise = v.edgeHeight - l.middleTop;
  const back = l.wall + WALL;
  return gaugePrint(
    c,
    'edge-gauge',
    words.names.edgeGauge,
    [
      [back, -HANG],
      [back, rise + WALL],
      [-l.gripped - 3, rise + WALL],
      [-l.gripped - 3, rise],
      [0, rise],
      [0, 0],
      [l.wall, 0],
      [l.wall, -HANG],
    ],
    words.notes.edgeGauge(rise),
    2,
  );
};

/** Lies on the fence between belt and its rear face, at the last setting. */
export const fenceGauge = (c: Context): PrintPart => {
  const last = c.plan.settings.at(-1);
  const length = last?.fence ?? 0;
  // Its front lies along the face, which a leaning platen draws back at the height of the gauge.
  const face = (z: number): Vec2 => [-(c.v.plate + z) * tan(radians(c.plan.lean)), z];
  return gaugePrint(
    c,
    'fence-gauge',
    words.names.fenceGauge,
    [
      face(0),
      [length, 0],
      [length, -WALL],
      [length + WALL, -WALL],
      [length + WALL, WALL],
      face(WALL),
    ],
    words.notes.fenceGauge(length, last?.id ?? ''),
    1,
  );
};
