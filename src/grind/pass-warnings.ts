import type { Blade, Side } from '../blade/schema.ts';
import { problem, type Issue } from '../core/issue.ts';
import { gridUp } from '../core/units.ts';
import { text } from '../text/index.ts';

const words = text.grind.plan;

/** Less metal than this is nothing, mm^3: a tenth of a milligram of steel. */
const LEAST_VOLUME = 0.01;

interface Passed {
  readonly step: number;
  readonly side: Side;
  readonly belt: string;
  readonly blades: readonly {
    readonly blade: string;
    readonly volume: number;
    readonly undercutMargin: number;
  }[];
}

/**
 * The issue with the edge at which a pass stays as far outside as it comes too near: a pass that
 * stops e thicker on a side lies e further out there, and less than that nowhere. None where the
 * pass before stops thinner.
 */
const atThickerEdge = (
  issue: Issue,
  edges: { readonly now: number; readonly before: number },
  blade: Blade | undefined,
  margin: number,
): Issue => {
  const left = blade?.edge.shareLeft ?? 0.5;
  const edge = gridUp(edges.now - margin / Math.min(left, 1 - left));
  const mend = { path: `${issue.path}.edge`, value: edge };
  return edge <= edges.before ? { ...issue, mend } : issue;
};

/** One word on every pass that takes nothing or undercuts: the side and blade that need it most. */
export const passWarnings = (
  blades: readonly Blade[],
  sequence: readonly { readonly edge: number }[],
  settings: readonly Passed[],
): Issue[] =>
  sequence.flatMap(({ edge }, i): Issue[] => {
    const at = settings
      .filter(({ step }) => step === i + 1)
      .flatMap((setting) => setting.blades.map((blade) => ({ ...setting, ...blade })));
    const [empty] = at.filter(({ volume }) => volume < LEAST_VOLUME);
    const [worst] = [...at].sort((p, q) => p.undercutMargin - q.undercutMargin);
    const where = `sequence.${i}`;
    if (empty !== undefined) {
      const why = words.takesNothing(empty.belt, i + 1, words.side[empty.side], empty.blade);
      return [problem('takes-nothing', where, why, 'note')];
    }
    if (worst === undefined || worst.undercutMargin >= 0) return [];
    const { belt, side, blade, undercutMargin } = worst;
    const why = words.undercuts(belt, i + 1, words.side[side], blade, undercutMargin);
    const ground = blades.find(({ name }) => name === blade);
    const before =
      sequence[i - 1]?.edge ?? Math.min(...blades.map((one) => one.edge.asHeatTreated));
    const issue = problem('undercuts', where, why, 'warning');
    return [atThickerEdge(issue, { now: edge, before }, ground, undercutMargin)];
  });
