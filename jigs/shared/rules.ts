import {
  cos,
  type Design,
  type Issue,
  loweredTo,
  mendedBy,
  type NumberParameter,
  problem,
  radians,
  raisedTo,
  sin,
  text,
} from '../../src/family/index.ts';
import { parameters, type Values } from './parameters.ts';

const words = text.family.shared.issues;

const path = (key: keyof Values): string => `fixture.parameters.${key}`;

/** Room that a nose screw and its washer need beside the step, mm. */
const SCREW_ROOM = 20;
const LEAST_STRIPS = 46;

/** What rounding and chords of the checked solids may take off a gap, mm. */
export const ROUNDING = 0.01;

/** Belt thickening while it runs: flutter and splice, mm. */
export const runningGrowth = ({ grinder }: Design): number =>
  grinder.belt.flutter + grinder.belt.splice;

/**
 * How much nearer the lower front edge of a plate is to a platen that leans back than its upper
 * one, mm; with the slant of the gap itself (1 / cos of the lean) rounded up.
 */
export const leanLoss = ({ grinder }: Design, thickness: number, gap: number): number => {
  const t = radians(Math.abs(grinder.lean));
  return (grinder.lean > 0 ? thickness * sin(t) : 0) + gap * (1 - cos(t));
};

/** The thinnest sheet of the workshop that is at least as thick, mm; the thickness itself where none is. */
export const sheetFrom = ({ making }: Design, least: number): number => {
  const sheets = making.plates.thicknesses.filter((t) => t >= least);
  return sheets.length > 0 ? Math.min(...sheets) : least;
};

/** The thickest that is at most as thick; the thickness itself where none is. */
export const sheetUpTo = ({ making }: Design, most: number): number => {
  const sheets = making.plates.thicknesses.filter((t) => t <= most);
  return sheets.length > 0 ? Math.max(...sheets) : most;
};

/** Plates that no sheet of the workshop gives, by parameter. */
export const sheetIssues = (
  { making }: Design,
  plates: readonly {
    readonly key: string;
    readonly of: NumberParameter;
    readonly thickness: number;
  }[],
): Issue[] => {
  const { thicknesses } = making.plates;
  return plates
    .filter(({ thickness }) => !thicknesses.some((t) => Math.abs(t - thickness) < 1e-9))
    .map(({ key, of, thickness }) => {
      const away = (t: number): number => Math.abs(t - thickness);
      const [nearest] = thicknesses
        .filter((t) => t >= of.min && t <= of.max)
        .sort((a, b) => away(a) - away(b));
      const issue = problem(
        'thickness-missing',
        `fixture.parameters.${key}`,
        words.thicknessMissing(of, thickness, thicknesses, nearest !== undefined),
      );
      return nearest === undefined ? issue : mendedBy(issue, nearest);
    });
};

/** A stroke that ends with the tip still beyond the far edge of the belt: it is never ground. */
export const tipIssues = ({ grinder: { belt } }: Design, tipOverlap: number): Issue[] => {
  if (tipOverlap <= belt.width) return [];
  const why = words.tipUnground(tipOverlap, belt.width);
  return [loweredTo(problem('tip-unground', 'fixture.parameters.tipOverlap', why), belt.width)];
};

/** Combinations of parameters for which base, guide and feed cannot be laid out. */
export const rigIssues = (design: Design, v: Values, plate: NumberParameter): Issue[] => {
  const { process } = design.making.plates;
  const issues = sheetIssues(design, [
    { key: 'plate', of: plate, thickness: v.plate },
    { key: 'base', of: parameters.base, thickness: v.base },
  ]);
  issues.push(...tipIssues(design, v.tipOverlap));
  if (v.guide === 'slots' && (process === 'saw-drill' || process === 'plasma'))
    issues.push(
      mendedBy(problem('guide-needs-cut', path('guide'), words.guideNeedsCut(process)), 'strips'),
    );
  if (v.guide === 'strips' && v.guideLength < LEAST_STRIPS)
    issues.push(
      raisedTo(
        problem(
          'guide-too-short',
          path('guideLength'),
          words.guideTooShort(v.guideLength, LEAST_STRIPS),
        ),
        LEAST_STRIPS,
      ),
    );
  if (v.wing - v.stepWing < SCREW_ROOM)
    issues.push(
      raisedTo(
        problem(
          'wings-too-close',
          path('wing'),
          words.wingsTooClose(v.wing, v.stepWing, SCREW_ROOM),
        ),
        v.stepWing + SCREW_ROOM,
      ),
    );
  return issues;
};
