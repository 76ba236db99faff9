import {
  add3,
  bevelPlace,
  type BladePose,
  cos,
  cross3,
  edgeOffsets,
  type Frame,
  type Grinder,
  placeAt,
  radians,
  scale3,
  sin,
  type Vec2,
  type Vec3,
  WORLD,
} from '../../src/family/index.ts';
import type { Aim } from './aim.ts';
import { platenFrame, type Layout } from './layout.ts';
import { bevelAt } from './numbers.ts';
import type { Values } from './parameters.ts';

/** Support of the belt at a height along the platen, mm from its bare face. */
export const supportAt = ({ round, support }: Layout, z: number): number =>
  round ? round.centre[0] + Math.sqrt(round.radius ** 2 - (z - round.centre[1]) ** 2) : support;

/** The section of a blade at its bevel place: (v from the spine, w towards the belt), mm. */
export const outlineOf = (aim: Aim): { readonly corners: Vec2[]; readonly middle: Vec2 } => {
  const { blade, side, angle } = aim;
  const u = bevelPlace(blade);
  const { height, thickness } = placeAt(blade, u);
  const edge = edgeOffsets(blade, u, blade.edge.wanted);
  const [near, far] = side === 'left' ? [edge.left, edge.right] : [edge.right, edge.left];
  const shoulder = height - bevelAt(aim, u, angle);
  const t = thickness / 2;
  return {
    corners: [
      [0, -t],
      [shoulder, -t],
      [height, -far],
      [height, near],
      [shoulder, t],
      [0, t],
    ],
    middle: [(height + shoulder) / 2, (near + t) / 2],
  };
};

/**
 * The blade edge up, leaned by `tilt`, the middle of its bevel on the abrasive (`belt` mm thick)
 * at the height of the contact: blade coordinates to grinder, the bevel place at x = 0.
 */
export const poseOf = (
  grinder: Grinder,
  v: Values,
  l: Layout,
  aim: Aim,
  tilt: number,
  belt: number,
): Frame => {
  const [c, s] = [cos(radians(tilt)), sin(radians(tilt))];
  const up: Vec3 = [0, -s, c];
  const towards: Vec3 = [0, -c, -s];
  const z: Vec3 = aim.side === 'left' ? towards : scale3(towards, -1);
  const x = cross3(up, z);
  const { y: out, z: along } = platenFrame(grinder);
  const contact = add3(scale3(out, supportAt(l, v.contact) + belt), scale3(along, v.contact));
  const [down, off] = outlineOf(aim).middle;
  const u = bevelPlace(aim.blade);
  const drop = placeAt(aim.blade, u).spine[1];
  const origin = [scale3(up, -down - drop), scale3(towards, -off), scale3(x, -u)].reduce(
    add3,
    contact,
  );
  return { ...WORLD, origin, x, y: up, z };
};

/** The one pose of a setting: the carrier leads no stroke. */
export const posesOf = (
  grinder: Grinder,
  v: Values,
  l: Layout,
  aim: Aim,
  setting: { readonly id: string; readonly angle: number; readonly belt: string },
): BladePose[] => {
  const belt = grinder.belts.find(({ id }) => id === setting.belt)?.thickness ?? 0;
  const frame = poseOf(grinder, v, l, aim, aim.tilt, belt);
  return [{ setting: setting.id, blade: aim.blade.name, u: bevelPlace(aim.blade), frame }];
};
