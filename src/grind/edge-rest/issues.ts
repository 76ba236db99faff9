import { loweredTo, problem, raisedTo, type Issue, type Mend } from '../../core/issue.ts';
import { gridDown, gridUp } from '../../core/units.ts';
import type { Wheel } from '../../grinder/schema.ts';
import { text } from '../../text/index.ts';
import type { HollowRun, Stuck } from './run.ts';
import { centreAtLipOf, lipsFor } from './at-lip.ts';
import { jobIssues, listed } from '../input-issues.ts';
import { passWarnings } from '../pass-warnings.ts';
import { lipRoom } from './lip-room.ts';
import { referenceOf } from './setting.ts';
import type { EdgeWork } from './stations.ts';
import type { EdgeRestInput, EdgeRestPlan } from './types.ts';

const words = text.grind.edgeRest;
const plain = text.grind.plan;
const { side: sides } = plain;

/** Passes with a backing, which nothing on a wheel holds. */
const backingIssues = ({ grinder, sequence }: EdgeRestInput): Issue[] =>
  sequence.flatMap(({ backing }, i): Issue[] => {
    const found = grinder.backings.find(({ id }) => id === backing);
    return found !== undefined && (found.kind !== 'none' || found.thickness > 0)
      ? [problem('backing-on-wheel', `sequence.${i}.backing`, words.backingOnWheel(backing))]
      : [];
  });

/** What a plan cannot do without. */
export const inputIssues = (input: EdgeRestInput, works: readonly EdgeWork[]): Issue[] => {
  const { blades, grinder, parameters } = input;
  const issues = jobIssues(input);
  if (!grinder.wheels.some(({ id }) => id === parameters.wheel)) {
    const why = words.unknownWheel(parameters.wheel, listed(grinder.wheels));
    issues.push(problem('unknown-wheel', 'grinder.wheels', why));
  }
  issues.push(...backingIssues(input));
  works.forEach(({ blade, reference, wishes }, i) => {
    const hollow = wishes.left !== undefined || wishes.right !== undefined;
    if (hollow && reference < 0)
      issues.push(problem('too-low', `blades.${i}`, words.tooLow(blade.name)));
  });
  const any = works.some(({ wishes }) => wishes.left !== undefined || wishes.right !== undefined);
  if (blades.length > 0 && !any) issues.push(problem('nothing-hollow', 'blades', words.nothing));
  return issues;
};

/** Passes that cannot be set at all. */
export const stuckIssues = (stuck: readonly Stuck[]): Issue[] =>
  stuck.map(({ step, side, why, blade, value, most }) =>
    why === 'depth'
      ? // Half of the hollow for this pass, half for those after it.
        loweredTo(
          problem(
            'depth-left',
            `sequence.${step - 1}.depthLeft`,
            words.depthLeft(blade, sides[side], value, most),
          ),
          most / 2,
        )
      : problem('drop-too-great', 'grinder.wheels', text.grind.dropTooGreat(value, most)),
  );

/** Of issues of one kind at one place, told for each run, the one whose mend mends them all. */
const worstOf = (issues: readonly Issue[]): Issue[] =>
  issues.filter(
    (issue, i) =>
      !issues.some(
        (other, k) =>
          other.code === issue.code &&
          other.path === issue.path &&
          other.mend !== undefined &&
          issue.mend !== undefined &&
          (other.mend.value > issue.mend.value || (other.mend.value === issue.mend.value && k < i)),
      ),
  );

/** What the chords of the checked solids may take off a gap, mm: a mend has to hold there as well. */
const CHORDS = 0.01;

/** The thinnest sheet that a lip is folded from, mm: the least of that parameter. */
const THINNEST_LIP = 0.5;

/** Flat that is left between a hollow and the spine, mm: common practice, no source. */
const TO_SPINE = 1;

/**
 * The issue with what brings a hollow off the spine: a lower centre; where the lip then has no
 * room, so small a depth that the chord, 2 sqrt(2 R d - d^2), fits between lip and spine.
 */
const offSpine = (
  issue: Issue,
  at: {
    readonly radius: number;
    readonly depth: number;
    readonly height: number;
    /** The lowest centre that leaves the lip its room at this depth, mm. */
    readonly lowest: number;
  },
): Issue => {
  const { radius: r, depth: d } = at;
  const half = Math.sqrt(Math.max(0, 2 * r * d - d * d));
  const [top, bottom] = [at.height - TO_SPINE, Math.max(0, at.lowest - half)];
  const centre = top - half;
  if (centre >= at.lowest && centre > 0) return loweredTo(issue, centre);
  const fits = (top - bottom) / 2;
  if (!(fits > 0)) return issue;
  const value = gridDown(r - Math.sqrt(r * r - fits * fits));
  return value > 0
    ? { ...issue, mend: { path: issue.path.replace(/centre$/, 'depth'), value } }
    : issue;
};

