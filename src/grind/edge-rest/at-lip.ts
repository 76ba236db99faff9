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
  const { height } = at.section;
  if (!(excess(0) <= 0 && excess(height) >= 0)) return undefined;
  return root(excess, 0, height);
};

/** Half step of the central differences, mm. */
const STEP = 1e-3;

/** How the centre moves at a lip that stays (per mm of depth) and with the lip (at one depth). */
export interface Climb {
  readonly perDepth: number;
  readonly perLip: number;
}

/** Climb of the centre at a lip, by central differences of the settled section. */
export const climbAt = (at: AtWheel, lip: number, depth: number): Climb => {
  const centre = (dy: number, dd: number): number => centreAtLipOf(at, lip + dy, depth + dd) ?? NaN;
  const rate = (more: number, less: number): number => (more - less) / (2 * STEP);
  return {
    perDepth: rate(centre(0, STEP), centre(0, -STEP)),
    perLip: rate(centre(STEP, 0), centre(-STEP, 0)),
  };
};
