import { loweredTo, mendedBy, problem, type Issue } from '../core/issue.ts';
import { gridUp } from '../core/units.ts';
import { text } from '../text/index.ts';
import type { Design } from './schema.ts';

const words = text.document.rules;

/** Two thicknesses that a person would call the same, mm. */
const SAME = 0.005;

/** The edge that every blade still has when it comes to the first belt, mm. */
const thickest = ({ blades }: Design): number =>
  Math.min(...blades.map(({ edge }) => edge.asHeatTreated));

/**
 * A pass that stops thicker than the one before: the earlier one is raised towards the edge as heat
 * treated, as far as leaves all passes before it as much to grind as itself; where it stops as thick
 * as that, it is lowered.
 */
const risen = (issue: Issue, i: number, edge: number, before: number, most: number): Issue =>
  edge < most
    ? {
        ...issue,
        mend: {
          path: `sequence.${i - 1}.edge`,
          value: Math.min(gridUp(edge + (most - edge) / (i + 1)), most),
        },
      }
    : mendedBy(issue, before);

/** Grinding takes metal away, from steep to flat. */
const orderIssues = (design: Design): Issue[] => {
  const most = thickest(design);
  return design.sequence.flatMap((pass, i) => {
    const before = design.sequence[i - 1];
    if (before === undefined) return [];
    const at = `sequence.${i}`;
    const rises = words.edgeRises(i + 1, pass.edge, before.edge);
    const steeper = words.steeperRises(i + 1, pass.steeper, before.steeper);
    return [
      ...(pass.edge > before.edge
        ? [risen(problem('edge-rises', `${at}.edge`, rises), i, pass.edge, before.edge, most)]
        : []),
      ...(pass.steeper > before.steeper
        ? [mendedBy(problem('steeper-rises', `${at}.steeper`, steeper), before.steeper)]
        : []),
    ];
  });
};

/** The first belt must meet the edge as it comes, the last one leave it as it is wanted. */
const endIssues = ({ sequence, blades }: Design): Issue[] => {
  const [first, second, last] = [sequence[0], sequence[1], sequence.at(-1)];
  if (first === undefined || last === undefined) return [];
  const end = sequence.length - 1;
  const reaches = (wanted: number): boolean => Math.abs(last.edge - wanted) <= SAME;
  // One sequence ends at one edge: with a blade that it serves, others have to want the same.
  const served = blades.find(({ edge }) => reaches(edge.wanted));
  const issues = blades.flatMap(({ name, edge: { wanted, asHeatTreated } }, i) => {
    const missed = served
      ? problem(
          'edge-not-shared',
          `blades.${i}.edge.wanted`,
          words.edgeNotShared(name, wanted, served.name, last.edge),
        )
      : problem(
          'edge-not-reached',
          `sequence.${end}.edge`,
          words.edgeNotReached(last.edge, name, wanted),
        );
    const notMet = words.edgeNotMet(first.edge, name, asHeatTreated);
    // Half way down to the next stop, so that both grind.
    const start = (asHeatTreated + Math.min(second?.edge ?? wanted, asHeatTreated)) / 2;
    return [
      ...(reaches(wanted) ? [] : [mendedBy(missed, served ? last.edge : wanted)]),
      ...(first.edge > asHeatTreated
        ? [loweredTo(problem('edge-not-met', 'sequence.0.edge', notMet), start)]
        : []),
    ];
  });
  return last.steeper > 0
    ? [
        ...issues,
        mendedBy(
          problem('ends-steeper', `sequence.${end}.steeper`, words.endsSteeper(last.steeper)),
          0,
        ),
      ]
    : issues;
};

/** What holds the passes of a design together, and what they have to do with its blades. */
export const sequenceIssues = (design: Design): Issue[] => [
  ...orderIssues(design),
  ...endIssues(design),
];
