import {
  countersunkScrew,
  problem,
  raisedTo,
  text,
  type Design,
  type EdgeRestPlan,
  type Issue,
} from '../../src/family/index.ts';
import { rigIssues, ROUNDING, runningGrowth } from '../shared/rules.ts';
import { lipEnd } from './context-of.ts';
import { parameters, type Values } from './parameters.ts';
import { LIP } from './sizes.ts';

const words = text.family.edgeRest.issues;

const path = (key: keyof Values): string => `fixture.parameters.${key}`;

/** Metal over a countersunk head, and over the edge's corner, mm. */
const SPARE = 0.3;
const CORNER = 0.2;
/** Length of a pad: its screw, and metal beside it, mm. */
const LEAST_PAD_LENGTH = 10;
/** Least height of the pad's middle over the slide, mm: half its tenon and a web. */
const LEAST_PUSH = 8;

/** Edge that must lie on a pad for it to keep the blade in line, mm (common practice, no source). */
const LEAST_HELD = 5;

/** Blades that only the pad on the tip's side holds while their plunge is at the belt. */
const onePadIssues = (design: Design, v: Values): Issue[] =>
  v.lip === 'strip'
    ? []
    : design.blades.flatMap(({ name, ricasso }): Issue[] => {
        const beside = lipEnd(design, v) - design.grinder.belt.width / 2;
        const held = v.plungeMargin + ricasso - beside;
        if (held >= LEAST_HELD) return [];
        const why = words.onePad(name, held, LEAST_HELD);
        return [problem('one-pad', path('plungeMargin'), why, 'warning')];
      });

/** Combinations of parameters that no layout can mend, before anything is solved. */
export const parameterIssues = (design: Design, v: Values): Issue[] => {
  const growth = runningGrowth(design);
  const issues = rigIssues(design, v, parameters.plate);
  const leastGap = growth + v.runningClearance + ROUNDING;
  if (v.noseGap < leastGap - 1e-9) {
    const why = words.gapAtWheel(v.noseGap, leastGap, growth, v.runningClearance);
    issues.push(raisedTo(problem('gap-at-wheel', path('noseGap'), why), leastGap));
  }
  const head = countersunkScrew(LIP.thread).headHeight;
  if (v.wear < head + SPARE - 1e-9)
    issues.push(
      raisedTo(
        problem('wear-too-thin', path('wear'), words.wearTooThin(v.wear, head, LIP.thread)),
        head + SPARE,
      ),
    );
  issues.push(...onePadIssues(design, v));
  const least = design.grinder.belt.tracking + LIP.padRoom + LEAST_PAD_LENGTH;
  design.blades.forEach(({ name, ricasso, bevels }, i) => {
    const bevelled = Object.values(bevels).some(
      (bevel) => bevel.kind !== 'none' && (bevel.kind !== 'hollow' || bevel.angle !== undefined),
    );
    if (ricasso > 0 && bevelled)
      issues.push(
        problem(
          'ricasso-on-seat',
          `blades.${String(i)}.ricasso`,
          words.ricassoOnSeat(name, ricasso),
        ),
      );
  });
  if (v.lip === 'pads' && v.stepWing < least)
    issues.push(
      raisedTo(
        problem('pads-too-short', path('stepWing'), words.padsTooShort(v.stepWing, least)),
        least,
      ),
    );
  return issues;
};

/** What the plan asks for and this fixture cannot give. */
export const planIssues = (v: Values, plan: EdgeRestPlan): Issue[] => {
  const issues: Issue[] = [];
  const lowest = LEAST_PUSH - v.wear - v.lipThickness;
  if (plan.pushHeight < lowest) {
    const why = words.padTooLow(plan.pushHeight, lowest);
    // The slide lies below the seat by the lip and its wear strip: a thicker strip lowers it.
    issues.push(
      raisedTo(problem('pad-too-low', path('wear'), why), v.wear + lowest - plan.pushHeight),
    );
  }
  const corners = plan.settings.flatMap(({ id, blades }) =>
    blades.flatMap(({ places }) =>
      places.map(({ standing }) => ({ id, corner: standing.corner[1] })),
    ),
  );
  const [highest] = corners.sort((a, b) => b.corner - a.corner);
  if (highest && highest.corner + CORNER > v.lipHeight) {
    const why = words.lipTooLow(v.lipHeight, highest.corner + CORNER, highest.id);
    issues.push(raisedTo(problem('lip-too-low', path('lipHeight'), why), highest.corner + CORNER));
  }
  return issues;
};
