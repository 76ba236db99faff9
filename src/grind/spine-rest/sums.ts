import { problem, type Issue } from '../../core/issue.ts';
import { fail, ok, chain, type Result } from '../../core/result.ts';
import { text } from '../../text/index.ts';
import { spineRestParameters } from '../parameters.ts';
import { bevelHeight } from '../section/ground.ts';
import { barSection, type Section } from '../section/section.ts';
import { outside } from '../within.ts';
import { angleForBevel, type Bar } from './angle-for-bevel.ts';
import { angleFor, reachable } from './angle.ts';
import { setoffPerDegree, settle } from './settle.ts';

/** A fresh symmetric bar on a spine rest and the one thing asked of it; mm and degrees. */
export interface SpineRestQuestion {
  readonly spineThickness: number;
  /** Both sides together. */
  readonly edgeThickness: number;
  readonly height: number;
  readonly spineRadius: number;
  readonly lean: number;
  readonly target:
    { readonly angle: number } | { readonly setoff: number } | { readonly bevelHeight: number };
}

export interface SpineRestSums {
  readonly angle: number;
  readonly setoff: number;
  /** At most the blade's height. */
  readonly bevelHeight: number;
  /** Growth of the setoff with the angle at this edge, mm per degree. */
  readonly setoffPerDegree: number;
  readonly tilt: number;
  /** Where the near spine corner bears on the seat, mm from the abrasive face. */
  readonly cornerDistance: number;
  /** How high above the seat the spine touches the step, mm. */
  readonly stepContactHeight: number;
}

const words = text.grind;

const unfit = ({
  spineThickness,
  edgeThickness,
  height,
  spineRadius,
}: SpineRestQuestion): Issue[] => {
  const issues: Issue[] = [];
  if (edgeThickness >= spineThickness)
    issues.push(
      problem('edge-too-thick', 'edgeThickness', words.edgeTooThick(edgeThickness, spineThickness)),
    );
  const most = Math.min(spineThickness / 2, height);
  if (spineRadius > most)
    issues.push(
      problem('radius-too-large', 'spineRadius', words.radiusTooLarge(spineRadius, most)),
    );
  return issues;
};

/** The angle asked for, whichever way it is asked. */
const wantedAngle = (
  section: Section,
  bar: Bar,
  edge: number,
  { lean, target }: SpineRestQuestion,
): Result<number> => {
  const span = reachable(section, edge, lean);
  if (span === undefined) return fail(problem('never-leans', 'lean', words.neverLeans(lean)));
  const { from, to } = span.angle;
  if ('setoff' in target) {
    const angle = angleFor(section, edge, target.setoff, lean);
    if (angle !== undefined) return ok(angle);
    const { setoff } = span;
    const why = words.setoffOutOfReach(target.setoff, setoff.from, setoff.to);
    return fail(problem('setoff-out-of-reach', 'setoff', why));
  }
  if ('angle' in target) {
    if (target.angle >= from && target.angle <= to) return ok(target.angle);
    return fail(
      problem('angle-out-of-reach', 'angle', words.angleOutOfReach(target.angle, from, to)),
    );
  }
  const wanted = target.bevelHeight;
  if (wanted <= 0 || wanted > bar.height)
    return fail(problem('bevel-too-high', 'bevelHeight', words.bevelTooHigh(wanted, bar.height)));
  const angle = angleForBevel(bar, edge, wanted);
  if (angle >= from && angle <= to) return ok(angle);
  const [least, most] = [to, from].map((a) => bevelHeight(section, { edge, angle: a }));
  const why = words.bevelOutOfReach(wanted, least ?? 0, most ?? bar.height);
  return fail(problem('bevel-out-of-reach', 'bevelHeight', why));
};

/** Setoff, angle and bevel height of one fresh section, from any one of the three. */
export const spineRestSums = (question: SpineRestQuestion): Result<SpineRestSums> => {
  const { target, ...sizes } = question;
  const issues = outside(spineRestParameters, { ...sizes, ...target });
  if (issues.length > 0) return fail(...issues);
  const mismatched = unfit(question);
  if (mismatched.length > 0) return fail(...mismatched);
  const { spineThickness: thickness, height, spineRadius, lean } = question;
  const section = barSection(thickness, height, spineRadius);
  const edge = question.edgeThickness / 2;
  return chain(
    wantedAngle(section, { thickness, height, spineRadius }, edge, question),
    (angle) => {
      const face = { edge, angle };
      const { setoff, tilt, seat, step } = settle(section, face, lean);
      return ok({
        angle,
        setoff: 'setoff' in target ? target.setoff : setoff,
        bevelHeight: bevelHeight(section, face),
        setoffPerDegree: setoffPerDegree(section, face, lean),
        tilt,
        cornerDistance: seat[0],
        stepContactHeight: step[1],
      });
    },
  );
};
