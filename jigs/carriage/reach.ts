import {
  carriageRange,
  type CarriageStanding,
  cos,
  faceDepth,
  highestPushRange,
  hull,
  interval,
  type Interval,
  type Limit,
  radians,
  type Reach,
  sin,
  text,
} from '../../src/family/index.ts';
import { PLATEN_MARGIN } from '../shared/checks/ranges.ts';
import { FRICTION } from '../shared/friction.ts';
import {
  bevelLimits,
  byBox,
  edgeOf,
  LEFT_TRAVEL,
  sectionReach,
  type SectionBox,
} from '../shared/reach.ts';
import type { Context } from './context.ts';
import { FOOT, HEEL, JAW } from './layout/sizes.ts';
import { overFence } from './rules.ts';

const words = text.family.carriage.reach;
const { labels } = text.family.carriage.checks;

/** Between base and fence, and between tang and clamp screw (M6), mm. */
const BEFORE_FENCE = 0.5;
const CLAMP_RADIUS = 3;
const BESIDE_CLAMP = 0.5;
/** How much another ricasso may measure under the clamp screw, mm. */
const GRIPPED = 0.5;

const { point, minus, plus, times } = interval;

/** One belt on one side of the blades in question. */
interface Case extends CarriageStanding {
  readonly edge: Interval;
  /** From the base to the bare platen's own measure, mm. */
  readonly toPlaten: number;
}

/** Every belt and side that the blades of a box would see. */
const casesOf =
  ({ design, v, l, plan, grips, stands }: Context) =>
  (box: SectionBox): Case[] => {
    const t = radians(plan.lean);
    const midplane = hull(
      grips.map(({ onTang, thickness }) =>
        interval.over(onTang ? point(thickness) : box.thickness, point(2)),
      ),
    );
    return design.sequence.flatMap((pass, i) => {
      const stand = stands[i];
      if (stand === undefined) return [];
      const depth = faceDepth(design.grinder, stand.belt, stand.backing);
      const edge = edgeOf(design, pass);
      const standing = carriageRange({
        thickness: box.thickness,
        angle: plus(box.angle, point(pass.steeper)),
        edge,
        midplane,
        carriage: { base: v.length, footRadius: FOOT.radius, tipRadius: HEEL.tipRadius },
        forward: l.forward,
        edgeHeight: v.edgeHeight,
        lean: plan.lean,
      });
      return [{ ...standing, edge, toPlaten: (v.base - depth * sin(t)) / cos(t) }];
    });
  };

/** Height of the push block's middle over the base, as it rises with the tilt. */
const pushHeight = ({ l }: Context, { tilt }: CarriageStanding): Interval => {
  const [r, low] = [point(FOOT.radius), point((l.palm.bottom + l.soleBottom) / 2 - FOOT.radius)];
  const [s, c] = [interval.sine(tilt), interval.cosine(tilt)];
  return plus(r, times(low, c), times(point(l.palm.back), s));
};

type Over = (value: (one: Case) => Interval) => Limit<SectionBox>['found'];

/** Fence, heel screw and sole: how far the carriage as built can be set. */
const settingLimits = (c: Context, over: Over): Limit<SectionBox>[] => {
  const { v, l, plan } = c;
  const middle = l.fence.rear + FOOT.radius;
  const travel = l.fence.travel - LEFT_TRAVEL;
  const most = Math.max(...plan.settings.map(({ heel }) => heel.extension));
  return [
    {
      id: 'fence',
      label: words.fence,
      unit: 'mm',
      atLeast: Math.max(middle - travel, v.beltGap + BEFORE_FENCE + l.fence.depth + FOOT.radius),
      atMost: middle + travel,
      found: over(({ footCentre }) => footCentre),
    },
    {
      id: 'heel',
      label: words.heel,
      unit: 'mm',
      atLeast: 0,
      // As far as the design goes: its spare thread stays in hand.
      atMost: most + HEEL.spare / 2,
      found: over(({ extension }) => extension),
    },
    {
      id: 'track',
      label: words.track,
      unit: 'mm',
      atLeast: l.base.heelTrack.from - LEFT_TRAVEL,
      atMost: l.base.heelTrack.to + LEFT_TRAVEL,
      found: over(({ footCentre, heelBehind }) => plus(footCentre, heelBehind)),
    },
    {
      id: 'dip',
      label: words.dip,
      unit: 'mm',
      atLeast: 0,
      found: over(({ tilt }) =>
        minus(
          plus(
            point(FOOT.radius - overFence(v, c.screws.fence)),
            times(point(l.soleBottom - FOOT.radius), interval.cosine(tilt)),
          ),
          times(point(l.forward), interval.sine(tilt)),
        ),
      ),
    },
  ];
};

/** What the jaw grips: tang or ricasso stands with the height of the blade over the clamp screw. */
const gripLimits = ({ v, l, grips }: Context): Limit<SectionBox>[] => {
  const drops = hull(grips.map(({ onTang, blade }) => point(onTang ? blade.tang.drop : 0)));
  const gripped = grips.filter(({ onTang }) => !onTang).map(({ thickness }) => thickness);
  return [
    {
      id: 'grip',
      label: words.grip,
      unit: 'mm',
      atLeast: CLAMP_RADIUS + BESIDE_CLAMP,
      atMost: Math.min(l.jawTop, l.earTop) - JAW.leastGrip - l.jawScrew,
      found: ({ height }) => minus(plus(point(v.edgeHeight - l.jawScrew), drops), height),
    },
    ...(gripped.length === 0
      ? []
      : [
          {
            id: 'gripped',
            label: words.gripped,
            unit: 'mm',
            atLeast: Math.min(...gripped) - GRIPPED,
            atMost: Math.max(...gripped) + GRIPPED,
            found: ({ thickness }: SectionBox) => thickness,
          } as const,
        ]),
  ];
};

/** What the fixture as it is built holds any blade to. */
export const reachOf = (c: Context): Reach => {
  const { design, v, plan } = c;
  const { platen, belt } = design.grinder;
  const cases = byBox(casesOf(c));
  const over: Over = (value) => (box) => hull(cases(box).map(value));
  const sign = belt.direction === 'up' ? -1 : 1;
  const limits: Limit<SectionBox>[] = [
    ...settingLimits(c, over),
    ...gripLimits(c),
    ...bevelLimits(design, cases),
    {
      id: 'push',
      label: labels.push,
      unit: 'mm',
      atLeast: 0,
      found: (box) =>
        minus(
          over((one) =>
            hull(FRICTION.map((m) => highestPushRange(one, plan.lean, v.heelReserve, sign * m))),
          )(box),
          over((one) => pushHeight(c, one))(box),
        ),
    },
    ...(platen.kind === 'none'
      ? []
      : ([
          {
            id: 'platen-low',
            label: labels.contactLow,
            unit: 'mm',
            atLeast: PLATEN_MARGIN,
            found: over(({ low, toPlaten }) =>
              minus(plus(low, point(toPlaten)), point(platen.bottom + platen.edgeRadius)),
            ),
          },
          {
            id: 'platen-high',
            label: labels.contactHigh,
            unit: 'mm',
            atLeast: PLATEN_MARGIN,
            found: over(({ high, toPlaten }) =>
              minus(point(platen.top - platen.edgeRadius), plus(high, point(toPlaten))),
            ),
          },
        ] as const)),
  ];
  // The jaw takes tangs over a few millimetres only: bands must be narrower to lie within.
  return sectionReach(limits, words.scope, 2.5);
};
