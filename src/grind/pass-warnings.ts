import type { Blade, Side } from '../blade/schema.ts';
import { problem, type Issue, type Mend } from '../core/issue.ts';
import { cos } from '../core/trigonometry.ts';
import { gridUp, radians } from '../core/units.ts';
import { text } from '../text/index.ts';

const words = text.grind.plan;

/** Less metal than this is nothing, mm^3: a tenth of a milligram of steel. */
const LEAST_VOLUME = 0.01;

interface Passed {
  readonly step: number;
  readonly side: Side;
  readonly belt: string;
  /** Of a flat face to the midplane, degrees. */
  readonly angle?: number;
  readonly blades: readonly {
    readonly blade: string;
    readonly volume: number;
    readonly undercutMargin: number;
  }[];
}

/** What is said of a pass that undercuts, and what keeps it outside the finished face. */
interface Undercut {
  readonly words: typeof words.undercuts;
  /**
   * The value of the pass at which it stays as far outside as it comes too near by a margin (mm,
   * negative) square to its face, if there is one.
   */
  readonly mend: (
    pass: number,
    blade: string,
    margin: number,
    angle: number | undefined,
  ) => Mend | undefined;
}

/**
 * A pass that stops e thicker on a side lies e further out there, e cos a square to a face that leans
 * by a, and less than that nowhere. None where the pass before stops thinner.
 */
const byEdge = (
  blades: readonly Blade[],
  sequence: readonly { readonly edge: number }[],
): Undercut => ({
  words: words.undercuts,
  mend: (i, blade, margin, angle = 0) => {
    const left = blades.find(({ name }) => name === blade)?.edge.shareLeft ?? 0.5;
    const before =
      sequence[i - 1]?.edge ?? Math.min(...blades.map(({ edge }) => edge.asHeatTreated));
    const share = Math.min(left, 1 - left) * cos(radians(angle));
    const edge = gridUp((sequence[i]?.edge ?? 0) - margin / share);
    return edge <= before ? { path: `sequence.${i}.edge`, value: edge } : undefined;
  },
});

/** One word on every pass that takes nothing or undercuts: the side and blade that need it most. */
export const passWarnings = (
  blades: readonly Blade[],
  sequence: readonly { readonly edge: number }[],
  settings: readonly Passed[],
  undercut: Undercut = byEdge(blades, sequence),
): Issue[] =>
  sequence.flatMap((_, i): Issue[] => {
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
    const why = undercut.words(belt, i + 1, words.side[side], blade, undercutMargin);
    const mend = undercut.mend(i, blade, undercutMargin, worst.angle);
    return [{ ...problem('undercuts', where, why, 'warning'), ...(mend ? { mend } : {}) }];
  });