/** Hollows that no edge rest can grind: they take the lip, the spine or the whole web. */
export const runIssues = (
  runs: readonly HollowRun[],
  { blades, grinder, parameters: p }: EdgeRestInput,
): Issue[] =>
  worstOf(
    runs.flatMap((run): Issue[] => {
      const place = referenceOf(run);
      const [first] = run.cuts;
      const name = first?.work.blade.name ?? '';
      const path = `blades.${blades.findIndex((blade) => blade.name === name)}.bevels.${run.side}`;
      const { radius, drop } = run.wheel;
      const side = sides[run.side];
      if (place === undefined) {
        const lips = lipsFor(run.at, first?.depth ?? 0);
        return [problem('lip-out-of-reach', path, words.outOfReach(name, side, run.lip, lips))];
      }
      const { limits, centre, web } = place;
      const bevel = first?.work.blade.bevels[run.side];
      // Earlier passes are shallower: the finished hollow must lie on the blade.
      const deepest = Math.max(place.depth, bevel?.kind === 'hollow' ? bevel.depth : 0);
      const room = lipRoom(radius, run.lip, drop, 0);
      const growth = grinder.belt.flutter + grinder.belt.splice;
      const least = p.runningClearance + growth;
      // The lowest centre with room for the seat, by the lip that leaves that much as it is checked.
      const higher = centreAtLipOf(
        run.at,
        Math.sqrt((radius + least + CHORDS) ** 2 - drop ** 2) - radius,
        place.depth,
      );
      const mended = (issue: Issue): Issue =>
        higher === undefined ? issue : raisedTo(issue, higher);
      if (limits.atEdge || room <= 0) {
        const half = (place.upper - place.lower) / 2;
        const why = text.grind.hollowAtLip(room, centre, half, higher);
        return [mended(problem('hollow-at-lip', `${path}.centre`, why))];
      }
      if (limits.atSpine)
        return [
          offSpine(
            problem('hollow-at-spine', `${path}.centre`, words.atSpine(name, side, place.height)),
            { radius, depth: deepest, height: place.height, lowest: higher ?? 0 },
          ),
        ];
      if (web.thickness <= 0)
        return [
          problem(
            'hollow-through',
            `${path}.depth`,
            words.through(name, side, web.thickness, web.at),
          ),
        ];
      const atTop = lipRoom(radius, run.lip - p.lipThickness, drop, p.lipHeight);
      if (room < least) {
        const why = words.noRoom(centre, room, least, growth, higher);
        return [mended(problem('no-room-at-seat', `${path}.centre`, why))];
      }
      if (p.lip === 'strip' && atTop < p.runningClearance + growth) {
        const most = p.lipThickness + atTop - p.runningClearance - growth;
        const why = words.lipTooThick(p.lipThickness, most, atTop + p.lipThickness, growth);
        const issue = problem('lip-too-thick', 'fixture.parameters.lipThickness', why);
        // Pads stand beside the belt, where the wheel takes no room of theirs.
        return most >= THINNEST_LIP
          ? [loweredTo(issue, most)]
          : [{ ...issue, mend: { path: 'fixture.parameters.lip', value: 'pads' } }];
      }
      return [];
    }),
  );

/** A pass that leaves d more of the depth lies d further out. None where the pass before leaves less. */
const leavingMore = (sequence: EdgeRestInput['sequence']) => ({
  words: words.undercuts,
  mend: (i: number, _: string, margin: number): Mend | undefined => {
    const left = gridUp((sequence[i]?.depthLeft ?? 0) - margin);
    const before = sequence[i - 1]?.depthLeft ?? Infinity;
    return left <= before ? { path: `sequence.${i}.depthLeft`, value: left } : undefined;
  },
});

/** Warnings about a plan as a whole, and what makes it useless. */
export const planIssues = (
  { blades, grinder, sequence, parameters: p }: EdgeRestInput,
  { settings, lines }: EdgeRestPlan,
  wheel: Wheel,
): Issue[] => {
  const issues: Issue[] = [];
  const lifts = Math.min(Infinity, ...settings.map(({ push }) => push.seatForceMin));
  if (lifts <= 0) issues.push(problem('blade-lifts', 'grinder.belt.direction', words.lifts(lifts)));
  const wrap = Math.min(Infinity, ...settings.map(({ wrapMargin }) => wrapMargin));
  if (wrap < 0)
    issues.push(problem('contact-off-wheel', 'grinder.wheels', words.offWheel(wheel.id, wrap)));
  const from = Math.max(...settings.map(({ push }) => push.from));
  const to = Math.min(...settings.map(({ push }) => push.to));
  if (from > to)
    issues.push(
      problem('no-push-window', 'fixture.parameters', words.noWindow(from, to), 'warning'),
    );
  const left = sequence.at(-1)?.depthLeft ?? 0;
  if (left > 0) {
    const at = `sequence.${sequence.length - 1}.depthLeft`;
    issues.push(problem('last-leaves', at, words.lastLeaves(left), 'warning'));
  }
  for (const { blade, side, web, guided, places, greatestDeviation } of lines) {
    const i = blades.findIndex(({ name }) => name === blade);
    const path = `blades.${i}.bevels.${side}`;
    if (web.thickness < p.leastWeb) {
      const why = words.thinWeb(blade, sides[side], web.thickness, web.at, p.leastWeb);
      issues.push(problem('thin-web', `${path}.depth`, why, 'warning'));
    }
    const length = places.at(-1)?.u ?? 0;
    if (guided < length - 1e-6) {
      const why = words.edgeOverLip(blade, sides[side], guided, length, p.lipReach, p.lip);
      const severity = guided < grinder.belt.width ? 'warning' : 'note';
      issues.push(problem('edge-over-lip', `blades.${i}.outline`, why, severity));
    }
    const allowed = blades[i]?.line.allowed ?? Infinity;
    if (greatestDeviation > allowed) {
      const said = { blade, side: sides[side], family: blades.length > 1 };
      const why = plain.offLine(said, greatestDeviation, allowed);
      issues.push(problem('off-line', `blades.${i}.line`, why, 'warning'));
    }
  }
  return [...issues, ...passWarnings(blades, sequence, settings, leavingMore(sequence))];
};
