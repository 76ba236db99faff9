import { problem, type Issue } from '../core/issue.ts';
import { asin } from '../core/trigonometry.ts';
import { degrees, toHundredth } from '../core/units.ts';
import { supportRadius } from '../grinder/belt-path.ts';
import type { Grinder } from '../grinder/schema.ts';
import { text } from '../text/index.ts';

const words = text.grind.plan;

interface Pass {
  readonly backing: string;
}

/** Radii of the convex faces behind the belt in some passes, mm. */
const radiiOf = (grinder: Grinder, sequence: readonly Pass[]): readonly number[] =>
  grinder.backings
    .filter(({ id }) => sequence.some(({ backing }) => backing === id))
    .flatMap((backing) => supportRadius(grinder, backing) ?? []);

/** Whether the last pass, which leaves the grind line, grinds on a convex face. */
export const endsConvex = (grinder: Grinder, sequence: readonly Pass[]): boolean =>
  radiiOf(grinder, sequence.slice(-1)).length > 0;

/**
 * A warning where a pass grinds on a convex face: settings, lines and checks are those of a flat
 * one, and the sentence tells by how much the face leans at an end of the platen, in degrees: half
 * the platen is the sine of that lean times the radius.
 */
export const convexFace = (grinder: Grinder, sequence: readonly Pass[]): Issue[] => {
  const { platen } = grinder;
  if (platen.kind === 'none') return [];
  const radii = radiiOf(grinder, sequence);
  if (radii.length === 0) return [];
  const radius = Math.min(...radii);
  const lean = toHundredth(degrees(asin(Math.min(1, (platen.top - platen.bottom) / 2 / radius))));
  return [problem('convex-face', 'grinder.platen', words.convexFace(radius, lean), 'warning')];
};
