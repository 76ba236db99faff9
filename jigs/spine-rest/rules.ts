import {
  atan2,
  bevelPlace,
  degrees,
  loweredTo,
  problem,
  radians,
  raisedTo,
  tan,
  text,
  wantedBevel,
  type Design,
  type Issue,
  type Mend,
  type SpineRestPlan,
} from '../../src/family/index.ts';
import {
  leanLoss,
  rigIssues,
  ROUNDING,
  runningGrowth,
  sheetFrom,
  sheetUpTo,
} from '../shared/rules.ts';
import { parameters, type Values } from './parameters.ts';

const words = text.family.spineRest.issues;

const path = (key: keyof Values): string => `fixture.parameters.${key}`;

type Gapped = Pick<Values, 'plate' | 'noseGap'>;

/** What a platen that leans back takes off the gap between nose and belt, mm. */
export const noseLean = (design: Design, { plate, noseGap }: Gapped): number =>
  leanLoss(design, plate, noseGap);

/** The feeler that fits where nose and belt are nearest, mm: set by it, the gap is as wanted. */
export const feelerGap = (design: Design, v: Gapped): number => v.noseGap - noseLean(design, v);

/** Least gap between nose and belt, mm. */
const leastNoseGap = (design: Design, v: Values): number =>
  runningGrowth(design) + v.runningClearance + noseLean(design, v) + ROUNDING;

/** Combinations of parameters that no layout can mend, before anything is solved. */
export const parameterIssues = (design: Design, v: Values): Issue[] => {
  const growth = runningGrowth(design);
  const leastGap = leastNoseGap(design, v);
  const why = words.noseAtBelt(v.noseGap, leastGap, growth, v.runningClearance);
  return [
    ...rigIssues(design, v, parameters.plate),
    ...(v.noseGap < leastGap - 1e-9
      ? [raisedTo(problem('nose-at-belt', path('noseGap'), why), leastGap)]
      : []),
  ];
};

type Nearest = SpineRestPlan['settings'][number];

/** A bevel that is too high, and how high it may about be, mm. */
interface TooHigh {
  readonly index: number;
  readonly blade: string;
  readonly most: number;
  /** Of a bevel that is asked for by its angle: how steep it must about be, degrees. */
  readonly steep?: number;
}

/** The angle of a bevel as high as this that takes off `depth` at the edge, to a tenth of a degree. */
const steepAt = (high: number, depth: number): number =>
  Math.ceil(10 * degrees(atan2(depth, high))) / 10;

/**
 * The bevels of a side that are too high for the spine corner nearest to the belt to stand `need`
 * mm away, the lowest first: with k = b tan a a sharp corner stands k (H / b - 1) from the finished
 * face, and what a rounded one and earlier belts add to that is taken as it is found. One setting
 * serves all blades and all their places: what it gives a blade must fall to H / (1 + room / k),
 * and what is asked for by as large a share.
 */
const tooHigh = (design: Design, { side, cornerDistance, blades }: Nearest, need: number) =>
  design.blades
    .flatMap((blade, index): (TooHigh & { readonly asked: number })[] => {
      const wanted = wantedBevel(blade, side);
      const given = blades.find(({ blade: name }) => name === blade.name);
      const [place] = [...(given?.places ?? [])].sort(
        (p, q) => Math.abs(p.u - bevelPlace(blade)) - Math.abs(q.u - bevelPlace(blade)),
      );
      if (wanted === undefined || place === undefined) return [];
      const { bevelHeight: asked, height, angle } = wanted;
      const k = asked * tan(radians(angle));
      const room = k * (height / place.bevelHeight - 1) + need - cornerDistance;
      const share = height / (1 + room / k) / place.bevelHeight;
      const most = Math.floor(asked * share);
      const byAngle = blade.bevels[side].kind === 'angle' && most > 0;
      const steep = byAngle ? { steep: steepAt(asked * share, k) } : {};
      return [{ blade: blade.name, index, asked, most, ...steep }];
    })
    .filter(({ asked, most }) => most < asked)
    .sort((p, q) => p.most - q.most);

