import { bevelPlace } from '../../blade/bevel.ts';
import type { Blade, Side } from '../../blade/schema.ts';
import type { Certainty } from '../../core/certainty.ts';
import { atan2 } from '../../core/trigonometry.ts';
import { degrees, radians } from '../../core/units.ts';
import { movedDial } from '../../grind/spine-rest/dial.ts';
import { pushWindow, type Pushing } from '../../grind/spine-rest/hold-place.ts';
import { alongFace, contactOf } from '../../grind/spine-rest/push.ts';
import type {
  BladeAtSetting,
  PushWindow,
  SettledPlace,
  SpineRestInput,
  SpineRestLine,
  SpineRestPlan,
  SpineRestSetting,
} from '../../grind/spine-rest/types.ts';
import { undercutMargin } from '../../grind/spine-rest/undercut.ts';
import { barSection } from '../../grind/section/section.ts';
import { text } from '../../text/index.ts';
import { outerFace } from '../hold/strip.ts';
import { along, edgeOf } from '../measure/line.ts';
import { linesOn, surelyReached, type LinePlace } from '../measure/report.ts';
import type { PassResult, SpineRestPass } from '../types.ts';
import { stripProgress, stripSensitivity, stripSetoffPerDegree, type OnStrip } from './progress.ts';
import { acrossStroke, poseAt, seatingIn, stripContact, type Standing } from './stand.ts';
import type { Proved } from './types.ts';

/** One belt of the straight step's plan with what the strip makes of it. */
interface Belt {
  readonly planned: SpineRestSetting;
  readonly result: PassResult;
  readonly pass: SpineRestPass;
  readonly standing: Standing;
  readonly lines: readonly LinePlace[];
  readonly places: readonly SettledPlace[];
}

/** The error of a setting that makers think in, mm. */
const TENTH = 0.1;
/** Error of lines and edges on the grid, mm: see `index.ts`. */
const GRID: Certainty = { kind: 'bounded', by: 0.03, reason: text.virtual.certainty.grid };

const nearest = <T extends { readonly u: number }>(
  places: readonly T[],
  u: number,
): T | undefined =>
  places.reduce<T | undefined>(
    (best, place) =>
      best !== undefined && Math.abs(best.u - u) <= Math.abs(place.u - u) ? best : place,
    undefined,
  );

/** The grind line at place u, straight between its own places. */
const lineAt = (lines: readonly LinePlace[], u: number): LinePlace | undefined => {
  const after = lines.findIndex((place) => place.u >= u);
  const right = lines[after < 0 ? lines.length - 1 : after];
  const left = after > 0 ? lines[after - 1] : right;
  if (left === undefined || right === undefined) return undefined;
  const k = right.u > left.u ? (u - left.u) / (right.u - left.u) : 0;
  const mix = (a: number, b: number): number => a + k * (b - a);
  return {
    u,
    height: mix(left.height, right.height),
    bevelHeight: mix(left.bevelHeight, right.bevelHeight),
    wanted: mix(left.wanted, right.wanted),
    deviation: mix(left.deviation, right.deviation),
    steers: left.steers && right.steers,
  };
};

/** Angle of a bevel that runs straight from the edge to the grind line, degrees. */
const chordOf = ({ thickness, reachedEdge, bevelHeight }: SettledPlace): number =>
  bevelHeight > 0 ? degrees(atan2(thickness / 2 - reachedEdge, bevelHeight)) : 0;

/** The places that the belt comes to: the stroke ends with the strip, before the tip. */
const placesOf = (
  planned: readonly SettledPlace[],
  { result, standing, lines }: Omit<Belt, 'planned' | 'places' | 'pass'>,
): SettledPlace[] => {
  const { side, stroke } = result.pass;
  const edges = edgeOf(result.after, side);
  return planned.flatMap((place): SettledPlace[] => {
    if (!surelyReached(stroke, place.u)) return [];
    const pose = poseAt(result.reached, place.u);
    const line = lineAt(lines, place.u);
    if (pose === undefined || line === undefined) return [];
    const seating = seatingIn(standing, pose, place.u, place.edge);
    const reachedEdge = along(result.after, edges, place.u);
    const ground = { ...place, reachedEdge, bevelHeight: line.bevelHeight };
    return [
      {
        ...ground,
        seating,
        reachedAngle: chordOf(ground),
        leftStanding: Math.max(0, reachedEdge - place.edge),
        strokeTilt: seating.tilt,
      },
    ];
  });
};

