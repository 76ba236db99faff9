import { cos } from '../../core/trigonometry.ts';
import { radians } from '../../core/units.ts';
import { bevelHeight, ground } from '../../grind/section/ground.ts';
import { barSection, flipped, type Section } from '../../grind/section/section.ts';
import { angleFor } from '../../grind/spine-rest/angle.ts';
import { giveOfRest, setoffOfLift, type RestStructure } from './give-of-rest.ts';
import type { BudgetQuestion } from './budget.ts';
import type { Departures } from './sides.ts';

/** The causes of error of a spine rest; see `spineRestContributors` for what each one is. */
export type SpineRestCause =
  | 'step'
  | 'yaw'
  | 'dial'
  | 'backlash'
  | 'lock'
  | 'belt'
  | 'wear'
  | 'compression'
  | 'splice'
  | 'backing'
  | 'platen'
  | 'squareness'
  | 'height'
  | 'thickness'
  | 'bow'
  | 'straightness'
  | 'edge'
  | 'centreline'
  | 'push';

/** Where a side is ground and where its edge stops, from the midplane, mm. */
export interface SideAt {
  readonly setoff: number;
  readonly edge: number;
}

/** The settings whose budget is drawn up, on a bar of one thickness and height; mm and degrees. */
export interface SpineRestAt {
  readonly thickness: number;
  readonly height: number;
  readonly spineRadius: number;
  readonly lean: number;
  readonly first: SideAt;
  /** None where one side is ground alone: the other stays the face of the stock. */
  readonly second: SideAt | undefined;
  /** Push as when the zero was taken, N, and what gives way under it. */
  readonly push: number;
  readonly structure: RestStructure;
}

export const SPINE_REST_KEYS = ['angle', 'bevelHeight', 'edgeThickness', 'difference'] as const;

/** What is effective in place of the nominal setoff and lean on a side. */
const acting = (
  { lean, push, structure }: SpineRestAt,
  setoff: number,
  by: Departures<SpineRestCause>,
): { setoff: number; lean: number } => {
  // The zero is taken under working pressure, so only a push unlike it moves anything.
  const [now, zero] = [giveOfRest(structure, by.push), giveOfRest(structure, push)];
  const leaning = lean + by.squareness + now.lean - zero.lean;
  // What thickens in front of the platen takes from the setoff, along the seat.
  const forward =
    (by.belt + by.splice + by.backing - by.wear - by.compression - by.platen) /
    cos(radians(leaning));
  const moved = by.step + by.yaw + by.dial + by.backlash + by.lock + now.setoff - zero.setoff;
  const lifted = setoffOfLift(by.straightness + now.lift - zero.lift, leaning);
  return { setoff: setoff + moved + by.bow + lifted - forward, lean: leaning };
};

/**
 * The exact forward model of both sides for a budget. Outputs, in the order of `SPINE_REST_KEYS`:
 * angle (degrees) and bevel height of the side ground first, edge thickness of both sides
 * together, bevel height of the second side less the first's (mm). The section left by the first
 * side is carried to the second. Of a blade ground on one side the first three, its edge as thick as
 * from that side to the other face.
 */
export const spineRestModel = (at: SpineRestAt): BudgetQuestion<SpineRestCause>['model'] => {
  const side = (section: Section, stop: SideAt, by: Departures<SpineRestCause>) => {
    const { setoff, lean } = acting(at, stop.setoff, by);
    const edge = stop.edge + by.edge + by.centreline;
    const angle = angleFor(section, edge, setoff, lean);
    return angle === undefined ? undefined : { edge, angle };
  };
  return (first, second) => {
    const bar = barSection(
      at.thickness + first.thickness,
      at.height + first.height,
      at.spineRadius,
    );
    const one = side(bar, at.first, first);
    if (one === undefined) return undefined;
    const height = bevelHeight(bar, one);
    if (!at.second) return [one.angle, height, (at.thickness + first.thickness) / 2 + one.edge];
    const turned = flipped(ground(bar, one));
    const two = side(turned, at.second, second);
    if (two === undefined) return undefined;
    return [one.angle, height, one.edge + two.edge, bevelHeight(turned, two) - height];
  };
};
