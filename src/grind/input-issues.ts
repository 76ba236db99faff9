import { SIDES, type Blade, type Side } from '../blade/schema.ts';
import { problem, type Issue } from '../core/issue.ts';
import type { Grinder } from '../grinder/schema.ts';
import { text } from '../text/index.ts';

const words = text.grind.plan;

interface Input {
  readonly blades: readonly Blade[];
  readonly grinder: Grinder;
  readonly sequence: readonly { readonly belt: string; readonly backing: string }[];
}

type Why = { readonly message: string; readonly fix: string };

export const listed = (items: readonly { readonly id: string }[]): string =>
  items.map(({ id }) => id).join(', ');

/** What every plan needs: blades, and passes with belts and backings that the grinder has. */
export const jobIssues = ({ blades, grinder: { belts, backings }, sequence }: Input): Issue[] => {
  const issues: Issue[] = [];
  if (blades.length === 0) issues.push(problem('no-blades', 'blades', words.noBlades));
  if (sequence.length === 0) issues.push(problem('no-sequence', 'sequence', words.noSequence));
  sequence.forEach(({ belt, backing }, i) => {
    if (!belts.some(({ id }) => id === belt)) {
      const why = words.unknownBelt(belt, listed(belts));
      issues.push(problem('unknown-belt', `sequence.${i}.belt`, why));
    }
    if (!backings.some(({ id }) => id === backing)) {
      const why = words.unknownBacking(backing, listed(backings));
      issues.push(problem('unknown-backing', `sequence.${i}.backing`, why));
    }
  });
  return issues;
};

/** What a plan on the platen needs besides, in a family's own words: a platen, and no hollows. */
export const platenIssues = (
  { blades, grinder }: Input,
  why: { readonly noPlaten: Why; readonly hollow: (blade: string, side: string) => Why },
): Issue[] => {
  const none =
    grinder.platen.kind === 'none' ? [problem('no-platen', 'grinder.platen', why.noPlaten)] : [];
  const hollow = blades.flatMap(({ name, bevels }, i) =>
    SIDES.filter((side) => bevels[side].kind === 'hollow').map((side) =>
      problem('hollow-on-platen', `blades.${i}.bevels.${side}`, why.hollow(name, words.side[side])),
    ),
  );
  return [...none, ...hollow];
};

const onPlaten = ({ bevels }: Blade, side: Side): boolean =>
  bevels[side].kind !== 'none' && bevels[side].kind !== 'hollow';

/** The issues of a plan on the platen, or, where there are none, that no blade has a bevel for it. */
export const orNothingGround = (
  issues: readonly Issue[],
  { blades }: Input,
  nothingGround: Why,
): readonly Issue[] =>
  issues.length > 0 || blades.some((blade) => SIDES.some((side) => onPlaten(blade, side)))
    ? issues
    : [problem('nothing-ground', 'blades', nothingGround)];
