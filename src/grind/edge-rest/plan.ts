import { hasError, problem } from '../../core/issue.ts';
import { chain, fail, ok, type Result } from '../../core/result.ts';
import type { Wheel } from '../../grinder/schema.ts';
import { text } from '../../text/index.ts';
import { dialOf, type Stand } from '../spine-rest/dial.ts';
import { strokeOf } from '../spine-rest/windows.ts';
import { inputIssues, planIssues, runIssues, stuckIssues } from './issues.ts';
import { hollowLines } from './lines.ts';
import { lipPush, type Pushing } from './lip-push.ts';
import type { Contact } from './push.ts';
import { runHollows, type Guided, type HollowRun } from './run.ts';
import { describeHollow, firstCentreOf, referenceOf } from './setting.ts';
import { edgeWork } from './stations.ts';
import type { EdgeRestInput, EdgeRestPlan, HollowPass } from './types.ts';
import { heldAt } from './trust.ts';
import { wheelAtSeat, wrapOn, type PlacedWheel } from './wheel.ts';

/** The middle of the window that all runs share; its lower end where they share none. */
const pushHeightOf = (runs: readonly HollowRun[], pushing: Pushing): number => {
  const windows = runs.flatMap((run) => {
    const place = referenceOf(run);
    return place ? [lipPush(run.at, place, firstCentreOf(run, place), pushing, 0)] : [];
  });
  const from = Math.max(...windows.map((of) => of.from));
  const to = Math.min(...windows.map((of) => of.to));
  return to > from ? (from + to) / 2 : from;
};

/**
 * A place is ground while it passes the belt, whose middle does not leave the stroke: there the lip
 * must find the edge on both sides.
 */
const guidedOn =
  ({ grinder: { belt }, parameters: p }: EdgeRestInput): Guided =>
  ({ shape }, u) => {
    const { from, to } = strokeOf(belt.width, shape.length, p.plungeStop, p.tipOverlap);
    const last = Math.max(from, Math.min(to, shape.length - p.lipReach));
    const middle = Math.min(last, Math.max(from, p.lipReach, u));
    return (
      Math.abs(u - middle) <= belt.width / 2 + 1e-9 &&
      heldAt(shape, middle, p.lipReach, p.lipHeight)
    );
  };

/** The lip moves with its screw against a machine that stands still, on which belts differ. */
const standOf = ({ grinder }: EdgeRestInput, { pass, lip }: HollowRun): Stand => ({
  setoff: lip,
  belt: grinder.belts.find(({ id }) => id === pass.belt)?.thickness ?? 0,
  backing: 0,
  stackShift: 0,
});

const planWith = (
  input: EdgeRestInput,
  wheel: Wheel,
  wrap: Contact,
  runs: readonly HollowRun[],
): EdgeRestPlan => {
  const { grinder, parameters: p } = input;
  const sign = grinder.belt.direction === 'up' ? -1 : 1;
  const pushing: Pushing = {
    friction: [sign * p.friction[0], sign * p.friction[1]],
    reserve: p.reserve,
    wheelShare: p.wheelShare,
  };
  const pushHeight = p.pushHeight ?? pushHeightOf(runs, pushing);
  const stands = runs.map((run) => standOf(input, run));
  const settings = runs.flatMap((run, i) => {
    const [zero, now] = [stands[0], stands[i]];
    const finished = runs.findLast(({ side, last }) => last && side === run.side);
    if (zero === undefined || now === undefined || finished === undefined) return [];
    const belt = grinder.belts.find(({ id }) => id === run.pass.belt);
    const setting = describeHollow(run, {
      parameters: p,
      pushing,
      pushHeight,
      dial: dialOf(zero, stands[i - 1] ?? now, now, p.screwPitch, p.divisions),
      grit: belt?.grit ?? 0,
      wrap,
      finished,
    });
    return setting ?? [];
  });
  const lines = hollowLines(runs, wheel, grinder.belt.width, p);
  return { wheel: wheel.id, pushHeight, settings, lines };
};

/**
 * Plans the hollow grinding of a blade family on an edge rest at a wheel: for every belt of the
 * sequence and both sides the lip, the tilt it gives, the depth to stop at by measuring, limits and
 * web of the true section, the room a lip has, how the hollow climbs, and where to push; and the
 * hollows that come of it along every blade. mm and degrees; plain data.
 *
 * Fails with issues when something the plan needs is missing or a hollow cannot be ground on an
 * edge rest: it would take the lip or the spine, break through, leave a lip no room, or lift the
 * blade. Warnings tell of thin webs, passes that undercut, and edges that leave the lip.
 */
export const planEdgeRest = (input: EdgeRestInput): Result<EdgeRestPlan> => {
  const { grinder, sequence, parameters: p } = input;
  const works = input.blades.map(edgeWork);
  const missing = inputIssues(input, works);
  if (missing.length > 0) return fail(...missing);
  const wheel = grinder.wheels.find(({ id }) => id === p.wheel);
  const backing = grinder.backings.find(({ id }) => id === sequence[0]?.backing);
  if (wheel === undefined || backing === undefined) return fail();
  const wheelFor = ({ belt }: HollowPass): PlacedWheel => {
    const found = grinder.belts.find(({ id }) => id === belt);
    return wheelAtSeat(grinder, wheel, found ?? { thickness: 0 }, p.stackHeight);
  };
  return chain(wrapOn(grinder, backing, wheel), (wrap) => {
    if (wrap === undefined)
      return fail(
        problem('wheel-not-wrapped', 'grinder.wheels', text.grind.edgeRest.notWrapped(wheel.id)),
      );
    const { runs, stuck } = runHollows(works, sequence, wheelFor, p.lipHeight, guidedOn(input));
    if (stuck.length > 0) return fail(...stuckIssues(stuck));
    const unfit = runIssues(runs, input);
    if (unfit.length > 0) return fail(...unfit);
    const plan = planWith(input, wheel, wrap, runs);
    const issues = planIssues(input, plan, wheel);
    return hasError(issues) ? fail(...issues) : ok(plan, issues);
  });
};
