import {
  hollowRange,
  hull,
  interval,
  pushRange,
  text,
  wrapOn,
  type Blade,
  type Design,
  type EdgeRestPlan,
  type HollowRange,
  type HollowStanding,
  type Interval,
  type Limit,
  type PushRange,
  type Reach,
  type ReachBox,
  type Side,
  type SideRange,
} from '../../src/family/index.ts';
import { shiftsOf } from '../shared/needs-of.ts';
import { FRICTION } from '../shared/friction.ts';
import { WIDEST_GAP } from '../shared/checks/ranges.ts';
import { byBox, LEFT_TRAVEL } from '../shared/reach.ts';
import { runningGrowth } from '../shared/rules.ts';
import { bevelOf } from './blade.ts';
import { CORNER_MARGIN, LIP_MARGIN, WRAP_MARGIN } from './checks/ranges.ts';
import type { EdgeContext } from './context.ts';
import type { WheelStand } from './site.ts';

const words = text.family.edgeRest.reach;

/** A pass that takes less is none, mm. */
const LEAST_DEPTH = 0.01;

const { minus, over, plus, point, squareRoot, times } = interval;

export interface Reached {
  readonly design: Design;
  readonly plan: EdgeRestPlan;
  readonly context: EdgeContext;
}

/** One belt on one side of one of the blades in question. */
interface Case {
  readonly blade: Blade;
  readonly side: Side;
  readonly last: boolean;
  readonly depth: Interval;
  readonly stand: WheelStand;
  readonly shift: number;
  readonly standing: HollowStanding;
  readonly bar: HollowRange;
}

/** A side as it comes: its bevel, and its edge as `cutsOf` shares it out. */
const sideOf = (blade: Blade, side: Side, thickness: Interval): SideRange => {
  const half = over(thickness, point(2));
  const { wanted, shareLeft } = blade.edge;
  const angle = bevelOf(blade, side);
  const other = bevelOf(blade, side === 'left' ? 'right' : 'left');
  if (angle === undefined) return { edge: half, angle };
  const share = side === 'left' ? shareLeft : 1 - shareLeft;
  return { edge: other === undefined ? minus(point(wanted), half) : point(wanted * share), angle };
};

const hollowSides = ({ bevels }: Blade): Side[] =>
  (['left', 'right'] as const).filter((side) => bevels[side].kind === 'hollow');

/** Answers about bars, each found once: both sides of a blade, and its blades, are often alike. */
const byBar = <T>(make: (bar: HollowRange) => T): ((bar: HollowRange) => T) => {
  const made = new Map<string, T>();
  return (bar) => {
    const key = JSON.stringify(bar);
    const found = made.get(key) ?? make(bar);
    made.set(key, found);
    return found;
  };
};

/** Every belt, side and bevel that the blades of a box would see. */
const casesOf =
  ({ design, context: { v, stands } }: Reached) =>
  ({ across: centre, up, run: thickness }: ReachBox): Case[] => {
    const { shifts } = shiftsOf(stands);
    const standingOf = byBar(hollowRange);
    return design.blades.flatMap((blade) =>
      hollowSides(blade).flatMap((side) => {
        const other = side === 'left' ? 'right' : 'left';
        const [near, far] = [sideOf(blade, side, thickness), sideOf(blade, other, thickness)];
        const isBevelled = near.angle !== undefined || far.angle !== undefined;
        const width = isBevelled ? point(blade.edge.wanted) : thickness;
        return design.sequence.flatMap((pass, i): Case[] => {
          const stand = stands[i];
          if (stand === undefined) return [];
          const last = i === design.sequence.length - 1;
          const depth = minus(up, point(last ? 0 : (pass.depthLeft ?? 0)));
          const { wheel } = stand;
          const bar = { thickness, centre, depth, near, far, width, wheel, lipHeight: v.lipHeight };
          const standing = standingOf(bar);
          return [{ blade, side, last, depth, stand, shift: shifts[i] ?? 0, standing, bar }];
        });
      }),
    );
  };

/** From the abrasive to a point `behind` the lip's face and `up` over the seat. */
const toWheel = (
  { stand: { wheel }, standing: { lip } }: Case,
  behind: number,
  up: number,
): Interval => {
  const level = plus(point(wheel.radius - behind), lip);
  const square = point((wheel.drop - up) ** 2);
  return minus(squareRoot(plus(times(level, level), square)), point(wheel.radius));
};

/** Web of the finished blade: what either side leaves of its half, hollow or as it comes. */
const webOf =
  (cases: (box: ReachBox) => readonly Case[]) =>
  (box: ReachBox): Interval => {
    const finished = cases(box).filter(({ last }) => last);
    return hull(
      finished.map(({ blade, side, standing }) => {
        const other = side === 'left' ? 'right' : 'left';
        const across = finished.find((one) => one.blade === blade && one.side === other);
        if (across) return plus(standing.left, across.standing.left);
        const { edge, angle } = sideOf(blade, other, box.run);
        const half = over(box.run, point(2));
        if (angle === undefined) return plus(standing.left, half);
        const lean = point(angle);
        const rise = over(interval.sine(lean), interval.cosine(lean));
        const low = plus(
          edge,
          times(interval.positive(standing.lower), times(rise, interval.cosine(lean))),
        );
        return plus(standing.left, [Math.min(low[0], half[0]), half[1]]);
      }),
    );
  };