const beltsOf = (blade: Blade, plan: SpineRestPlan, { cured }: Proved): Belt[] => {
  const asked = new Map<Side, ReturnType<typeof linesOn>>();
  return plan.settings.flatMap((planned): Belt[] => {
    const result = cured.passes.find(({ pass }) => pass.id === planned.id);
    const at = planned.blades.find((one) => one.blade === blade.name);
    if (result === undefined || at === undefined) return [];
    const { pass } = result;
    if (pass.holding.kind !== 'spine-rest') return [];
    const { setoff, strip, body } = pass.holding;
    if (strip === undefined || body.step.kind !== 'narrow') return [];
    const seat = 2 * body.noseHalf;
    const standing = { shape: cured.shape, strip, at: body.step.at, setoff, lean: plan.lean, seat };
    // Every belt of a rest stands on one nose.
    const linesIn = asked.get(pass.side) ?? linesOn(cured.shape, result.after, pass.side, seat);
    asked.set(pass.side, linesIn);
    const lines = linesIn(result.after, pass.stroke);
    const belt = { result, standing, lines };
    const places = placesOf(at.places, belt);
    return [{ ...belt, planned, places, pass: { ...pass, holding: pass.holding } }];
  });
};

/** The section at the place nearest to u as it stands on its strip at the stop. */
const onStrip = ({ standing, places }: Belt, u: number): OnStrip | undefined => {
  const place = nearest(places, u);
  if (place === undefined) return undefined;
  const { strip, shape, at, lean } = standing;
  return {
    out: outerFace(strip, place.u + at),
    place: {
      height: place.height,
      bottom: strip.bottom - shape.spine.value(place.u),
      near: place.thickness / 2,
      edge: place.edge,
      tilt: radians(place.seating.tilt),
      lean: radians(lean),
    },
  };
};

/** Section, face and seating of a place: what contact and push are computed from. */
const faceAt = (place: SettledPlace) => ({
  section: barSection(place.thickness, place.height, 0),
  face: { edge: place.edge, angle: chordOf(place) },
});

const windowAt = (place: SettledPlace, pushing: Pushing): PushWindow => {
  const { section, face } = faceAt(place);
  return pushWindow(section, face, place.seating, pushing);
};

/** Least margin of one belt against its finished faces, where places steer. */
const marginOf = (belt: Belt, finished: Belt, input: SpineRestInput): number => {
  if (belt === finished) return 0;
  const { scratch } = belt.planned;
  const steering = belt.lines.filter(({ steers }) => steers).map(({ u }) => u);
  const [from, to] = [Math.min(...steering), Math.max(...steering)];
  const margins = belt.places.flatMap((place): number[] => {
    const done = finished.places.find(({ u }) => u === place.u);
    const on = onStrip(belt, place.u);
    if (done === undefined || on === undefined || place.u < from || place.u > to) return [];
    return [
      undercutMargin(
        { edge: place.reachedEdge, angle: chordOf(place) },
        { edge: done.reachedEdge, angle: chordOf(done) },
        done.bevelHeight,
        {
          scratch,
          tolerance: input.parameters.settingTolerance,
          setoffPerDegree: stripSetoffPerDegree(on),
        },
      ),
    ];
  });
  return Math.min(...margins);
};

/** What the plan has of the blade that is ground with the strip. */
const own = ({ planned, standing }: Belt): readonly BladeAtSetting[] =>
  planned.blades.filter(({ blade }) => blade === standing.shape.blade.name);

const bladeAt = (
  belt: Belt,
  finished: Belt,
  input: SpineRestInput,
  pushing: Pushing,
): BladeAtSetting[] =>
  own(belt).map((planned): BladeAtSetting => ({
    ...planned,
    places: belt.places,
    expected: planned.expected.flatMap((expected) => {
      const place = nearest(belt.places, expected.u);
      const { bevelHeight } = place ?? expected;
      return place ? [{ ...expected, bevelHeight, push: windowAt(place, pushing) }] : [];
    }),
    volume: belt.result.volume,
    undercutMargin: marginOf(belt, finished, input),
  }));

/** The near spine corner's distance from the belt above the step, and where strip and step meet. */
const contactsOf = ({ result, standing }: Belt): { corner: number; contact: number }[] =>
  result.reached.map(({ pose }) => {
    const u = pose.m + standing.at;
    const { spine, thickness } = standing.shape;
    return {
      corner: acrossStroke(pose, u, spine.value(u), thickness.value(u) / 2)[0],
      contact: stripContact(standing, pose)[1],
    };
  });

