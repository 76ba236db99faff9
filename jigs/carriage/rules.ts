import {
  buttonScrew,
  type CarriagePlan,
  cos,
  type Design,
  hasError,
  type Issue,
  loweredTo,
  mendedBy,
  problem,
  radians,
  raisedTo,
  root,
  sin,
  text,
} from '../../src/family/index.ts';
import { leanLoss, ROUNDING, runningGrowth, sheetIssues, tipIssues } from '../shared/rules.ts';
import { withBase } from '../shared/bases.ts';
import type { Grip } from './layout/grip.ts';
import { BELOW_EDGE, type angleFor, type Levels } from './layout/layout.ts';
import { ANGLES, FOOT, JAW } from './layout/sizes.ts';
import { parameters, type Values } from './parameters.ts';
import { fenceScrew, ringsHeight, type Washered } from './screws.ts';

const words = text.family.carriage.issues;

const path = (key: keyof Values): string => `fixture.parameters.${key}`;

/** What a platen that leans back takes off the gap between base and belt, mm. */
export const baseLean = (design: Design, { base, beltGap }: Values): number =>
  leanLoss(design, base, beltGap);

/** Room between the lower end of the jaw and the sole's top or the fence below it, mm. */
const OVER_SOLE = 2;

/** Least stroke worth building a carriage for, mm; the layout draws none shorter. */
const LEAST_STROKE = 10;

/** More blade asked to stay on the belt at the tip than leaves a stroke. */
const strokeIssues = (v: Values, grips: readonly Grip[]): Issue[] => {
  const longest = Math.max(...grips.map(({ shape }) => shape.length));
  const most = longest - v.plungeMargin - LEAST_STROKE;
  return v.tipOverlap <= most + 1e-9
    ? []
    : [
        loweredTo(
          problem(
            'stroke-short',
            path('tipOverlap'),
            words.strokeShort(v.tipOverlap, most, longest, LEAST_STROKE),
          ),
          most,
        ),
      ];
};

/** No angle of the table ends behind the jaw: the least change of the edge height that brings one there. */
const noAngle = (v: Values, levels: Levels, room: number, slots: boolean): Issue => {
  const [low, high] = [levels.jawTop - JAW.grip + JAW.leastGrip, v.edgeHeight - BELOW_EDGE];
  // Jaw and edge rise together: where they lie too close, no edge height helps.
  if (low > high) {
    const none = problem('no-angle', path('upright'), words.angleTooLow(high - low));
    return slots ? mendedBy(none, 'plates') : none;
  }
  const issue = problem('no-angle', path('edgeHeight'), words.noAngle(low, high));
  // Jaw and edge rise together with the edge height; the jaw must stay clear of the sole.
  const shifts = ANGLES.map(({ leg }) => levels.soleTop + leg)
    .map((top) => (top > high ? top - high : Math.min(0, top - low)))
    .filter((shift) => room + shift >= 0);
  const [least] = shifts.sort((a, b) => Math.abs(a) - Math.abs(b));
  if (least === undefined) return issue;
  return (least > 0 ? raisedTo : loweredTo)(issue, v.edgeHeight + least);
};

/** By how much a tang may be thinner than its blade and both still lie on the upright, mm. */
const THINNER = 0.06;