/** The least of one range less the greatest of another, where each holds several. */
const leastLess = (many: readonly Interval[], others: readonly Interval[]): Interval =>
  minus(
    [Math.min(...many.map(([low]) => low)), Math.min(...many.map(([, high]) => high))],
    [Math.max(...others.map(([low]) => low)), Math.max(...others.map(([, high]) => high))],
  );

/** The push window of every case, asked for last: it takes the longest. */
const windowsOf = (
  { design, context: { v } }: Reached,
  cases: (box: ReachBox) => readonly Case[],
): ((box: ReachBox) => PushRange[]) => {
  const sign = design.grinder.belt.direction === 'up' ? -1 : 1;
  const pushing = {
    friction: [sign * FRICTION[0], sign * FRICTION[1]],
    reserve: v.pushReserve,
    wheelShare: v.wheelShare,
  } as const;
  return byBox((box) => {
    const standings = new Map(
      cases(box).map(({ bar, standing }) => [JSON.stringify(bar), { bar, standing }]),
    );
    return [...standings.values()].map(({ bar, standing }) => pushRange(bar, standing, pushing));
  });
};

/** What the fixture as it is built holds any hollow to. */
export const reachOf = (reached: Reached): Reach => {
  const { design, plan, context } = reached;
  const { v, rig, x } = context;
  const { slide } = rig.l;
  const cases = byBox(casesOf(reached));
  const windows = windowsOf(reached, cases);
  const overAll =
    (value: (one: Case) => Interval) =>
    (box: ReachBox): Interval =>
      hull(cases(box).map(value));
  const running = runningGrowth(design) + v.runningClearance;
  const strip = v.lip === 'strip';
  const wheel = design.grinder.wheels.find(({ id }) => id === plan.wheel);
  const backing = context.stands[0]?.backing;
  const wrapped = wheel && backing && wrapOn(design.grinder, backing, wheel);
  // A wheel that no belt lies on gives no wrap, and so no reach.
  const wrap = (wrapped?.ok && wrapped.value) || { from: NaN, to: NaN };
  const limits: Limit[] = [
    {
      id: 'depth',
      label: words.left,
      unit: 'mm',
      atLeast: LEAST_DEPTH,
      found: overAll(({ depth }) => depth),
    },
    {
      id: 'travel',
      label: words.travel,
      unit: 'mm',
      atLeast: slide.front - slide.travel + LEFT_TRAVEL,
      atMost: slide.front + slide.travel - LEFT_TRAVEL,
      found: overAll(({ standing: { lip }, shift }) => minus(lip, point(x.lead + shift))),
    },
    {
      id: 'slide',
      label: words.slide,
      unit: 'mm',
      atLeast: running,
      found: overAll((one) => toWheel(one, x.lead, -x.under)),
    },
    {
      id: 'seat',
      label: words.seat,
      unit: 'mm',
      atLeast: running,
      ...(strip ? {} : { atMost: WIDEST_GAP }),
      found: overAll((one) => toWheel(one, 0, 0)),
    },
    ...(strip
      ? [
          {
            id: 'strip',
            label: words.strip,
            unit: 'mm',
            atLeast: running,
            atMost: WIDEST_GAP,
            found: overAll((one) => toWheel(one, v.lipThickness, v.lipHeight)),
          } as const,
        ]
      : []),
    {
      id: 'corner',
      label: words.corner,
      unit: 'mm',
      atLeast: CORNER_MARGIN,
      found: overAll(({ standing }) => minus(point(v.lipHeight), standing.corner)),
    },
    {
      id: 'lower',
      label: words.lower,
      unit: 'mm',
      atLeast: LIP_MARGIN,
      found: overAll(({ standing }) => minus(standing.lower, point(v.lipHeight))),
    },
    {
      id: 'spine',
      label: words.spine,
      unit: 'mm',
      atLeast: 0,
      found: (box) => minus(box.also, overAll(({ standing }) => standing.top)(box)),
    },
    { id: 'web', label: words.web, unit: 'mm', atLeast: v.leastWeb, found: webOf(cases) },
    {
      id: 'wrap-low',
      label: words.wrapLow,
      unit: 'deg',
      atLeast: WRAP_MARGIN,
      found: overAll(({ standing }) => minus(standing.from, point(wrap.from))),
    },
    {
      id: 'wrap-high',
      label: words.wrapHigh,
      unit: 'deg',
      atLeast: WRAP_MARGIN,
      found: overAll(({ standing }) => minus(point(wrap.to), standing.to)),
    },
    {
      id: 'push',
      label: words.push,
      unit: 'mm',
      atLeast: 0,
      found: (box) =>
        leastLess(
          windows(box).map(({ to }) => to),
          windows(box).map(({ from }) => from),
        ),
    },
    {
      id: 'seat-force',
      label: words.seatForce,
      unit: 'ratio',
      atLeast: 0,
      found: (box) => hull(windows(box).map(({ down }) => down)),
    },
  ];
  return {
    axes: {
      across: { label: words.centre, unit: 'mm', from: 6, to: 50, step: 2 },
      up: { label: words.depth, unit: 'mm', from: 0.05, to: 1, step: 0.05 },
      run: { label: words.thickness, unit: 'mm', from: 1, to: 8, step: 0.25 },
      also: { label: words.height, unit: 'mm', from: 10, to: 80, step: 1 },
    },
    limits,
    scope: words.scope,
  };
};
