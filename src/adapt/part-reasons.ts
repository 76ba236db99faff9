import { plain } from '../core/units.ts';
import { stackBox } from '../model/measure.ts';
import type { Hole, Part } from '../model/part.ts';
import { text } from '../text/index.ts';
import { loopContent } from './part-content.ts';

const words = text.adapt.reasons;

const mm = (value: number): string => plain(value, 2);

/** Length, width and height of the box around a part, "120 x 80 x 6". */
const sizeOf = ({ layers }: Part): string => {
  const { min, max } = stackBox(layers);
  return [max[0] - min[0], max[1] - min[1], max[2] - min[2]].map(mm).join(' x ');
};

const holesOf = (part: Part): readonly Hole[] => (part.kind === 'hardware' ? [] : part.holes);

/** Whether two holes are the same cut: contour and thread. */
export const sameHole = (one: Hole, other: Hole): boolean =>
  loopContent(one.loop) === loopContent(other.loop) && one.thread === other.thread;

const holeReasons = (from: readonly Hole[], to: readonly Hole[]): string[] => {
  const old = new Map(from.map((hole) => [hole.id, hole]));
  const ids = new Set(to.map(({ id }) => id));
  const added = to.filter(({ id }) => !old.has(id)).map(({ id }) => id);
  const gone = from.filter(({ id }) => !ids.has(id)).map(({ id }) => id);
  const changed = to.flatMap((hole) => {
    const before = old.get(hole.id);
    return before && !sameHole(before, hole) ? [{ hole, before }] : [];
  });
  const by = ({ hole, before }: (typeof changed)[number]): number =>
    Math.hypot(hole.at[0] - before.at[0], hole.at[1] - before.at[1]);
  const moved = changed.filter((pair) => by(pair) > 1e-4);
  const sized = changed.filter((pair) => by(pair) <= 1e-4);
  const names = (list: typeof changed): string[] => list.map(({ hole }) => hole.id);
  return [
    ...(added.length > 0 ? [words.holesNew(added)] : []),
    ...(gone.length > 0 ? [words.holesGone(gone)] : []),
    ...(moved.length > 0 ? [words.holesMoved(names(moved), mm(Math.max(...moved.map(by))))] : []),
    ...(sized.length > 0 ? [words.holesSized(names(sized))] : []),
  ];
};

const differing = (
  from: string,
  to: string,
  say: (from: string, to: string) => string,
): string[] => (from === to ? [] : [say(from, to)]);

/** Why a part of the same name is another part now; at least one reason. */
export const partReasons = (from: Part, to: Part): string[] => {
  const kinds = text.adapt.make;
  if (from.kind !== to.kind) return [words.kind(kinds[from.kind], kinds[to.kind])];
  const reasons = [
    ...differing(from.material, to.material, words.material),
    ...(from.kind === 'plate' && to.kind === 'plate'
      ? differing(from.process, to.process, words.process)
      : []),
    ...(from.kind === 'stock' && to.kind === 'stock'
      ? differing(from.section, to.section, words.section)
      : []),
    ...differing(sizeOf(from), sizeOf(to), words.size),
    ...holeReasons(holesOf(from), holesOf(to)),
    ...(from.kind === 'plate' &&
    to.kind === 'plate' &&
    JSON.stringify(from.engraving) !== JSON.stringify(to.engraving)
      ? [words.marks]
      : []),
  ];
  return reasons.length > 0 ? reasons : [words.shape];
};
