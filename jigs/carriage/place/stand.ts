import {
  add3,
  type Blade,
  type CarriagePlan,
  compose,
  cos,
  cross3,
  type Frame,
  type Placement,
  radians,
  scale3,
  shapeOf,
  shift,
  sin,
  turn,
  type Vec3,
  WORLD,
} from '../../../src/family/index.ts';
import { mutualTouches } from '../../shared/place/place.ts';
import type { Context } from '../context.ts';
import { FOOT } from '../layout/sizes.ts';
import { CARRIER, type Group, type Item } from './item.ts';

export type PlanSetting = CarriagePlan['settings'][number];

/**
 * The carriage in the seat frame, its middle at x along the stroke: turned about the centre of its
 * foot by the tilt, top towards the belt, the foot's centre `footCentre` from the abrasive face.
 */
export const carriageFrame = (tilt: number, footCentre: number, x: number): Frame => {
  const [c, s] = [cos(radians(tilt)), sin(radians(tilt))];
  const r = FOOT.radius;
  return {
    origin: [x, footCentre + r * s, r * (1 - c)],
    x: [1, 0, 0],
    y: [0, c, s],
    z: [0, -s, c],
  };
};

/** +1 where the tang lies at positive x: the right side faces the belt. */
const endOf = ({ side }: PlanSetting): number => (side === 'left' ? -1 : 1);

/** Where the carriage's middle is with the plunge at the belt; the other end is its mirror. */
export const plungeX = ({ l }: Context, setting: PlanSetting): number => -endOf(setting) * l.stroke;

/** The jaw in the level carriage at a setting. */
export const jawFrame = ({ l, plan }: Context, setting: PlanSetting): Frame => {
  const drop = l.jawDrops[plan.settings.indexOf(setting)] ?? 0;
  return shift(WORLD, [endOf(setting) * l.jawX, 0, -drop]);
};

/** The heel screw in the level carriage at a setting: out by its extension. */
export const heelFrame = ({ heel }: PlanSetting): Frame => shift(WORLD, [0, 0, -heel.extension]);

/**
 * A blade in the level carriage: far flank on the upright, the edge at the clamping's place along
 * the stroke at the edge height, the middle of the jaw over the blade's own.
 */
export const bladeInCarriage = (c: Context, setting: PlanSetting, blade: Blade): Frame => {
  const at = setting.clamping.find((one) => one.blade === blade.name);
  const grip = c.grips.find((one) => one.blade.name === blade.name);
  if (!at || !grip) return WORLD;
  const end = endOf(setting);
  const edge = shapeOf(blade).edge.value(at.u);
  const [turned, aside] = [cos(radians(at.turn)), sin(radians(at.turn))];
  // Along the stroke, away from the tang; up; towards the belt.
  const along: Vec3 = [-end, 0, 0];
  const up: Vec3 = [0, 0, 1];
  const belt: Vec3 = [0, -1, 0];
  const slope = grip.onTang ? 0 : yawOf(c, blade);
  const norm = Math.hypot(1, slope);
  const yawed = scale3(add3(along, scale3(belt, slope)), 1 / norm);
  const x = add3(scale3(yawed, turned), scale3(up, -aside));
  const y = add3(scale3(yawed, aside), scale3(up, turned));
  const axes = { x, y, z: cross3(x, y) };
  const held = turn({ origin: [0, 0, 0], ...axes }, [at.u, edge, 0]);
  const middle = turn({ origin: [0, 0, 0], ...axes }, [grip.at, (grip.from + grip.to) / 2, 0]);
  return {
    ...axes,
    origin: [
      end * c.l.jawX - middle[0],
      c.l.front - at.midplane - held[1],
      c.v.edgeHeight - held[2],
    ],
  };
};

/** Growth of the half thickness along the blade under the jaw. */
const yawOf = ({ v }: Context, blade: Blade): number => {
  const { thickness } = shapeOf(blade);
  const [near, far] = [-v.jawGap, -v.jawGap - v.jawWidth];
  return (thickness.value(near) - thickness.value(far)) / (2 * v.jawWidth);
};

/** Where a group stands at a setting, the carriage's middle at x. */
export const groupFrame = (c: Context, setting: PlanSetting, group: Group, x: number): Frame => {
  const tipped = carriageFrame(setting.tilt, setting.footCentre, x);
  switch (group) {
    case 'base':
      return WORLD;
    case 'fence':
      return shift(WORLD, [0, setting.fence - c.l.fence.rear, 0]);
    case 'carriage':
      return tipped;
    case 'heel':
      return compose(tipped, heelFrame(setting));
    case 'jaw':
      return compose(tipped, jawFrame(c, setting));
  }
};

/** The assembly at a setting, the plunge at the belt. */
export const placed = (c: Context, items: readonly Item[], setting: PlanSetting): Placement[] => {
  const mutual = mutualTouches(items);
  const x = plungeX(c, setting);
  return items.map(({ name, part, group, frame }) => ({
    part,
    name,
    frame: compose(groupFrame(c, setting, group, x), frame),
    carrier: CARRIER[group],
    touches: mutual(name),
  }));
};
