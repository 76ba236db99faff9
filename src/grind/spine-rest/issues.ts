import { problem, type Issue } from '../../core/issue.ts';
import { bladeLength } from '../../blade/shape.ts';
import { text } from '../../text/index.ts';
import { convexFace } from '../convex.ts';
import { jobIssues, orNothingGround, platenIssues } from '../input-issues.ts';
import { offLine } from '../line-mend.ts';
import { passWarnings } from '../pass-warnings.ts';
import { reachable } from './angle.ts';
import type { Job } from './preview.ts';
import type { Run } from './run.ts';
import { bladework, edgeOf, wishOf } from './stations.ts';
import type { SpineRestInput, SpineRestPlan, SpineRestSetting } from './types.ts';
import { strokeOf, windowsOf } from './windows.ts';

const words = text.grind.plan;

/** The blades made ready. */
export const jobsOf = ({ blades, grinder, parameters: p }: SpineRestInput): Job[] =>
  blades.map((blade) => {
    const { width } = grinder.belt;
    const stroke = strokeOf(width, bladeLength(blade.outline), p.plungeStop, p.tipOverlap);
    const half = width / 2;
    const ends = [stroke.from - half, stroke.from + half, stroke.to - half, stroke.to + half];
    const work = bladework(blade, p.noseWidth, ends);
    return {
      work,
      wishes: {
        left: wishOf(work, 'left', p.noseWidth),
        right: wishOf(work, 'right', p.noseWidth),
      },
      stroke,
      windows: windowsOf(
        work.stations.map(({ u }) => u),
        stroke,
      ),
    };
  });

/** What a plan cannot do without. */
export const inputIssues = (input: SpineRestInput): readonly Issue[] => {
  const { blades, parameters } = input;
  const low = blades.flatMap((blade, i): Issue[] => {
    const { stations, reference } = bladework(blade, parameters.noseWidth);
    const place = stations[reference];
    return place === undefined || place.height < 4
      ? [problem('too-low', `blades.${i}`, words.tooLow(blade.name, place?.height ?? 0))]
      : [];
  });
  const issues = [...jobIssues(input), ...platenIssues(input, words), ...low];
  return orNothingGround(issues, input, words.nothingGround);
};

/** Runs whose setoff a blade cannot take at its bevel place, and wishes no setoff can meet. */
export const runIssues = (runs: readonly Run[], lean: number): Issue[] =>
  runs.flatMap(({ pass, side, setoff, last, cuts }) =>
    cuts.flatMap(({ job: { work, wishes }, before, faces }): Issue[] => {
      const i = work.reference;
      const [station, section] = [work.stations[i], before[i]];
      if (station === undefined || section === undefined) return [];
      const span = reachable(section, edgeOf(work, station, side, pass.edge), lean);
      const wish = wishes[side]?.angle;
      if (last && wish !== undefined && span !== undefined) {
        const { from, to } = span.angle;
        if (wish < from || wish > to) {
          const why = text.grind.angleOutOfReach(wish, from, to);
          return [problem('angle-out-of-reach', 'blades', why)];
        }
      }
      if (faces[i] !== undefined) return [];
      const where =
        span === undefined ? words.nowhere : words.span(span.setoff.from, span.setoff.to);
      const { name } = work.blade;
      const why = words.outOfReach(name, pass.belt, words.side[side], setoff, where);
      return [problem('setoff-out-of-reach', 'blades', why)];
    }),
  );

/** Warnings about a plan as a whole. */
export const planIssues = {
  pushTooHigh: (from: number, to: number): Issue[] => [
    problem('push-too-high', 'fixture.parameters', words.pushTooHigh(from, to), 'warning'),
  ],

  beltUp: (settings: readonly SpineRestSetting[]): Issue[] => {
    const least = Math.min(Infinity, ...settings.map(({ push }) => push.seatForceMin));
    return least > 0 ? [] : [problem('blade-lifts', 'grinder.belt.direction', words.beltUp(least))];
  },

  of: (
    { blades, grinder, sequence }: SpineRestInput,
    { settings, lines }: SpineRestPlan,
  ): Issue[] => {
    const last = sequence.at(-1);
    const at = `sequence.${sequence.length - 1}`;
    const steep =
      last !== undefined && last.steeper !== 0
        ? [problem('steep-last', at, words.steepLast(last.steeper), 'warning')]
        : [];
    const passes = passWarnings(blades, sequence, settings);
    const off = lines.flatMap((line) => offLine(blades, line));
    return [...steep, ...convexFace(grinder, sequence), ...passes, ...off];
  },
} as const;
