import { fail, ok, type Result } from '../../core/result.ts';
import { cornerIssues } from '../spine-rest/stations.ts';
import { asTheyCome } from './as-they-come.ts';
import { inputIssues, jobsOf, planIssues, runIssues } from './issues.ts';
import { linesOf } from './lines.ts';
import { runCarriage } from './run.ts';
import { sensitivityOf } from './sensitivity.ts';
import { describe } from './setting.ts';
import type { CarriageInput, CarriagePlan } from './types.ts';

/**
 * Plans the grinding of a blade family on a guided-angle carriage: for every belt of the sequence
 * and both sides the heel screw, the fence, what to expect while grinding and how low to push; the
 * grind lines and what a falling tip is left with. mm and degrees; plain data.
 *
 * Fails with issues when something the plan needs is missing or a tilt cannot be reached.
 * Warnings tell of passes that undercut or take nothing, edges that come out uneven, jaws that
 * would reach the belt, and pushes that lift the heel.
 */
export const planCarriage = (input: CarriageInput): Result<CarriagePlan> => {
  const missing = inputIssues(input);
  if (missing.length > 0) return fail(...missing);
  const { grinder, sequence, parameters } = input;
  const jobs = jobsOf(input);
  const start = asTheyCome(jobs, sequence.at(-1), parameters);
  const runs = runCarriage(start, jobs, sequence, parameters);
  const stuck = runIssues(runs, grinder.lean);
  if (stuck.length > 0) return fail(...stuck);
  const settings = runs.flatMap((run, i) => {
    const finished = runs.findLast(
      ({ last, side, facet }) => last && side === run.side && facet === run.facet,
    );
    if (finished === undefined) return [];
    const setting = describe(run, { grinder, parameters, before: runs[i - 1] ?? run, finished });
    return setting ?? [];
  });
  const backing = grinder.backings.find(({ id }) => id === sequence.at(-1)?.backing);
  const plan: CarriagePlan = {
    lean: grinder.lean,
    settings,
    lines: backing === undefined ? [] : linesOf(runs, grinder, backing),
    sensitivity: sensitivityOf(runs, parameters, grinder.lean),
  };
  const corners = cornerIssues(jobs.map(({ mount }) => mount.work));
  return ok(plan, [...planIssues(input, plan), ...corners]);
};
