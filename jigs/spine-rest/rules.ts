import {
  radians,
  text,
  type Design,
  type Issue,
  type SpineRestPlan,
} from '../../src/family/index.ts';
import type { Values } from './parameters.ts';

const words = text.family.spineRest.issues;
const labels = text.family.spineRest.parameters;

const error = (code: string, path: string, why: { message: string; fix: string }): Issue => ({
  code,
  severity: 'error',
  path,
  ...why,
});

const path = (key: keyof Values): string => `fixture.parameters.${key}`;

/** Room that a nose screw and its washer need beside the step, mm. */
const SCREW_ROOM = 20;
const LEAST_STRIPS = 46;

/** What rounding and chords of the checked solids may take off a gap, mm. */
const ROUNDING = 0.01;

/** Belt thickening while it runs: flutter and splice, mm. */
export const runningGrowth = ({ grinder }: Design): number =>
  grinder.belt.flutter + grinder.belt.splice;

/**
 * How much nearer the lower front edge of the nose is to a platen that leans back than its upper
 * one, mm; with the slant of the gap itself (1 / cos of the lean) rounded up.
 */
export const noseLean = ({ grinder }: Design, { plate, noseGap }: Values): number => {
  const t = radians(Math.abs(grinder.lean));
  return (grinder.lean > 0 ? plate * Math.sin(t) : 0) + noseGap * (1 - Math.cos(t));
};

/** The feeler that fits where nose and belt are nearest, mm: set by it, the gap is as wanted. */
export const feelerGap = (design: Design, v: Values): number => v.noseGap - noseLean(design, v);

/** Combinations of parameters that no layout can mend, before anything is solved. */
export const parameterIssues = (design: Design, v: Values): Issue[] => {
  const { thicknesses, process } = design.making.plates;
  const issues: Issue[] = [];
  for (const key of ['plate', 'base'] as const) {
    if (!thicknesses.some((t) => Math.abs(t - v[key]) < 1e-9))
      issues.push(
        error(
          'thickness-missing',
          path(key),
          words.thicknessMissing(labels[key].label, v[key], thicknesses),
        ),
      );
  }
  if (v.guide === 'slots' && (process === 'saw-drill' || process === 'plasma'))
    issues.push(error('guide-needs-cut', path('guide'), words.guideNeedsCut(process)));
  if (v.guide === 'strips' && v.guideLength < LEAST_STRIPS)
    issues.push(
      error(
        'guide-too-short',
        path('guideLength'),
        words.guideTooShort(v.guideLength, LEAST_STRIPS),
      ),
    );
  if (v.wing - v.stepWing < SCREW_ROOM)
    issues.push(
      error('wings-too-close', path('wing'), words.wingsTooClose(v.wing, v.stepWing, SCREW_ROOM)),
    );
  const growth = runningGrowth(design);
  const leastGap = growth + v.runningClearance + noseLean(design, v) + ROUNDING;
  if (v.noseGap < leastGap - 1e-9)
    issues.push(
      error(
        'nose-at-belt',
        path('noseGap'),
        words.noseAtBelt(v.noseGap, leastGap, growth, v.runningClearance),
      ),
    );
  return issues;
};

/** Share of the step's height that the spine may take, mm below its top. */
const STEP_MARGIN = 1;

/** What the plan asks for and this fixture cannot give. */
export const planIssues = (v: Values, plan: SpineRestPlan): Issue[] => {
  const issues: Issue[] = [];
  const nearest = [...plan.settings].sort((a, b) => a.cornerDistance - b.cornerDistance)[0];
  if (nearest && nearest.cornerDistance < v.noseGap + v.leastBearing)
    issues.push(
      error(
        'no-bearing',
        path('noseGap'),
        words.bearing(v.noseGap, nearest.cornerDistance, v.leastBearing, nearest.id),
      ),
    );
  const highest = [...plan.settings].sort((a, b) => b.stepContact - a.stepContact)[0];
  if (highest && highest.stepContact > v.plate - STEP_MARGIN)
    issues.push(
      error(
        'step-too-low',
        path('plate'),
        words.stepTooLow(highest.stepContact, v.plate, v.plate - STEP_MARGIN, highest.id),
      ),
    );
  if (plan.pushHeight < v.plate + LEAST_PAD)
    issues.push(
      error('pad-too-low', path('plate'), words.padTooLow(plan.pushHeight, v.plate + LEAST_PAD)),
    );
  return issues;
};

/** Least height of the pad's middle over the step's top, mm: half its tenon and a web. */
const LEAST_PAD = 8;
