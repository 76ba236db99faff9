import {
  atan,
  capScrew,
  chain,
  countersunkScrew,
  degrees,
  fail,
  ok,
  problem,
  raisedTo,
  shapeOf,
  text,
  threadInSteel,
  washer,
  type Design,
  type EdgeRestPlan,
  type Issue,
  type Result,
} from '../../src/family/index.ts';
import { contextFrom } from '../shared/context-of.ts';
import { MIDDLE_SHIFT, type Layout } from '../shared/layout/layout.ts';
import { THREAD } from '../shared/layout/threads.ts';
import { stopDistance } from '../shared/layout/stop-distance.ts';
import { GUIDE } from '../shared/layout/sizes.ts';
import { span, type Needs, type Range } from '../shared/needs.ts';
import { behindOf, joined, rangeOf, shiftsOf } from '../shared/needs-of.ts';
import type { Context as Rig } from '../shared/parts/context.ts';
import type { Values } from './parameters.ts';
import { padContact } from './place/hand.ts';
import { collarRoom, heelOf, type CollarRoom } from './collar-room.ts';
import type { EdgeContext, Extra } from './context.ts';
import { frontAt, gaugeHeight, lipAtPin, type WheelStand } from './site.ts';
import { LIP } from './sizes.ts';
import { FARTHEST_PAD, zeroPinOf, type ZeroPin } from './zero-pin.ts';

/** Height of the seat above the top of the rest. */
export const stackOf = (v: Values): number => v.base + 2 * v.plate + v.wear + v.lipThickness;

/**
 * From the belt's middle to the end of a strip, which ends with the belt so that no ricasso meets
 * it, or to the inner ends of pads, which keep clear of the wandering belt.
 */
export const lipEnd = ({ grinder }: Design, v: Values): number =>
  grinder.belt.width / 2 + (v.lip === 'pads' ? grinder.belt.tracking + LIP.padRoom : 0);

const screwLengthOf = (v: Values): number | undefined => {
  const grip = v.wear + v.lipThickness;
  const need = threadInSteel(LIP.thread);
  return countersunkScrew(LIP.thread).lengths.findLast(
    (length) => length >= grip + need && length <= grip + v.plate - LIP.screwEnd,
  );
};

const extraOf = (
  design: Design,
  v: Values,
  plan: EdgeRestPlan,
  stands: readonly WheelStand[],
  screwLength: number,
  pin: ZeroPin,
  { overhang }: CollarRoom,
): Extra => {
  const under = v.wear + v.lipThickness;
  const rise = v.plate + under;
  // All that the edge stands on.
  const half = design.grinder.belt.width / 2 + v.stepWing + overhang;
  const end = lipEnd(design, v);
  // Whole in the middle piece, however narrow the belt.
  const inner = Math.min(12, end - LIP.screwRoom);
  const noseFront = Math.max(...stands.map(({ wheel }) => frontAt(wheel, rise, v.noseGap)));
  const leads = plan.settings.map(({ lip, step }) => {
    const stand = stands[step - 1];
    return stand ? lip - frontAt(stand.wheel, under, v.noseGap) : Infinity;
  });
  const last = plan.settings.at(-1);
  const lastStand = stands.at(-1);
  return {
    rise,
    noseFront,
    foot: Math.max(...plan.settings.map((setting) => padContact(setting, plan.pushHeight))),
    lead: Math.min(...leads),
    under,
    half,
    lipEnd: end,
    pads: v.lip === 'pads',
    // Equal pieces stand at both ends: a screw through their middle finds its hole in either.
    screws: [-(end + half) / 2, -inner, inner, (end + half) / 2],
    screwLength,
    gauge: last && lastStand && gaugeHeight(lastStand.wheel, last.lip),
    pin,
    zeros: stands.map(({ wheel }) => lipAtPin(wheel, pin.diameter / 2, v.lipHeight)),
  };
};

/** A range about the same middle, at least as long as asked. */
const widened = (range: Range, length: number): Range => {
  // Travels are rounded up: a hair less than the whole keeps the same one.
  const more = Math.max(0, length - 1e-6 - span(range)) / 2;
  return { min: range.min - more, max: range.max + more };
};

const needsFor = (
  design: Design,
  v: Values,
  plan: EdgeRestPlan,
  stands: readonly WheelStand[],
  x: Extra,
  { swing }: CollarRoom,
): Needs => {
  const { shifts } = shiftsOf(stands);
  // Front of the lip slide when the lip stands at y on the belt of a step.
  const front = (lip: number): number => lip - x.lead;
  const fronts = plan.settings.map(({ lip }) => front(lip));
  const collar = collarAt(design, v, plan, x);
  const tops = plan.settings.flatMap(({ blades }) =>
    blades.flatMap(({ places }) =>
      places.map(({ height, standing }) => standing.origin[1] + height),
    ),
  );
  const onBase = rangeOf([
    ...plan.settings.map(({ lip, step }) => front(lip) - (shifts[step - 1] ?? 0)),
    ...x.zeros.map((zero, i) => front(zero) - (shifts[i] ?? 0)),
  ]);
  return {
    beltHalf: design.grinder.belt.width / 2,
    lean: 0,
    shift: widened(rangeOf(shifts), v.builtNoseTravel - 2 * v.travelReserve),
    setoff: rangeOf(fronts),
    onBase: widened(onBase, v.builtTravel - 2 * (v.travelReserve + MIDDLE_SHIFT)),
    edgeTop: Math.max(...tops) + x.rise,
    pad: plan.pushHeight + x.rise,
    behind: joined(
      design.blades.map((blade) => behindOf(blade, -collar - GUIDE.collarWidth, -collar)),
    ),
    stop: stopOf(design, v, plan),
    lastSetoff: fronts.at(-1) ?? 0,
    swing,
  };
};