/** Combinations of parameters and blades that no layout can mend, before anything is solved. */
export const parameterIssues = (
  design: Design,
  v: Values,
  grips: readonly Grip[],
  levels: Levels,
  angle: ReturnType<typeof angleFor>,
): Issue[] => {
  const { process } = design.making.plates;
  const issues = sheetIssues(design, [
    { key: 'plate', of: parameters.plate, thickness: v.plate },
    { key: 'base', of: parameters.base, thickness: v.base },
  ]);
  const plates = v.upright !== 'angle';
  const slots = process !== 'saw-drill' && process !== 'plasma';
  if (plates && !slots)
    issues.push(
      mendedBy(problem('tabs-need-cut', path('upright'), words.tabsNeedCut(process)), 'angle'),
    );
  const short = strokeIssues(v, grips);
  issues.push(...(short.length > 0 ? short : tipIssues(design, v.tipOverlap)));
  const leastGap = runningGrowth(design) + v.runningClearance + baseLean(design, v) + ROUNDING;
  if (v.beltGap < leastGap - 1e-9)
    issues.push(
      raisedTo(
        problem('gap-at-belt', path('beltGap'), words.gapAtBelt(v.beltGap, leastGap)),
        leastGap,
      ),
    );
  const leastJaw = design.grinder.belt.tracking + v.runningClearance + ROUNDING - v.plungeMargin;
  if (v.jawGap < leastJaw - 1e-9)
    issues.push(
      raisedTo(
        problem('jaw-at-belt', path('jawGap'), words.jawAtBelt(v.jawGap, leastJaw)),
        leastJaw,
      ),
    );
  grips.forEach(({ blade, onTang }, i) => {
    const behind = v.jawGap + v.jawWidth;
    const have = blade.ricasso + blade.tang.length;
    if (have < behind)
      issues.push(
        problem(
          'tang-short',
          `blades.${String(i)}.tang`,
          words.tangShort(blade.name, have, behind),
        ),
      );
    const ricasso = blade.thickness[0]?.t ?? 0;
    if (onTang && ricasso - blade.tang.thickness > THINNER)
      issues.push(
        raisedTo(
          problem(
            'tang-thin',
            `blades.${String(i)}.tang.thickness`,
            words.tangThin(blade.name, ricasso, blade.tang.thickness, behind),
          ),
          ricasso,
        ),
      );
    if (onTang && v.jawGap < blade.ricasso && Math.abs(ricasso - blade.tang.thickness) > 0.01)
      issues.push(
        problem(
          'jaw-straddles',
          path('jawGap'),
          words.jawStraddles(blade.name, ricasso, blade.tang.thickness),
        ),
      );
  });
  const room = levels.jawBottom - levels.soleTop - OVER_SOLE;
  if (room < 0)
    issues.push(
      raisedTo(
        problem(
          'edge-too-low',
          path('edgeHeight'),
          words.edgeTooLow(v.edgeHeight, v.edgeHeight - room),
        ),
        v.edgeHeight - room,
      ),
    );
  if (!plates && !hasError(issues)) {
    if (angle === undefined) issues.push(noAngle(v, levels, room, slots));
    if (v.tipSettings > 0)
      issues.push(
        mendedBy(problem('angle-turned', path('tipSettings'), words.angleTurned(v.tipSettings)), 0),
      );
  }
  return issues;
};

/** Air between the sole and the heads of the fence screws, mm. */
const OVER_HEADS = 0.5;

/** Top of the fence screws' heads over their washers, with air over them, above the base, mm. */
export const overFence = (v: Pick<Values, 'plate'>, { rings }: Washered): number =>
  v.plate + ringsHeight('M6', rings) + buttonScrew('M6').headHeight + OVER_HEADS;

/**
 * A carriage that tips until the front of its sole comes down on the fence screws. A base in which
 * they find their thread with fewer washers mends it, else a pass that is ground less steep.
 */
export const dipIssues = (
  design: Design,
  v: Values,
  levels: Levels,
  forward: number,
  { settings }: CarriagePlan,
): Issue[] => {
  const air = (screw: Washered, q: number): number =>
    FOOT.radius +
    (levels.soleBottom - FOOT.radius) * cos(radians(q)) -
    forward * sin(radians(q)) -
    overFence(v, screw);
  const screw = fenceScrew(v);
  const worst = settings.reduce((most, one) => (one.tilt > most.tilt ? one : most));
  if (!screw || air(screw, worst.tilt) >= 0) return [];
  const most = air(screw, 0) <= 0 ? 0 : root((q) => air(screw, q), 0, worst.tilt);
  const holds = (base: number): boolean => {
    const other = fenceScrew({ plate: v.plate, base });
    return other !== undefined && air(other, worst.tilt) >= 0;
  };
  const byBase = withBase('sole-dips', design.making, v, holds, (spans) =>
    words.soleDips(worst.tilt, most, v.base, spans),
  );
  if (byBase.mend) return [byBase];
  const pass = worst.step - 1;
  const steeper = design.sequence[pass]?.steeper ?? 0;
  const left = steeper - (worst.tilt - most);
  const why = words.soleDipsSteep(worst.tilt, most, worst.angle);
  return left >= 0
    ? [loweredTo(problem('sole-dips', `sequence.${String(pass)}.steeper`, why), left)]
    : [problem('sole-dips', 'blades', why)];
};

/** A tang that sinks under a raised tip until its jaw would stand on the sole. */
export const turnedIssues = (v: Values, levels: Levels, drops: readonly number[]): Issue[] => {
  const room = levels.jawBottom - Math.max(0, ...drops) - levels.soleTop - OVER_SOLE;
  if (room >= 0) return [];
  const least = v.edgeHeight - room;
  const why = words.tangSinks(Math.max(...drops), v.edgeHeight, least);
  return [raisedTo(problem('tang-sinks', path('edgeHeight'), why), least)];
};
