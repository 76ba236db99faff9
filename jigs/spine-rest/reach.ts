import {
  cos,
  type Design,
  faceDepth,
  hull,
  interval,
  type Interval,
  type Limit,
  pushRoom,
  radians,
  type Reach,
  sin,
  type SpineRestPlan,
  standingRange,
  text,
} from '../../src/family/index.ts';
import { shiftsOf } from '../shared/needs-of.ts';
import type { Values } from './parameters.ts';
import type { Context } from '../shared/parts/context.ts';
import { FRICTION } from '../shared/friction.ts';
import {
  bevelLimits,
  byBox,
  edgeOf,
  LEFT_TRAVEL,
  sectionReach,
  spineRadii,
  type SectionBox,
} from '../shared/reach.ts';
import { PLATEN_MARGIN } from '../shared/checks/ranges.ts';
import type { Stand } from '../shared/site.ts';

const words = text.family.spineRest.reach;
const { labels } = text.family.spineRest.checks;

/** As the checks of one design hold it, mm. */
const STEP_MARGIN = 1;
const GAP_MARGIN = 0.1;

/** One belt on one side of the blades in question. */
interface Case {
  readonly section: Parameters<typeof standingRange>[0];
  readonly stand: ReturnType<typeof standingRange>;
  readonly shift: number;
  /** From the seat to the bare platen's own measure, mm. */
  readonly toPlaten: number;
}

export interface Reached {
  readonly design: Design;
  readonly v: Values;
  readonly plan: SpineRestPlan;
  readonly context: Context;
  readonly stands: readonly Stand[];
}

/** Every belt and side that the blades of a box would see. */
const casesOf =
  ({ design, plan, context, stands }: Reached) =>
  (box: SectionBox): Case[] => {
    const { shifts } = shiftsOf(stands);
    const spineRadius = spineRadii(design);
    const t = radians(plan.lean);
    return design.sequence.flatMap((pass, i) => {
      const stand = stands[i];
      if (stand === undefined) return [];
      const depth = faceDepth(design.grinder, stand.belt, stand.backing);
      const section = {
        height: box.height,
        thickness: box.thickness,
        angle: interval.plus(box.angle, interval.point(pass.steeper)),
        edge: edgeOf(design, pass),
        spineRadius,
        lean: plan.lean,
      };
      return [
        {
          section,
          stand: standingRange(section),
          shift: shifts[i] ?? 0,
          toPlaten: (context.l.levels.stack - depth * sin(t)) / cos(t),
        },
      ];
    });
  };

/** What the fixture as it is built holds any blade to. */
export const reachOf = (reached: Reached): Reach => {
  const { design, v, plan, context } = reached;
  const { l } = context;
  const cases = byBox(casesOf(reached));
  const sign = design.grinder.belt.direction === 'up' ? -1 : 1;
  const over =
    (value: (one: Case) => Interval) =>
    (box: SectionBox): Interval =>
      hull(cases(box).map(value));
  const less = (a: Interval, b: number): Interval => interval.minus(a, interval.point(b));
  const { platen } = design.grinder;
  const c = cos(radians(plan.lean));
  const limits: Limit<SectionBox>[] = [
    {
      id: 'travel',
      label: words.travel,
      unit: 'mm',
      atLeast: l.slide.front - l.slide.travel + LEFT_TRAVEL,
      atMost: l.slide.front + l.slide.travel - LEFT_TRAVEL,
      found: over(({ stand, shift }) => less(stand.setoff, shift)),
    },
    {
      id: 'bearing',
      label: labels.bearing,
      unit: 'mm',
      atLeast: v.leastBearing,
      found: over(({ stand }) => less(stand.corner, v.noseGap)),
    },
    {
      id: 'gap',
      label: labels.gapSpine,
      unit: 'mm',
      atLeast: GAP_MARGIN,
      found: ({ thickness }) => less(thickness, v.noseGap),
    },
    {
      id: 'step',
      label: words.step,
      unit: 'mm',
      atMost: v.plate - STEP_MARGIN,
      found: over(({ stand }) => stand.step),
    },
    ...bevelLimits(design, (box) =>
      cases(box).map(({ section: { edge }, stand: { bevel } }) => ({ edge, bevel })),
    ),
    {
      id: 'push',
      label: words.push,
      unit: 'mm',
      atLeast: v.padMargin,
      found: over(({ section, stand }) =>
        hull(FRICTION.map((m) => pushRoom(section, stand, v.pushReserve, sign * m))),
      ),
    },
    ...(platen.kind === 'none'
      ? []
      : [
          {
            id: 'platen',
            label: labels.contactHigh,
            unit: 'mm',
            atLeast: PLATEN_MARGIN,
            found: over(({ stand, toPlaten }) =>
              interval.minus(
                interval.point(platen.top - platen.edgeRadius),
                less(interval.over(stand.edge, interval.point(c)), -toPlaten),
              ),
            ),
          } as const,
        ]),
  ];
  return sectionReach(limits, words.scope);
};
