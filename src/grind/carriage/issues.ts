import { problem, type Issue } from '../../core/issue.ts';
import { text } from '../../text/index.ts';
import { convexFace } from '../convex.ts';
import { jobIssues, orNothingGround, platenIssues } from '../input-issues.ts';
import { offLine } from '../line-mend.ts';
import { passWarnings } from '../pass-warnings.ts';
import { bladework, wishOf } from '../spine-rest/stations.ts';
import { mounting, turnedTo } from './mount.ts';
import type { CarriageJob, CarriageRun } from './run.ts';
import { tipFacets } from './tip.ts';
import type { CarriageInput, CarriagePlan } from './types.ts';

const words = text.grind.plan;
const own = text.family.carriage.plan;

/** Steepest tilt of the carriage on its base, degrees: beyond, a heel screw is far out. */
export const STEEPEST = 25;
/** Edge thickness beyond what was asked for that is worth a word, mm a side. */
const UNEVEN = 0.05;

/** The blades made ready: clamped along the straight edge, then on the falls of the tip. */
export const jobsOf = ({ blades, parameters: { jaw, plungeStop, tipSettings } }: CarriageInput) =>
  blades.map((blade): CarriageJob => {
    const work = bladework(blade, 0, [plungeStop]);
    const u = work.stations[work.reference]?.u ?? 0;
    return {
      mount: mounting(work, jaw),
      wishes: { left: wishOf(work, 'left', 0), right: wishOf(work, 'right', 0) },
      turned: [turnedTo(work.shape, u), ...tipFacets(work.shape, u, tipSettings)],
    };
  });

/** What a plan cannot do without. */
export const inputIssues = (input: CarriageInput): readonly Issue[] => {
  const { edgeHeight, footRadius } = input.parameters;
  const why = own.edgeTooLow(edgeHeight, 2 * footRadius);
  const low =
    edgeHeight > 2 * footRadius ? [] : [problem('edge-too-low', 'fixture.parameters', why)];
  const issues = [...jobIssues(input), ...platenIssues(input, own), ...low];
  return orNothingGround(issues, input, own.nothingGround);
};

/** Runs that the carriage cannot be tipped to, or whose plane misses the blade it is set by. */
export const runIssues = (runs: readonly CarriageRun[], lean: number): Issue[] =>
  runs.flatMap(({ faceAngle, pass, side, facet, cuts: [first] }): Issue[] => {
    const tilt = faceAngle + lean;
    if (!(tilt >= 0 && tilt <= STEEPEST))
      return [
        problem(
          'tilt-out-of-reach',
          'blades',
          own.tilt(pass.belt, words.side[side], tilt, STEEPEST),
        ),
      ];
    const i = first?.job.mount.work.reference ?? 0;
    return facet > 0 || first?.faces[i] !== undefined
      ? []
      : [problem('place-behind-stop', 'fixture.parameters', own.behindStop)];
  });

/** Warnings about a plan as a whole. */
export const planIssues = (
  { blades, grinder, sequence, parameters: p }: CarriageInput,
  { settings, lines }: CarriagePlan,
): Issue[] => {
  const last = sequence.at(-1);
  const steep =
    last !== undefined && last.steeper !== 0
      ? [problem('steep-last', `sequence.${sequence.length - 1}`, own.steepLast(last.steeper))]
      : [];
  const jaws = settings.filter(({ jawBeside, jawOverBelt }) => jawBeside < 0 && jawOverBelt < 0);
  const [jaw] = jaws;
  const touching =
    jaw === undefined
      ? []
      : [problem('jaw-at-belt', 'fixture.parameters', own.jaw(jaw.jawBeside, jaw.jawOverBelt))];
  const straight = settings.filter(({ facet }) => facet === 0);
  const passes = passWarnings(blades, sequence, straight);
  const highest = Math.min(...settings.map(({ push }) => push.to));
  const push =
    highest < p.pushHeight
      ? [problem('push-too-high', 'fixture.parameters', own.push(p.pushHeight, highest))]
      : [];
  const base = Math.min(...settings.map(({ push: { baseForceMin } }) => baseForceMin));
  const lifts =
    base > 0 ? [] : [problem('carriage-lifts', 'grinder.belt.direction', own.lifts(base))];
  const uneven = lines.flatMap(({ blade, side, places, tip }): Issue[] => {
    const i = blades.findIndex(({ name }) => name === blade);
    const least = Math.min(0, ...places.map(({ leftStanding }) => leftStanding));
    const where = words.side[side];
    return [
      ...(tip.leftSteering > UNEVEN
        ? [
            problem(
              'uneven-edge',
              `blades.${i}.outline`,
              own.uneven(blade, where, tip.leftSteering, UNEVEN, p.tipSettings),
            ),
          ]
        : []),
      ...(least < -UNEVEN
        ? [problem('thin-edge', `blades.${i}.thickness`, own.thin(blade, where, -least, UNEVEN))]
        : []),
    ];
  });
  const off = lines.flatMap((line) => offLine(blades, line));
  const warnings = [...steep, ...touching, ...push, ...lifts, ...uneven];
  return [
    ...warnings.map((one): Issue => ({ ...one, severity: 'warning' })),
    ...convexFace(grinder, sequence),
    ...off,
    ...passes,
  ];
};
