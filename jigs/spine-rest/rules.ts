import {
  loweredTo,
  problem,
  radians,
  raisedTo,
  SIDES,
  tan,
  text,
  wantedBevel,
  type Design,
  type Issue,
  type SpineRestPlan,
} from '../../src/family/index.ts';
import { leanLoss, rigIssues, ROUNDING, runningGrowth } from '../shared/rules.ts';
import type { Values } from './parameters.ts';

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
    ...rigIssues(design, v, text.family.spineRest.parameters.plate.label),
    ...(v.noseGap < leastGap - 1e-9
      ? [raisedTo(problem('nose-at-belt', path('noseGap'), why), leastGap)]
      : []),
  ];
};

/** A blade, and how high its bevel may about be, mm. */
interface Highest {
  readonly blade: string;
  readonly bevel: number;
}

/**
 * About how high bevels may be for the spine corner that comes nearest to the belt to stand `need`
 * mm away, the lowest, mm: with k = b tan a a sharp corner stands k (H / b - 1) from the finished face,
 * and what a rounded one and earlier belts add to that is taken as it is found.
 */
const highestBevel = (design: Design, corner: number, need: number): Highest | undefined => {
  const bevels = design.blades.flatMap((blade) =>
    SIDES.flatMap((side) => {
      const wanted = wantedBevel(blade, side);
      if (wanted === undefined) return [];
      const { bevelHeight: b, height, angle } = wanted;
      const k = b * tan(radians(angle));
      return [{ blade: blade.name, height, k, sharp: k * (height / b - 1) }];
    }),
  );
  const added = corner - Math.min(...bevels.map(({ sharp }) => sharp));
  const [lowest] = bevels
    .map(({ blade, height, k }) => ({
      blade,
      bevel: Math.floor(height / (1 + (need - added) / k)),
    }))
    .sort((p, q) => p.bevel - q.bevel);
  return lowest;
};

/** Share of the step's height that the spine may take, mm below its top. */
const STEP_MARGIN = 1;

/** What the plan asks for and this fixture cannot give. */
export const planIssues = (design: Design, v: Values, plan: SpineRestPlan): Issue[] => {
  const issues: Issue[] = [];
  const nearest = [...plan.settings].sort((a, b) => a.cornerDistance - b.cornerDistance)[0];
  if (nearest && nearest.cornerDistance < v.noseGap + v.leastBearing) {
    const corner = nearest.cornerDistance;
    const most = corner - v.leastBearing;
    const least = leastNoseGap(design, v) + 0.01;
    const why = words.bearing(v.noseGap, corner, v.leastBearing, nearest.id);
    // A gap that lets the nose come to the belt mends nothing.
    if (most >= least) issues.push(loweredTo(problem('no-bearing', path('noseGap'), why), most));
    else {
      const need = least + v.leastBearing;
      const fix = words.lowerBevel(least, need, highestBevel(design, corner, need));
      issues.push(problem('no-bearing', path('noseGap'), { ...why, fix }));
    }
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
        highest.stepContact + STEP_MARGIN,
      ),
    );
  if (plan.pushHeight < v.plate + LEAST_PAD)
    issues.push(
      loweredTo(
        problem(
          'pad-too-low',
          path('plate'),
          words.padTooLow(plan.pushHeight, v.plate + LEAST_PAD),
        ),
        plan.pushHeight - LEAST_PAD,
      ),
    );
  return issues;
};

/** Least height of the pad's middle over the step's top, mm: half its tenon and a web. */
const LEAST_PAD = 8;
