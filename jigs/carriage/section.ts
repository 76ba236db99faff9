import {
  type BeltSection,
  circle,
  flatten,
  type Frame,
  place,
  radians,
  tan,
  text,
  type Vec2,
} from '../../src/family/index.ts';
import { FEED } from '../shared/layout/sizes.ts';
import { restUnder } from '../shared/section.ts';
import { parameterPath } from './checks/question.ts';
import type { Context } from './context.ts';
import { FOOT, HAND, HEEL, JAW } from './layout/sizes.ts';
import { carriageFrame, heelFrame, type PlanSetting } from './place/stand.ts';

const words = text.family.carriage.section;

type Line = BeltSection['lines'][number];

const box = (y: readonly [number, number], z: readonly [number, number]): Vec2[] => [
  [y[0], z[0]],
  [y[1], z[0]],
  [y[1], z[1]],
  [y[0], z[1]],
];

/** A point (y, z) of the level carriage where it stands. */
const stood = (frame: Frame, [y, z]: Vec2): Vec2 => {
  const p = place(frame, [0, y, z]);
  return [p[1], p[2]];
};

const seen = (frame: Frame, points: readonly Vec2[]): Vec2[] =>
  points.map((point) => stood(frame, point));

/** Half thickness left on a side of the first blade at v, once `setting` and all before are done. */
const halfAt = (c: Context, until: PlanSetting, side: PlanSetting['side'], v: number): number => {
  const [blade] = c.design.blades;
  const done = c.plan.settings
    .slice(0, c.plan.settings.indexOf(until) + 1)
    .findLast((one) => one.side === side && one.facet === 0);
  const [grip] = c.grips;
  const t = blade?.thickness[0]?.t ?? 0;
  if (!done || !grip) return t / 2;
  const rise = tan(radians(done.angle));
  return Math.min(t / 2, done.edgeSide + (grip.edge - v) * rise);
};

/** The first blade at its bevel place, clamped on the upright, level carriage (y, z). */
const bladeOutline = (c: Context, setting: PlanSetting): Vec2[] => {
  const [grip] = c.grips;
  const middle = c.l.front - (setting.clamping[0]?.midplane ?? 0);
  if (!grip) return [];
  const far = setting.side === 'left' ? 'right' : 'left';
  const levels = Array.from({ length: 41 }, (_, i) => (grip.edge * i) / 40);
  const z = (v: number): number => c.v.edgeHeight - grip.edge + v;
  return [
    ...levels.map((v): Vec2 => [middle - halfAt(c, setting, setting.side, v), z(v)]),
    ...levels.reverse().map((v): Vec2 => [middle + halfAt(c, setting, far, v), z(v)]),
  ];
};

/** The set-up of one setting seen along the stroke. */
export const sectionOf = (c: Context, setting: PlanSetting): BeltSection => {
  const { v, l, plan } = c;
  const frame = carriageFrame(setting.tilt, setting.footCentre, 0);
  const lean = tan(radians(plan.lean));
  const face = (z: number): Vec2 => [-z * lean, z];
  const out = heelFrame(setting).origin[2];
  const jawY = l.front - l.gripped;
  const part = (points: readonly Vec2[], label?: string): Line => ({
    role: 'fixture',
    closed: true,
    points: seen(frame, points),
    ...(label === undefined ? {} : { label }),
  });
  const top = place(frame, [0, l.front, v.edgeHeight]);
  const foot = flatten(circle([0, FOOT.radius], FOOT.radius), 0.05);
  const edgeY = -setting.cornerForward;
  const [edge] = seen(frame, [[edgeY, v.edgeHeight]]);
  const fence: [number, number] = [setting.fence - l.fence.depth, setting.fence];
  const still = (points: Vec2[], label: string): Line => ({
    role: 'fixture',
    closed: true,
    points,
    label,
  });
  // Cut through the middle, the knob stands on both sides of its screw.
  const knob = [-1, 1].map((way): Line => {
    const from = v.length + way * HEEL.tipRadius;
    const to = v.length + (way * FEED.knobDiameter) / 2;
    const low = out + l.heel.knob;
    return part(box([Math.min(from, to), Math.max(from, to)], [low, low + FEED.knobThickness]));
  });
  const palmMiddle = seen(frame, [[l.palm.back, (l.palm.bottom + l.soleBottom) / 2]])[0] ?? [0, 0];
  return {
    title: words.title(setting.id),
    lines: [
      {
        role: 'belt',
        closed: false,
        points: [face(-v.base), face(top[2] + 15)],
        label: words.belt,
      },
      still(box([l.base.front, l.base.back], [-v.base, 0]), words.base),
      restUnder(c.grinder, c.stands[setting.step - 1]?.offset ?? 0, {
        front: l.base.front,
        back: l.base.back,
        bottom: -v.base,
      }),
      still(box(fence, [0, v.plate]), words.fence),
      part(box([l.front, l.tailBack], [l.soleBottom, l.soleTop]), words.sole),
      part(box([l.front, l.front + l.wall], [l.soleTop, l.middleTop]), words.upright),
      part(box([-FOOT.stripHalf, FOOT.stripHalf], [2 * FOOT.radius, l.soleBottom])),
      part(foot, words.foot),
      part(
        box(
          [v.length - HEEL.tipRadius, v.length + HEEL.tipRadius],
          [out + HEEL.tipRadius, out + l.heel.length],
        ),
        words.heel,
      ),
      part(flatten(circle([v.length, out + HEEL.tipRadius], HEEL.tipRadius), 0.05)),
      ...knob,
      part(box([l.palm.front, l.palm.back], [l.palm.bottom, l.soleBottom])),
      part(box([jawY - v.plate, jawY], [l.jawBottom, l.jawBottom + JAW.end + JAW.grip]), words.jaw),
      {
        role: 'blade',
        closed: true,
        points: seen(frame, bladeOutline(c, setting)),
        label: words.blade(setting.angle),
      },
      {
        role: 'push',
        closed: false,
        points: [[palmMiddle[0] + HAND.depth / 3, palmMiddle[1]], palmMiddle],
        label: words.push,
      },
    ],
    dimensions: [
      {
        from: [0, 0],
        to: [setting.fence, 0],
        direction: 'horizontal',
        text: words.mm(setting.fence),
        reading: 'fence',
      },
      {
        from: [edge?.[0] ?? 0, 0],
        to: edge ?? [0, 0],
        direction: 'vertical',
        text: words.mm(edge?.[1] ?? 0),
      },
    ],
    inputs: [
      {
        path: parameterPath('beltGap'),
        from: face(-v.base / 2),
        to: [l.base.front, -v.base / 2],
        direction: 'horizontal',
      },
      {
        path: parameterPath('base'),
        from: [l.base.back, -v.base],
        to: [l.base.back, 0],
        direction: 'vertical',
      },
      {
        path: parameterPath('edgeHeight'),
        from: stood(frame, [l.tailBack, 0]),
        to: stood(frame, [l.tailBack, v.edgeHeight]),
        direction: 'aligned',
        ...(edge === undefined ? {} : { marks: edge }),
      },
    ],
  };
};
