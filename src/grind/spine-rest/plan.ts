import type { Issue } from '../../core/issue.ts';
import { fail, ok, type Result } from '../../core/result.ts';
import { cos, tan } from '../../core/trigonometry.ts';
import { radians } from '../../core/units.ts';
import { faceDepth } from '../../grinder/belt-path.ts';
import type { Backing, Grinder } from '../../grinder/schema.ts';
import { dialOf, type Stand } from './dial.ts';
import { pushWindow, type Pushing } from './hold-place.ts';
import { inputIssues, jobsOf, planIssues, runIssues } from './issues.ts';
import { linesOf } from './lines.ts';
import { runSequence, type Run } from './run.ts';
import { scratchDepth } from './scratch.ts';
import { sensitivityOf } from './sensitivity.ts';
import { describe } from './setting.ts';
import { settle } from './settle.ts';
import { cornerIssues } from './stations.ts';
import type { SpineRestInput, SpineRestPlan } from './types.ts';

/** Where the step stands for a run, from the bare platen. */
const standOf = (run: Run, grinder: Grinder, stackShift: number): Stand | undefined => {
  const belt = grinder.belts.find(({ id }) => id === run.pass.belt);
  const backing = grinder.backings.find(({ id }) => id === run.pass.backing);
  if (belt === undefined || backing === undefined) return undefined;
  const c = cos(radians(grinder.lean));
  return {
    setoff: run.setoff,
    belt: belt.thickness / c,
    backing: (faceDepth(grinder, belt, backing) - belt.thickness) / c,
    stackShift,
  };
};

/** Where the push acts at the bevel place of the first blade. */
interface Push {
  readonly share: number;
  readonly height: number;
  readonly issues: readonly Issue[];
}

/**
 * Share of the edge's height at which the push is best: the middle of the window all runs share, or
 * nearer the seat where that would leave less than the margin to the edge: the middle of what the
 * margin leaves, or as high as the margin allows where nothing is left (a check then says so).
 */
const pushOf = (
  runs: readonly Run[],
  lean: number,
  pushing: Omit<Pushing, 'share'>,
  margin: number,
): Push => {
  const windows = runs.flatMap(({ cuts: [first] }) => {
    const i = first?.job.work.reference ?? 0;
    const [section, face] = [first?.before[i], first?.faces[i]?.own];
    if (section === undefined || face === undefined) return [];
    const seating = settle(section, face, lean);
    return [pushWindow(section, face, seating, { ...pushing, share: 1 })];
  });
  const least = Math.max(...windows.map(({ from, to }) => from / to));
  const edge = Math.min(...windows.map(({ to }) => to));
  const middle = ((Math.min(least, 1) + 1) / 2) * edge;
  const [low, high] = [Math.max(...windows.map(({ from }) => from)), edge - margin];
  const kept = middle >= low && middle <= high;
  const height = kept ? middle : high > low ? (low + high) / 2 : high;
  const issues = least < 1 ? [] : planIssues.pushTooHigh(least * edge, edge);
  return { share: height / edge, height, issues };
};

const backingOf = (grinder: Grinder, id: string | undefined): Backing | undefined =>
  grinder.backings.find((backing) => backing.id === id);

/**
 * Plans the grinding of a blade family on a spine rest: for every belt of the sequence and both
 * sides the setoff, the dial, what to expect while grinding and where to push; and the grind lines
 * that come of it. mm and degrees; plain data.
 *
 * Fails with issues when something the plan needs is missing, a setting cannot be reached, or the
 * belt lifts the blade. Warnings tell of passes that undercut or take nothing, grind lines beyond
 * what is allowed, and pushes that cannot hold the blade on the step.
 */
export const planSpineRest = (input: SpineRestInput): Result<SpineRestPlan> => {
  const missing = inputIssues(input);
  if (missing.length > 0) return fail(...missing);
  const { grinder, sequence, parameters: p } = input;
  const { lean } = grinder;
  const jobs = jobsOf(input);
  const runs = runSequence(jobs, sequence, lean, p.aim);
  const stuck = runIssues(runs, lean);
  if (stuck.length > 0) return fail(...stuck);

  const sign = grinder.belt.direction === 'up' ? -1 : 1;
  const friction = [sign * p.friction[0], sign * p.friction[1]] as const;
  const pushing = { friction, reserve: p.reserve };
  const push = pushOf(runs, lean, pushing, p.padMargin ?? 0);
  const stackShift = p.stackHeight * tan(radians(lean));
  const stands = runs.map((run) => standOf(run, grinder, stackShift));
  const settings = runs.flatMap((run, i) => {
    const [zero, now] = [stands[0], stands[i]];
    const finished = runs.findLast(({ side, last }) => last && side === run.side);
    if (zero === undefined || now === undefined || finished === undefined) return [];
    const belt = grinder.belts.find(({ id }) => id === run.pass.belt);
    const setting = describe(run, {
      lean,
      pushing: { ...pushing, share: push.share },
      dial: dialOf(zero, stands[i - 1] ?? now, now, p.screwPitch, p.divisions),
      scratch: scratchDepth(belt?.grit ?? 0),
      settingTolerance: p.settingTolerance,
      finished,
    });
    return setting ?? [];
  });
  const lifted = planIssues.beltUp(settings);
  if (lifted.length > 0) return fail(...lifted);

  const backing = backingOf(grinder, sequence.at(-1)?.backing);
  const lines = backing === undefined ? [] : linesOf(runs, grinder, backing, p.noseWidth);
  const plan: SpineRestPlan = {
    lean,
    stackShift,
    pushHeight: push.height,
    pushShare: push.share,
    settings,
    lines,
    sensitivity: sensitivityOf(runs, lean),
  };
  const corners = cornerIssues(jobs.map(({ work }) => work));
  return ok(plan, [...push.issues, ...planIssues.of(input, plan), ...corners]);
};
