import { root } from '../numeric/root.ts';
import { circleOn, type EdgeSection, type FaceLine } from './half.ts';
import { standingFor, type Standing, type WheelAtSeat } from './stand.ts';

/** What one question about a section at a wheel does not change. */
export interface AtWheel {
  readonly section: EdgeSection;
  /** The face that is hollowed. */
  readonly face: FaceLine;
  readonly wheel: WheelAtSeat;
  readonly lipHeight: number;
}

/** The section while the wheel is `depth` deep with the middle of the hollow at `centre`. */
export const standingAt = (
  { section, face, wheel, lipHeight }: AtWheel,
  centre: number,
  depth: number,
): Standing | undefined =>
  standingFor(section, circleOn(face, wheel.radius, centre, depth), wheel.drop, lipHeight);

/** Centres tried in finding where a section stands at all. */
const TRIED = 16;

/** Halvings between a centre at which it stands and one at which it does not. */
const HALVINGS = 40;

/**
 * From the lowest to the highest centre, along the face, at which the section stands at the wheel:
 * the whole side, unless the wheel is too high or too low for its lower or upper part, or would lay
 * the blade down there. Undefined when it stands nowhere.
 */
const standingCentres = (at: AtWheel, depth: number): readonly [number, number] | undefined => {
  const { height } = at.section;
  const stands = (centre: number): boolean => standingAt(at, centre, depth) !== undefined;
  if (stands(0) && stands(height)) return [0, height];
  const tried = Array.from({ length: TRIED + 1 }, (_, i) => (height * i) / TRIED);
  const [low, high] = [tried.find(stands), tried.findLast(stands)];
  if (low === undefined || high === undefined) return undefined;
  const end = (inside: number, outside: number): number => {
    let [good, bad] = [inside, outside];
    for (let i = 0; i < HALVINGS; i += 1) {
      const middle = (good + bad) / 2;
      if (stands(middle)) good = middle;
      else bad = middle;
    }
    return good;
  };
  const step = height / TRIED;
  return [low === 0 ? 0 : end(low, low - step), high === height ? height : end(high, high + step)];
};

/** The lips, from and to, that put the wheel on a section at a depth, mm; undefined for none. */
export const lipsFor = (at: AtWheel, depth: number): readonly [number, number] | undefined => {
  const [from, to] = standingCentres(at, depth)?.map((c) => standingAt(at, c, depth)?.lip) ?? [];
  return from === undefined || to === undefined ? undefined : [from, to];
};

/**
 * Centre of the hollow that a lip at `lip` gives at a depth, mm along the face: the other way
 * round from `standingAt`. A lip nearer the wheel lowers it, so the centre is the one root between
 * the edge and the spine; undefined when no centre on the blade puts the lip there.
 */
export const centreAtLipOf = (at: AtWheel, lip: number, depth: number): number | undefined => {
  const excess = (centre: number): number => {
    const standing = standingAt(at, centre, depth);
    return standing === undefined ? NaN : standing.lip - lip;
  };
  const [from, to] = standingCentres(at, depth) ?? [NaN, NaN];
  const ends = [excess(from), excess(to)] as const;
  return ends[0] <= 0 && ends[1] >= 0 ? root(excess, from, to, ends) : undefined;
};

/** Half step of the central differences, mm. */
const STEP = 1e-3;

/** How the centre moves at a lip that stays (per mm of depth) and with the lip (at one depth). */
export interface Climb {
  readonly perDepth: number;
  readonly perLip: number;
}

/** Central difference of the centre of the settled section, by lip and by depth. */
const climb = (at: AtWheel, lip: number, depth: number, dy: number, dd: number): number => {
  const more = centreAtLipOf(at, lip + dy, depth + dd) ?? NaN;
  const less = centreAtLipOf(at, lip - dy, depth - dd) ?? NaN;
  return (more - less) / (2 * STEP);
};

/** How the centre moves with the lip, at one depth. */
export const climbByLip = (at: AtWheel, lip: number, depth: number): number =>
  climb(at, lip, depth, STEP, 0);

/** How it moves at a lip that stays, for each mm of depth. */
export const climbByDepth = (at: AtWheel, lip: number, depth: number): number =>
  climb(at, lip, depth, 0, STEP);