/**
 * By how much the line of a blade falls short of what is asked for at most, mm: the blade that it
 * does so by most keeps the setting, which makes the greatest deviation least, from moving out.
 */
const shortBy = ({ lines }: SpineRestPlan, side: Nearest['side'], { blade }: TooHigh): number =>
  Math.max(
    -Infinity,
    ...lines
      .filter((line) => line.blade === blade && line.side === side)
      .flatMap(({ places }) => places.filter(({ steers }) => steers))
      .map(({ deviation }) => -deviation),
  );

/** A bevel that is as low as it must be, by what it is entered by. */
const lowered = ({ index, most, steep }: TooHigh, side: Nearest['side']): Mend => {
  const bevel = `blades.${index}.bevels.${side}`;
  return steep === undefined
    ? { path: `${bevel}.height`, value: most }
    : { path: `${bevel}.angle`, value: steep };
};

/** Share of the step's height that the spine may take, mm below its top. */
const STEP_MARGIN = 1;

/** The setting whose spine corner stands nearest to the belt. */
const nearestOf = ({ settings }: SpineRestPlan): Nearest | undefined =>
  [...settings].sort((a, b) => a.cornerDistance - b.cornerDistance)[0];

/**
 * An issue of a spine corner `corner` mm from the belt, too near to bear on the nose, with what mends
 * it: a nearer nose, or where that would come to the belt, the lower bevel that leaves it room.
 */
export const bearingMended = (
  issue: Issue,
  design: Design,
  v: Values,
  plan: SpineRestPlan,
  corner: number,
): Issue => {
  const found = nearestOf(plan);
  const most = corner - v.leastBearing;
  const least = leastNoseGap(design, v) + 0.01;
  // A gap that lets the nose come to the belt mends nothing.
  if (most >= least) return loweredTo(issue, most);
  if (!found) return issue;
  const nearest = { ...found, cornerDistance: corner };
  const need = least + v.leastBearing;
  const high = tooHigh(design, nearest, need);
  const side = text.grind.plan.side[nearest.side];
  const fix = words.lowerBevel(least, need, side, high, design.blades.length > 1);
  const ruling = high
    .filter(
      ({ index, most }) =>
        most >= 1 &&
        ['height', 'angle'].includes(design.blades[index]?.bevels[nearest.side].kind ?? ''),
    )
    .sort((p, q) => shortBy(plan, nearest.side, q) - shortBy(plan, nearest.side, p))[0];
  return { ...issue, fix, ...(ruling ? { mend: lowered(ruling, nearest.side) } : {}) };
};

/** What the plan asks for and this fixture cannot give. */
export const planIssues = (design: Design, v: Values, plan: SpineRestPlan): Issue[] => {
  const issues: Issue[] = [];
  const nearest = nearestOf(plan);
  if (nearest && nearest.cornerDistance < v.noseGap + v.leastBearing) {
    const corner = nearest.cornerDistance;
    const why = words.bearing(v.noseGap, corner, v.leastBearing, nearest.id);
    const issue = problem('no-bearing', path('noseGap'), why);
    issues.push(bearingMended(issue, design, v, plan, corner));
  }
  const highest = [...plan.settings].sort((a, b) => b.stepContact - a.stepContact)[0];
  if (highest && highest.stepContact > v.plate - STEP_MARGIN)
    issues.push(
      raisedTo(
        problem(
          'step-too-low',
          path('plate'),
          words.stepTooLow(highest.stepContact, v.plate, v.plate - STEP_MARGIN, highest.id),
        ),
        sheetFrom(design, highest.stepContact + STEP_MARGIN),
      ),
    );
  if (plan.pushHeight < v.plate + LEAST_PAD)
    issues.push(
      loweredTo(
        problem(
          'pad-too-low',
          path('plate'),
          words.padTooLow(plan.pushHeight, v.plate + LEAST_PAD, v.plate, parameters.plate.min),
        ),
        sheetUpTo(design, plan.pushHeight - LEAST_PAD),
      ),
    );
  return issues;
};

/** Least height of the pad's middle over the step's top, mm: half its tenon and a web. */
const LEAST_PAD = 8;