/** Share of the edge's height to push at, and its height, as the straight step's plan finds them. */
const pushOf = (
  belts: readonly Belt[],
  u: number,
  pushing: Omit<Pushing, 'share'>,
  margin: number,
): { readonly height: number; readonly share: number } => {
  const windows = belts.flatMap(({ places }) => {
    const place = nearest(places, u);
    return place ? [windowAt(place, { ...pushing, share: 1 })] : [];
  });
  const low = Math.max(...windows.map(({ from }) => from));
  const edge = Math.min(...windows.map(({ to }) => to));
  const high = edge - margin;
  const height = high > low ? (low + high) / 2 : high;
  return { height, share: height / edge };
};

const lineOf = (line: SpineRestLine, belt: Belt): SpineRestLine => {
  const places = line.places.flatMap((planned): SpineRestLine['places'][number][] => {
    const place = belt.places.find(({ u }) => u === planned.u);
    const ground = lineAt(belt.lines, planned.u);
    if (place === undefined || ground === undefined) return [];
    return [
      {
        ...planned,
        angle: chordOf(place),
        bevelHeight: ground.bevelHeight,
        deviation: ground.bevelHeight - ground.wanted,
        wanted: ground.wanted,
        leftStanding: place.leftStanding,
        certainty: planned.certainty.kind === 'estimate' ? planned.certainty : GRID,
        steers: ground.steers,
      },
    ];
  });
  const off = belt.lines.filter(({ steers }) => steers).map(({ deviation }) => Math.abs(deviation));
  return { ...line, places, greatestDeviation: Math.max(0, ...off) };
};

/**
 * The plan of a spine rest with one blade's strip on a rounded step: every setting, height, push
 * and grind line as the virtual grind with the strip has them. Push windows are those of the section
 * that stands with its strip on the step, which carries higher than a spine does; what the
 * calipers show on the way comes from the section's sum. First contacts are the straight step's: a
 * strip tips the blade no more at its bevel place.
 */
export const planWithStrip = (
  blade: Blade,
  input: SpineRestInput,
  plan: SpineRestPlan,
  cure: Proved,
): SpineRestPlan => {
  const belts = beltsOf(blade, plan, cure);
  const { grinder, parameters: p } = input;
  const sign = grinder.belt.direction === 'up' ? -1 : 1;
  const friction = [sign * p.friction[0], sign * p.friction[1]] as const;
  const u = Math.max(bevelPlace(blade), belts[0]?.pass.stroke.from ?? 0);
  const push = pushOf(belts, u, { friction, reserve: p.reserve }, p.padMargin ?? 0);
  const pushing = { friction, reserve: p.reserve, share: push.share };
  const moves = belts.map(({ planned, standing }) => standing.setoff - planned.setoff);
  const lastOf = (belt: Belt): Belt =>
    belts.findLast(({ pass }) => pass.side === belt.pass.side) ?? belt;

  const settings = belts.flatMap((belt, i): SpineRestSetting[] => {
    const { planned, places, standing } = belt;
    const here = nearest(places, u);
    const on = onStrip(belt, u);
    if (here === undefined || on === undefined) return [];
    const now = moves[i] ?? 0;
    const contacts = contactsOf(belt);
    const bears = places.flatMap((place) => {
      const { section, face } = faceAt(place);
      return contactOf(section, face, place.seating) ?? [];
    });
    const edge = alongFace(here.seating.edge, plan.lean);
    return [
      {
        ...planned,
        setoff: standing.setoff,
        angle: here.seating.angle,
        bevelHeight: here.bevelHeight,
        progress: stripProgress(on, planned.progress),
        dial: movedDial(
          planned.dial,
          { zero: moves[0] ?? now, last: moves[i - 1] ?? now, now },
          p.screwPitch,
          p.divisions,
        ),
        push: windowAt(here, pushing),
        cornerDistance: Math.min(...contacts.map(({ corner }) => corner)),
        stepContact: Math.max(...contacts.map(({ contact }) => contact)),
        contact: [Math.min(edge, ...bears), Math.max(edge, ...bears)],
        blades: bladeAt(belt, lastOf(belt), input, pushing),
      },
    ];
  });
  return {
    ...plan,
    pushHeight: push.height,
    pushShare: push.share,
    settings,
    lines: plan.lines.flatMap((line): SpineRestLine[] => {
      const belt = belts.findLast(({ pass }) => pass.side === line.side);
      return belt && line.blade === blade.name ? [lineOf(line, belt)] : [];
    }),
    sensitivity: plan.sensitivity.map((planned) => {
      const belt = belts.findLast(({ pass }) => pass.side === planned.side);
      const on = belt && onStrip(belt, u);
      return on ? { side: planned.side, ...stripSensitivity(on, TENTH) } : planned;
    }),
  };
};
