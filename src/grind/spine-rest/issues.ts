import { SIDES } from '../../blade/schema.ts';
import type { Issue } from '../../core/issue.ts';
import { bladeLength } from '../../blade/shape.ts';
import { text } from '../../text/index.ts';
import { offLine } from '../line-mend.ts';
import { passWarnings } from '../pass-warnings.ts';
import { problem } from '../within.ts';
import { reachable } from './angle.ts';
import type { Job } from './preview.ts';
import type { Run } from './run.ts';
import { bladework, edgeOf, wishOf } from './stations.ts';
import type { SpineRestInput, SpineRestPlan, SpineRestSetting } from './types.ts';
import { strokeOf, windowsOf } from './windows.ts';

const words = text.grind.plan;

const warning = (issue: Issue): Issue => ({ ...issue, severity: 'warning' });

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

const listed = (items: readonly { readonly id: string }[]): string =>
  items.map(({ id }) => id).join(', ');

/** What a plan cannot do without. */
export const inputIssues = ({ blades, grinder, sequence, parameters }: SpineRestInput): Issue[] => {
  const issues: Issue[] = [];
  if (blades.length === 0) issues.push(problem('no-blades', 'blades', words.noBlades));
  if (sequence.length === 0) issues.push(problem('no-sequence', 'sequence', words.noSequence));
  if (grinder.platen.kind === 'none')
    issues.push(problem('no-platen', 'grinder.platen', words.noPlaten));
  sequence.forEach(({ belt, backing }, i) => {
    if (!grinder.belts.some(({ id }) => id === belt)) {
      const why = words.unknownBelt(belt, listed(grinder.belts));
      issues.push(problem('unknown-belt', `sequence.${i}.belt`, why));
    }
    if (!grinder.backings.some(({ id }) => id === backing)) {
      const why = words.unknownBacking(backing, listed(grinder.backings));
      issues.push(problem('unknown-backing', `sequence.${i}.backing`, why));
    }
  });
  blades.forEach((blade, i) => {
    for (const side of SIDES)
      if (blade.bevels[side].kind === 'hollow') {
        const why = words.hollow(blade.name, words.side[side]);
        issues.push(problem('hollow-on-platen', `blades.${i}.bevels.${side}`, why));
      }
    const { stations, reference } = bladework(blade, parameters.noseWidth);
    const place = stations[reference];
    if (place === undefined || place.height < 4)
      issues.push(problem('too-low', `blades.${i}`, words.tooLow(blade.name, place?.height ?? 0)));
  });
  const ground = blades.some(({ bevels }) =>
    SIDES.some((side) => bevels[side].kind !== 'none' && bevels[side].kind !== 'hollow'),
  );
  if (blades.length > 0 && !ground && issues.length === 0)
    issues.push(problem('nothing-ground', 'blades', words.nothingGround));
  return issues;
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
    warning(problem('push-too-high', 'fixture.parameters', words.pushTooHigh(from, to))),
  ],

  beltUp: (settings: readonly SpineRestSetting[]): Issue[] => {
    const least = Math.min(Infinity, ...settings.map(({ push }) => push.seatForceMin));
    return least > 0 ? [] : [problem('blade-lifts', 'grinder.belt.direction', words.beltUp(least))];
  },

  of: ({ blades, sequence }: SpineRestInput, { settings, lines }: SpineRestPlan): Issue[] => {
    const last = sequence.at(-1);
    const steep =
      last !== undefined && last.steeper !== 0
        ? [problem('steep-last', `sequence.${sequence.length - 1}`, words.steepLast(last.steeper))]
        : [];
    const passes = passWarnings(blades, sequence, settings);
    const off = lines.flatMap((line) => offLine(blades, line));
    return [...steep.map(warning), ...passes, ...off];
  },
} as const;