/** From the plunge to the belt's middle at the plunge stop. */
const atStop = ({ grinder }: Design, { plungeMargin }: Values): number =>
  grinder.belt.width / 2 + plungeMargin;

/** How blades stand on their edge there: one that falls away from the spine raises its tip. */
const stopOf = (design: Design, v: Values, plan: EdgeRestPlan): Needs['stop'] => ({
  slopes: design.blades.map((blade) => degrees(atan(shapeOf(blade).edge.slope(atStop(design, v))))),
  stands: plan.settings.flatMap(({ blades }) =>
    blades.flatMap(({ places }) =>
      places.map(({ standing: { tilt, origin } }) => ({ tilt, rise: origin[1] })),
    ),
  ),
});

/** From the plunge to the face of the stop collar that meets the end of the seat, mm. */
const collarAt = (design: Design, v: Values, plan: EdgeRestPlan, { half }: Extra): number => {
  const tangs = design.blades.map(({ tang }) => tang.thickness);
  return stopDistance({
    half,
    u: atStop(design, v),
    deep: Math.min(v.wear, LIP.collarReach),
    inner: Math.max(...tangs) / 2,
    outer: Math.max(...tangs) / 2 + v.plate,
    stop: stopOf(design, v, plan),
  });
};

/**
 * What the edge rest has otherwise: the nose reaches forward under the wheel, the collar below the
 * edge beside the wear strip and no deeper than over the nose screws, and the push block's foot
 * ends before the guide.
 */
const adapted =
  (design: Design, v: Values, plan: EdgeRestPlan, x: Extra) =>
  (l: Layout): Layout => {
    const edges = design.blades.map(heelOf);
    const { headHeight } = capScrew(THREAD.main);
    const screws = x.rise - headHeight - washer(THREAD.main, 'large').thickness;
    const top = Math.max(...edges) + Math.min(LIP.collarReach, screws - LIP.collarRoom);
    const front = v.guide === 'strips' ? l.slide.strips.front : Infinity;
    const foot = Math.min(l.push.foot, front - x.foot - l.push.padReach - LIP.footRoom);
    const distance = collarAt(design, v, plan, x);
    return {
      ...l,
      nose: { ...l.nose, front: x.noseFront, depth: l.nose.back - x.noseFront },
      collar: { ...l.collar, distance, top: Math.max(top, l.collar.top) },
      push: { ...l.push, foot, half: l.push.half - LIP.blockRoom },
    };
  };

/** Travels of a base already built that are less than this fixture needs. */
const builtIssues = (v: Values, { l }: Rig): Issue[] => {
  const { issues, parameters: labels } = text.family.edgeRest;
  return (
    [
      ['builtTravel', 2 * l.slide.travel],
      ['builtNoseTravel', 2 * l.nose.travel],
    ] as const
  ).flatMap(([key, needed]) => {
    const built = v[key];
    if (built === 0 || needed <= built + 1e-6) return [];
    const why = issues.builtTooShort(labels[key].label, built, needed);
    return [raisedTo(problem('built-too-short', `fixture.parameters.${key}`, why), needed)];
  });
};

/** Everything that parts and placements are drawn from. */
export const edgeContext = (
  design: Design,
  v: Values,
  plan: EdgeRestPlan,
  stands: readonly WheelStand[],
): Result<EdgeContext> => {
  const screwLength = screwLengthOf(v);
  if (screwLength === undefined) {
    const grip = v.wear + v.lipThickness;
    const why = text.family.edgeRest.issues.noScrew(
      LIP.thread,
      grip + threadInSteel(LIP.thread),
      grip + v.plate,
    );
    return fail(problem('no-screw', 'fixture.parameters.wear', why));
  }
  const end = lipEnd(design, v);
  const pin = zeroPinOf(v.lip === 'pads', end);
  if (pin === undefined) {
    const why = text.family.edgeRest.issues.noPin(end, FARTHEST_PAD);
    return fail(problem('no-zero-pin', 'fixture.parameters.lip', why));
  }
  const drawn = (room: CollarRoom): Result<EdgeContext> => {
    const x = extraOf(design, v, plan, stands, screwLength, pin, room);
    const rig = contextFrom({
      design,
      v,
      needs: needsFor(design, v, plan, stands, x, room),
      offset: shiftsOf(stands).middle,
      lean: 0,
      stepContact: 0,
      adapt: adapted(design, v, plan, x),
    });
    return chain(rig, (found) => ok({ v, rig: found, x, stands }));
  };
  return chain(drawn({ overhang: 0, swing: 0 }), (first) => {
    const room = collarRoom(design, plan, first);
    return chain(room ? drawn(room) : ok(first), (context) => {
      const short = builtIssues(v, context.rig);
      return short.length > 0 ? fail(...short) : ok(context);
    });
  });
};
