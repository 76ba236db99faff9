import { problem, type Issue } from '../core/issue.ts';
import { asin } from '../core/trigonometry.ts';
import { degrees, toHundredth } from '../core/units.ts';
import { supportRadius } from '../grinder/belt-path.ts';
import type { Grinder } from '../grinder/schema.ts';
import { text } from '../text/index.ts';

const words = text.grind.plan;

/**
 * A warning where a pass grinds on a convex face: settings, lines and checks are those of a flat
 * one, and the sentence tells by how much the face leans at an end of the platen, in degrees: half
 * the platen is the sine of that lean times the radius.
 */
export const convexFace = (
  { platen, backings, ...grinder }: Grinder,
  sequence: readonly { readonly backing: string }[],
): Issue[] => {
  if (platen.kind === 'none') return [];
  const radii = backings
    .filter(({ id }) => sequence.some(({ backing }) => backing === id))
    .flatMap((backing) => supportRadius({ ...grinder, platen, backings }, backing) ?? []);
  if (radii.length === 0) return [];
  const radius = Math.min(...radii);
  const lean = toHundredth(degrees(asin(Math.min(1, (platen.top - platen.bottom) / 2 / radius))));
  return [problem('convex-face', 'grinder.platen', words.convexFace(radius, lean), 'warning')];
};
