import { scratchDepth } from '../spine-rest/scratch.ts';
import type { Dial } from '../spine-rest/types.ts';
import { centreAtLipOf, climbByDepth, climbByLip } from './at-lip.ts';
import { lipRoom } from './lip-room.ts';
import { areaOf } from './limits.ts';
import { contactOf, lipPush, type Pushing } from './lip-push.ts';
import { atWheel, placeAtLip } from './place.ts';
import type { Contact } from './push.ts';
import type { HollowCut, HollowRun } from './run.ts';
import type {
  EdgeRestParameters,
  EdgeRestSetting,
  ExpectedHollow,
  HollowedBlade,
  HollowPlace,
  HollowProgress,
} from './types.ts';
import { hollowMargin } from './undercut.ts';
import { wrapMargin } from './wheel.ts';

/** What a setting is described with, besides the run itself. */
export interface Describing {
  readonly parameters: EdgeRestParameters;
  readonly pushing: Pushing;
  readonly pushHeight: number;
  readonly dial: Dial;
  readonly grit: number;
  /** Where the belt lies on the wheel. */
  readonly wrap: Contact;
  /** The last run of the same side: the finished hollows. */
  readonly finished: HollowRun;
}

const ROWS = 6;

/** Middle of the hollow when the wheel first touches, and the rows on the way to the stop. */
const progressOf = ({ at, lip, cuts }: HollowRun, depth: number): HollowProgress[] =>
  Array.from({ length: ROWS }, (_, i) => (depth * (i + 1)) / ROWS).flatMap((d) => {
    const place = cuts.length > 0 ? placeAtLip(at, lip, d) : undefined;
    if (place === undefined) return [];
    const { centre, lower, upper, standing, web } = place;
    return [{ depth: d, centre, lower, upper, tilt: standing.tilt, web: web.thickness }];
  });

/** The last place that the lip guides and whose hollow ends before the spine. */
const tipOf = (places: readonly (HollowPlace | undefined)[]): number =>
  places.findLastIndex((place) => place?.guided === true && !place.limits.atSpine);

const expectedOf = ({ work, places }: HollowCut): ExpectedHollow[] => {
  const at = { heel: work.heel, middle: work.middle, tip: tipOf(places) };
  return (['heel', 'middle', 'tip'] as const).flatMap((where): ExpectedHollow[] => {
    const place = places[at[where]];
    if (place === undefined) return [];
    const { u, depth, lower, upper } = place;
    return [{ place: where, u, depth, lower, upper }];
  });
};

const volumeOf = ({ work, places }: HollowCut): number => {
  const areas = places.map((place) =>
    place === undefined ? 0 : areaOf(place.section.near, place.height, place.circle),
  );
  return work.stations.reduce((sum, { u }, i) => {
    const next = work.stations[i + 1];
    return next === undefined
      ? sum
      : sum + (((areas[i] ?? 0) + (areas[i + 1] ?? 0)) / 2) * (next.u - u);
  }, 0);
};

const marginOf = (cut: HollowCut, run: HollowRun, d: Describing): number => {
  if (run.last) return 0;
  const i = cut.work.reference;
  const place = cut.places[i];
  const done = d.finished.cuts.find(({ work }) => work === cut.work)?.places[i];
  if (place === undefined || done === undefined) return -Infinity;
  const { lipHeight, settingTolerance: tolerance } = d.parameters;
  const at = atWheel(place.section, cut.wish, run.wheel, lipHeight);
  const slack = { scratch: scratchDepth(d.grit), tolerance };
  return hollowMargin(at, run.lip, cut.depth, done.circle, slack);
};

const bladeOf = (cut: HollowCut, run: HollowRun, d: Describing): HollowedBlade => ({
  blade: cut.work.blade.name,
  places: cut.places.flatMap((place) => place ?? []),
  expected: expectedOf(cut),
  volume: volumeOf(cut),
  undercutMargin: marginOf(cut, run, d),
});

/** Place of a run at the bevel place of its first blade. */
export const referenceOf = ({ cuts: [first] }: HollowRun): HollowPlace | undefined =>
  first?.places[first.work.reference];

/** The centre at which a run's wheel first touches; the stop's where there is none. */
export const firstCentreOf = ({ at, lip }: HollowRun, place: HollowPlace): number =>
  centreAtLipOf(at, lip, 0) ?? place.centre;

/** Describes one belt on one side; undefined where the first blade's bevel place is not reached. */
export const describeHollow = (run: HollowRun, d: Describing): EdgeRestSetting | undefined => {
  const place = referenceOf(run);
  if (place === undefined) return undefined;
  const { pass, step, side, wheel, lip, at } = run;
  const { lipHeight, lipThickness } = d.parameters;
  const contact = contactOf(at, place);
  const firstCentre = firstCentreOf(run, place);
  return {
    id: `${step}-${side}`,
    step,
    side,
    belt: pass.belt,
    backing: pass.backing,
    wheel: { radius: wheel.radius, drop: wheel.drop },
    lip,
    tilt: place.standing.tilt,
    faceTilt: place.standing.tilt + at.face.angle,
    depth: place.depth,
    centre: place.centre,
    lower: place.lower,
    upper: place.upper,
    web: place.web,
    roomAtSeat: lipRoom(wheel.radius, lip, wheel.drop, 0),
    roomAtTop: lipRoom(wheel.radius, lip - lipThickness, wheel.drop, lipHeight) + lipThickness,
    climb: {
      perDepth: climbByDepth(at, lip, place.depth),
      perLip: climbByLip(at, lip, place.depth),
    },
    firstCentre,
    progress: progressOf(run, place.depth),
    dial: d.dial,
    push: lipPush(at, place, firstCentre, d.pushing, d.pushHeight),
    contact,
    wrapMargin: wrapMargin(d.wrap, contact),
    scratch: scratchDepth(d.grit),
    blades: run.cuts.map((cut) => bladeOf(cut, run, d)),
  };
};
