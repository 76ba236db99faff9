import type { Stroke } from '../grind/spine-rest/windows.ts';
import type { Hold, Reached } from './hold/hold.ts';
import type { Pose } from './pose.ts';

/** Poses along a stroke, in its order, and the places at which the blade could not stand. */
export interface Stroked {
  readonly reached: readonly Reached[];
  readonly missed: readonly number[];
}

/** How far a face may leave the straight way between two poses at a step of 1 mm, mm; by its square. */
const BEND = 3e-4;
/** How often a step is halved. */
const HALVINGS = 3;

/** Departure from straight of what the belt does to a blade, over three poses, mm. */
const bendOf = (a: Pose, b: Pose, c: Pose, height: number, half: number): number => {
  const k = (b.m - a.m) / (c.m - a.m);
  const off = (row: 'y' | 'z', i: 1 | 3): number =>
    Math.abs(a[row][i] + k * (c[row][i] - a[row][i]) - b[row][i]);
  return off('z', 3) * height + (off('y', 1) + off('z', 1)) * half;
};

/**
 * The poses of a stroke: at even places no farther apart than `step` mm, its ends among them, and
 * between two of these where what the belt does bends on the way.
 */
export const strokeOver = (
  { from, to, width }: Stroke,
  step: number,
  heightAt: (u: number) => number,
  hold: Hold,
): Stroked => {
  const missed: number[] = [];
  const at = (m: number): readonly Reached[] => {
    const found = hold(m);
    if (found === undefined) missed.push(m);
    return found === undefined ? [] : [found];
  };
  const parts = Math.ceil((to - from) / step - 1e-9);
  let reached = Array.from({ length: parts + 1 }, (_, i) =>
    at(parts === 0 ? from : from + ((to - from) * i) / parts),
  ).flat();
  for (let i = 0; i < HALVINGS; i += 1) {
    const bends = reached.map(({ pose, stoppedAt }, k) => {
      const [before, after] = [reached[k - 1]?.pose, reached[k + 1]?.pose];
      return before && after ? bendOf(before, pose, after, heightAt(stoppedAt), width / 2) : 0;
    });
    const steep = reached.map(
      (_, k) => Math.max(bends[k] ?? 0, bends[k + 1] ?? 0) > 4 * BEND * step * step,
    );
    if (!steep.includes(true)) break;
    reached = reached.flatMap((here, k) => {
      const next = reached[k + 1];
      return next && steep[k] ? [here, ...at((here.pose.m + next.pose.m) / 2)] : [here];
    });
  }
  return { reached, missed };
};
