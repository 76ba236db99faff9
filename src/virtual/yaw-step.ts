import type { Shape } from '../blade/shape.ts';
import { problem } from '../core/issue.ts';
import { fail, ok, type Result } from '../core/result.ts';
import { atan } from '../core/trigonometry.ts';
import { degrees } from '../core/units.ts';
import { text } from '../text/index.ts';
import type { SpineRestPass } from './types.ts';

const words = text.virtual.yawStep;

/** A straight step turned so that a tapered blade stands along the belt. */
export interface YawStep {
  /** Half the taper, degrees: the angle between flank and midplane. */
  readonly half: number;
}

/** Tapers whose halves differ by less are one, degrees. */
const SAME = 0.01;
/** Least taper worth a turned step, degrees. */
const LEAST = 1e-3;

/**
 * The step for a linearly tapering blade: turned by half the taper it lets the midplane stand along
 * the belt, so that the edge comes down evenly over the belt's width. The blade is turned end for end
 * between its sides, and the step is mirrored with it. Seen from above, x to the right and y towards
 * the maker (the left side's tip points along +x), a tip that thins brings the step's tip end nearer
 * to the belt. Fails for a blade without taper, and for one whose taper changes along the blade.
 */
export const yawStep = ({ thickness, length }: Shape): Result<YawStep> => {
  const places = [0, ...thickness.breaks.filter((u) => u > 0 && u < length), length];
  const halves = places.slice(1).map((to, i) => {
    const from = places[i] ?? 0;
    const fall = (thickness.value(from) - thickness.value(to)) / (to - from);
    return degrees(atan(fall / 2));
  });
  const [least, most] = [Math.min(...halves), Math.max(...halves)];
  if (Math.max(Math.abs(least), Math.abs(most)) < LEAST)
    return fail(problem('no-taper', 'blade.thickness', words.none));
  if (most - least > SAME)
    return fail(problem('taper-bends', 'blade.thickness', words.bent(least, most)));
  return ok({ half: (least + most) / 2 });
};

/** A pass with the step turned; in the pass u runs along the stroke whichever side is ground. */
export const withYawStep = (pass: SpineRestPass, { half }: YawStep): SpineRestPass => {
  const { body } = pass.holding;
  if (body.step.kind !== 'wide') return pass;
  const step = { ...body.step, yaw: -half };
  return { ...pass, holding: { ...pass.holding, body: { ...body, step } } };
};
