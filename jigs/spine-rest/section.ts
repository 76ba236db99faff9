import {
  type BeltSection,
  circle,
  flatten,
  inSeat,
  radians,
  type SpineRestPlan,
  tan,
  text,
  type Vec2,
} from '../../src/family/index.ts';
import { box, restUnder, type Site } from '../shared/section.ts';
import { PAD } from '../shared/layout/sizes.ts';
import type { Context } from '../shared/parts/context.ts';
import { parameterPath } from './checks/question.ts';
import { greatestOver } from './over-places.ts';
import { stripFrom, type Carried } from './strip/carried.ts';
import { farSide, padContact, placesAt } from './place/hand.ts';

const words = text.family.spineRest.section;

type PlanSetting = SpineRestPlan['settings'][number];
/** Blade section at the bevel place of the first blade, ground to the stop, seat frame (y, z). */
const bladeOutline = (plan: SpineRestPlan, setting: PlanSetting, from: number): Vec2[] => {
  const first = placesAt(plan, setting).find(([{ u }]) => u >= from);
  if (!first) return [];
  const [{ seating, thickness, height }] = first;
  const far = farSide(...first);
  const rise = tan(radians(setting.angle));
  const near = (v: number): number =>
    Math.min(thickness / 2, setting.edgeSide + (height - v) * rise);
  const shoulder = Math.max(0, height - setting.bevelHeight);
  const levels = [0, shoulder, height];
  const at = (w: number, v: number): Vec2 => inSeat(seating.origin, seating.tilt, [w, v]);
  return [...levels.map((v) => at(-near(v), v)), ...levels.reverse().map((v) => at(far(v), v))];
};

/** The strip on that section's far face, seat frame (y, z). */
const stripOutline = (
  { found, wish }: Carried,
  setting: PlanSetting,
  from: number,
): BeltSection['lines'][number][] => {
  const place = setting.blades[0]?.places.find(({ u }) => u >= from);
  const side = found.cure.sides.find((one) => one.side === setting.side);
  if (!place || !side) return [];
  const { seating, thickness, u } = place;
  const { us, out, bottom } = side.strip;
  const outer =
    out[
      Math.max(
        0,
        us.findIndex((at) => at >= u),
      )
    ] ?? 0;
  const inner = thickness / 2 + wish.tape;
  const at = (w: number, v: number): Vec2 => inSeat(seating.origin, seating.tilt, [w, v]);
  const top = bottom + wish.height;
  return [
    {
      role: 'fixture',
      closed: true,
      points: [at(inner, bottom), at(outer, bottom), at(outer, top), at(inner, top)],
      label: words.strip,
    },
  ];
};

/** The set-up of one setting seen along the stroke: belt, blade, nose, step, base and pad. */
export const sectionOf = (
  c: Context,
  plan: SpineRestPlan,
  setting: PlanSetting,
  { grinder, offset, shift }: Site,
  strip?: Carried,
): BeltSection => {
  const { v, l } = c;
  const top = greatestOver([setting], ({ seating }) => seating.edge[1]);
  const lean = tan(radians(plan.lean));
  const face = (z: number): Vec2 => [-z * lean, z];
  const pad = v.plate + l.push.pad;
  const from = strip ? stripFrom(strip) : -Infinity;
  const tip = padContact(plan, setting, pad, from);
  const padCircle = flatten(circle([tip + PAD.noseRadius, pad], PAD.noseRadius), 0.05);
  const back = 70;
  return {
    title: words.title(setting.id),
    lines: [
      {
        role: 'belt',
        closed: false,
        points: [face(l.levels.baseBottom), face(top + 15)],
        label: words.belt,
      },
      box('fixture', [l.nose.front, l.nose.back], [-v.plate, 0], words.nose),
      box('fixture', [setting.setoff, back], [0, v.plate], words.step),
      box(
        'fixture',
        [l.base.front + shift, back],
        [l.levels.baseBottom, l.levels.baseTop],
        words.base,
      ),
      restUnder(grinder, offset, {
        front: l.base.front + shift,
        back,
        bottom: l.levels.baseBottom,
      }),
      {
        role: 'blade',
        closed: true,
        points: bladeOutline(plan, setting, from),
        label: words.blade(setting.angle),
      },
      ...(strip ? stripOutline(strip, setting, from) : []),
      { role: 'push', closed: true, points: padCircle, label: words.pad },
    ],
    dimensions: [
      {
        from: [0, 0],
        to: [setting.setoff, 0],
        direction: 'horizontal',
        text: words.mm(setting.setoff),
        reading: 'setoff',
      },
      {
        from: face(-v.plate / 2),
        to: [l.nose.front, -v.plate / 2],
        direction: 'horizontal',
        text: words.mm(v.noseGap),
        path: parameterPath('noseGap'),
        reading: 'noseGap',
      },
      {
        from: [tip + PAD.noseRadius, 0],
        to: [tip + PAD.noseRadius, pad],
        direction: 'vertical',
        text: words.mm(pad),
      },
    ],
    inputs: [
      {
        path: parameterPath('plate'),
        from: [back, 0],
        to: [back, v.plate],
        direction: 'vertical',
      },
      {
        path: parameterPath('base'),
        from: [back, l.levels.baseBottom],
        to: [back, l.levels.baseTop],
        direction: 'vertical',
      },
    ],
  };
};
