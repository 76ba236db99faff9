import {
  rangeCheck,
  shapeOf,
  type Blade,
  type BladePose,
  type CheckResult,
  type Part,
} from '../../../src/family/index.ts';
import { isGround, type Grinding } from '../grinding.ts';
import { overNose } from './sweeps.ts';
import { parameterPath, words } from './words.ts';

const { basis } = words;

/** How much of a push stick, along y, is its handle with the stop, mm. */
const STICK_GRIP = 95;

/** A stroked fixture and the words for what its blade lies on. */
export interface Supported {
  readonly settings: readonly Grinding[];
  readonly blades: readonly Blade[];
  readonly poses: (setting: string, blade: string) => readonly BladePose[];
  /** Half length of what the blade lies on, and how much of it must lie there, mm. */
  readonly half: number;
  readonly least: number;
  readonly labels: { readonly supportHeel: string; readonly supportTip: string };
  readonly fix: string;
  /** The parameter that widens the support. */
  readonly wider: string;
}

/** How much of the blade lies on its support with the plunge, and with the tip, at the belt. */
export const supportChecks = (q: Supported): CheckResult[] =>
  (['heel', 'tip'] as const).map((end) => {
    const all = q.settings.flatMap((setting) =>
      q.blades.filter(isGround(setting)).map((blade) => {
        const { id } = setting;
        const poses = q.poses(id, blade.name);
        const pose = end === 'heel' ? poses[0] : poses.at(-1);
        const { length } = shapeOf(blade);
        const found = pose ? overNose(pose.frame, -blade.ricasso, length, q.half) : null;
        return { found, pose: { setting: id, blade: blade.name } };
      }),
    );
    // A stroke of which nothing is known comes before all others.
    const [worst] = all.sort((a, b) => (a.found ?? -1) - (b.found ?? -1));
    return rangeCheck({
      id: `range/support/${end}`,
      label: end === 'heel' ? q.labels.supportHeel : q.labels.supportTip,
      found: worst?.found ?? null,
      atLeast: q.least,
      basis: basis.practice,
      fix: q.fix,
      parameter: parameterPath(end === 'heel' ? q.wider : 'tipOverlap'),
      ...(worst ? { pose: worst.pose } : {}),
    });
  });

/**
 * How far the guard of the finished push block, standing at `level`, rises above the highest
 * place of any blade, mm.
 */
export const guardCheck = (
  parts: readonly Part[],
  level: number,
  highest: number,
  least: number,
  own: { readonly label: string; readonly fix: string },
): CheckResult => {
  const outer = parts.find(({ id }) => id === 'push-block')?.layers[0]?.profile.outer;
  const top = outer?.kind === 'path' ? Math.max(...outer.vertices.map(({ y }) => y)) : null;
  return rangeCheck({
    ...own,
    id: 'range/guard',
    kind: 'hand',
    found: top === null ? null : level + top - highest,
    atLeast: least,
    basis: basis.setting,
    parameter: parameterPath('guardRise'),
  });
};

/**
 * The finished push stick: how far behind its nose the stop holds the hand, mm. The stop is what
 * stands farthest out of its handle, which rises at 45 degrees.
 */
export const stickCheck = (parts: readonly Part[], least: number): CheckResult => {
  const outer = parts.find(({ id }) => id === 'push-stick')?.layers[0]?.profile.outer;
  const corners = outer?.kind === 'path' ? outer.vertices : [];
  const nose = Math.min(...corners.map(({ x }) => x));
  const end = Math.max(...corners.map(({ x }) => x));
  const handle = corners.filter(({ x }) => x > end - STICK_GRIP);
  const out = Math.max(...handle.map(({ x, y }) => y - x));
  const stops = handle.filter(({ x, y }) => y - x > out - 1e-6).map(({ x }) => x);
  return rangeCheck({
    id: 'range/stick',
    label: words.labels.stick,
    kind: 'hand',
    found: stops.length > 0 ? Math.max(...stops) - nose : null,
    atLeast: least,
    basis: basis.practice,
    fix: words.fix.stick,
    parameter: parameterPath('handDistance'),
  });
};
