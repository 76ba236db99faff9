import {
  bodyOf,
  chain,
  compose,
  ok,
  WORLD,
  type Blade,
  type Body,
  type Frame,
  type Motion,
  type PartForms,
  type Placement,
  type Result,
  type Sweep,
} from '../../../src/family/index.ts';
import { bladeBodies, bladeSolids } from '../../shared/checks/blade-solids.ts';
import type { Context } from '../context.ts';
import { HAND } from '../layout/sizes.ts';
import type { Group, Item } from '../place/item.ts';
import { bladeInCarriage, groupFrame, plungeX, type PlanSetting } from '../place/stand.ts';
import { words, type Question } from './question.ts';

export type Name = keyof typeof words.names;
export type Bodies = ReadonlyMap<Name, Body>;

/** What a setting's stroke is called in a motion: its id, read back for the worst pose. */
const sweep = (setting: PlanSetting, from: Frame, to: Frame): Sweep => ({
  kind: 'glide',
  label: setting.id,
  from,
  to,
});

/** The motion of a group over the strokes of some settings, stop pin to stop pin. */
export const strokesOf = (c: Context, settings: readonly PlanSetting[], group: Group): Motion =>
  settings.map((setting) => {
    const x = plungeX(c, setting);
    return sweep(setting, groupFrame(c, setting, group, x), groupFrame(c, setting, group, -x));
  });

const bladeMotion = (c: Context, settings: readonly PlanSetting[], blade: Blade): Motion =>
  settings.map((setting) => {
    const inside = bladeInCarriage(c, setting, blade);
    const x = plungeX(c, setting);
    const at = (where: number): Frame => compose(groupFrame(c, setting, 'carriage', where), inside);
    return sweep(setting, at(x), at(-x));
  });

/** Which body an item belongs to. */
const bodyName = ({ name, group }: Item): Name => {
  if (/^(mount|clamp-bar)/.test(name)) return 'mount';
  if (/^stop-pin/.test(name)) return 'stops';
  return name === 'foot-bar' ? 'foot' : group;
};

const GROUP: Readonly<Partial<Record<Name, Group>>> = {
  base: 'base',
  stops: 'base',
  mount: 'base',
  fence: 'fence',
  carriage: 'carriage',
  foot: 'carriage',
  heel: 'heel',
  jaw: 'jaw',
};

const standing = ({ name, part, frame, touches }: Item): Placement => ({
  name,
  part,
  frame,
  touches,
  carrier: 'ground',
});

/** Bodies of the fixture over the strokes of some settings; a missing part fails. */
export const fixtureBodies = (
  { c, items, workshop }: Question,
  forms: PartForms,
  settings: readonly PlanSetting[],
): Result<Map<Name, Body>> => {
  const bodies = new Map<Name, Body>();
  const motions = new Map<Group, Motion>();
  const motionOf = (group: Group): Motion => {
    const motion = motions.get(group) ?? strokesOf(c, settings, group);
    motions.set(group, motion);
    return motion;
  };
  for (const [name, group] of Object.entries(GROUP) as [Name, Group][]) {
    const own = items.filter((item) => bodyName(item) === name).map(standing);
    if (own.length === 0) continue;
    const body = bodyOf(name, own, forms, group === 'base' ? undefined : motionOf(group));
    if (!body.ok) return body;
    bodies.set(name, body.value);
  }
  const { l } = c;
  const hand = {
    kind: 'box',
    frame: {
      ...WORLD,
      origin: [0, l.palm.back + HAND.depth / 2, (HAND.low + HAND.high) / 2],
    },
    size: [2 * HAND.half, HAND.depth, HAND.high - HAND.low],
  } as const;
  return chain(workshop.prepared('hand', hand), (solid) =>
    ok(
      bodies.set('hand', {
        name: 'hand',
        solids: [solid],
        chordError: 0,
        motion: motionOf('carriage'),
      }),
    ),
  );
};

/** The foot standing at one end of every stroke, and the stop pin there. */
export const stopBodies = (
  { c, items }: Question,
  forms: PartForms,
  end: -1 | 1,
): Result<Map<Name, Body>> => {
  const still: Motion = c.plan.settings.map((setting) => ({
    kind: 'still',
    label: setting.id,
    pose: groupFrame(c, setting, 'carriage', end * c.l.stroke),
  }));
  const own = (name: Name): Item[] => items.filter((item) => bodyName(item) === name);
  const pin = own('stops').filter(({ frame }) => frame.origin[0] * end > 0);
  return chain(bodyOf('foot', own('foot').map(standing), forms, still), (foot) =>
    chain(bodyOf('stops', pin.map(standing), forms), (stops) =>
      ok(
        new Map<Name, Body>([
          ['foot', foot],
          ['stops', stops],
        ]),
      ),
    ),
  );
};

/** A blade and its tang, clamped, over the strokes of some settings. */
export const clampedBodies = (
  { c, workshop }: Question,
  blade: Blade,
  settings: readonly PlanSetting[],
): Result<Map<Name, Body>> =>
  chain(bladeSolids(blade, workshop), (solids) =>
    ok(bladeBodies(solids, bladeMotion(c, settings, blade))),
  );
