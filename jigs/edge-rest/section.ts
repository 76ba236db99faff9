import {
  asin,
  type BeltSection,
  circle,
  cos,
  type EdgeRestPlan,
  flatten,
  halfAt,
  hollowed,
  inSeat,
  radians,
  sin,
  text,
  type Vec2,
} from '../../src/family/index.ts';
import { box, restUnder, type Site } from '../shared/section.ts';
import { PAD } from '../shared/layout/sizes.ts';
import type { EdgeContext } from './context.ts';
import { parameterPath } from './checks/question.ts';
import { padContact } from './place/hand.ts';
import { LIP } from './sizes.ts';

const words = text.family.edgeRest.section;

type PlanSetting = EdgeRestPlan['settings'][number];
const STEPS = 80;

/** Blade section at the first place of the first blade, hollowed to the stop, seat frame (y, z). */
const bladeOutline = (setting: PlanSetting): Vec2[] => {
  const place = setting.blades[0]?.places[0];
  if (!place) return [];
  const { section, standing, circle: wheel, height } = place;
  const near = hollowed(section.near, wheel);
  const levels = Array.from({ length: STEPS + 1 }, (_, i) => (height * i) / STEPS);
  const at = (w: number, h: number): Vec2 => inSeat(standing.origin, standing.tilt, [w, h]);
  return [
    ...levels.map((h) => at(-halfAt(near, h), h)),
    ...levels.reverse().map((h) => at(halfAt(section.far, h), h)),
  ];
};

/** The abrasive of the wheel from well below the seat to well above the contact. */
const abrasive = ({ wheel: { radius, drop } }: PlanSetting, low: number, high: number): Vec2[] => {
  const angle = (z: number): number =>
    asin(Math.max(-0.99, Math.min(0.99, (z - drop) / radius))) / radians(1);
  const [from, to] = [angle(low), angle(high)];
  return Array.from({ length: STEPS + 1 }, (_, i): Vec2 => {
    const a = radians(from + ((to - from) * i) / STEPS);
    return [radius * cos(a) - radius, drop + radius * sin(a)];
  });
};

/** The set-up of one setting seen along the stroke: wheel, blade, lip, seat, slide, nose and pad. */
export const sectionOf = (
  { v, rig, x }: EdgeContext,
  plan: EdgeRestPlan,
  setting: PlanSetting,
  { grinder, offset, shift }: Site,
): BeltSection => {
  const { l } = rig;
  const { lip } = setting;
  const place = setting.blades[0]?.places[0];
  const top = (place?.standing.origin[1] ?? 0) + (place?.height ?? 0);
  const pad = plan.pushHeight;
  const tip = padContact(setting, pad);
  const back = 60;
  const [under, slideBottom, noseBottom] = [-x.under, -x.rise, -x.rise - v.plate];
  const { front } = l.nose;
  return {
    title: words.title(setting.id),
    lines: [
      {
        role: 'belt',
        closed: false,
        points: abrasive(setting, noseBottom - v.base, top + 10),
        label: words.belt,
      },
      box('fixture', [front, front + l.nose.depth], [noseBottom, slideBottom], words.nose),
      box('fixture', [lip - x.lead, back], [slideBottom, under], words.slide),
      box('fixture', [lip, lip + LIP.depth], [-v.wear, 0], words.wear),
      {
        role: 'fixture',
        closed: true,
        label: words.lip,
        points: [
          [lip - v.lipThickness, under],
          [lip + LIP.depth, under],
          [lip + LIP.depth, -v.wear],
          [lip, -v.wear],
          [lip, v.lipHeight],
          [lip - v.lipThickness, v.lipHeight],
        ],
      },
      box('fixture', [l.base.front + shift, back], [noseBottom - v.base, noseBottom], words.base),
      restUnder(grinder, offset, {
        front: l.base.front + shift,
        back,
        bottom: noseBottom - v.base,
      }),
      { role: 'blade', closed: true, points: bladeOutline(setting), label: words.blade },
      {
        role: 'push',
        closed: true,
        points: flatten(circle([tip + PAD.noseRadius, pad], PAD.noseRadius), 0.05),
        label: words.pad,
      },
    ],
    dimensions: [
      {
        from: [lip, 0],
        to: [0, setting.wheel.drop],
        direction: 'horizontal',
        text: words.mm(-lip),
        reading: 'lip',
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
        path: parameterPath('lipHeight'),
        from: [lip, 0],
        to: [lip, v.lipHeight],
        direction: 'vertical',
      },
      {
        path: parameterPath('lipThickness'),
        from: [lip - v.lipThickness, v.lipHeight],
        to: [lip, v.lipHeight],
        direction: 'horizontal',
      },
      {
        path: parameterPath('wear'),
        from: [lip + LIP.depth, -v.wear],
        to: [lip + LIP.depth, 0],
        direction: 'vertical',
      },
      {
        path: parameterPath('plate'),
        from: [front + l.nose.depth, noseBottom],
        to: [front + l.nose.depth, slideBottom],
        direction: 'vertical',
      },
      {
        path: parameterPath('base'),
        from: [back, noseBottom - v.base],
        to: [back, noseBottom],
        direction: 'vertical',
      },
    ],
  };
};
