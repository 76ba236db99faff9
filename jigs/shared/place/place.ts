import { compose, shift, type Frame, type Placement } from '../../../src/family/index.ts';
import { CARRIER, type Group, type Item } from './item.ts';

/** Where the groups of the assembly stand at one setting, seat frame. */
export interface Standing {
  /** Shift of the base along y. */
  readonly base: number;
  /** The step's way along y from the middle of its travel. */
  readonly step: number;
  /** Place of the pad's tip along y. */
  readonly hand: number;
  /** The blade at its plunge stop: blade to seat frame. */
  readonly blade: Frame;
}

const frameOf = (group: Group, frame: Frame, at: Standing): Frame => {
  switch (group) {
    case 'base':
      return shift(frame, [0, at.base, 0]);
    case 'nose':
      return frame;
    case 'step':
      return shift(frame, [0, at.step, 0]);
    case 'hand':
      return shift(frame, [0, at.hand, 0]);
    case 'blade':
      return compose(at.blade, frame);
  }
};

/** Whole names a touch stands for: "keeper" touches nothing unless such an item is there. */
const present = (touches: readonly string[], names: ReadonlySet<string>): string[] =>
  touches.filter((name) => names.has(name));

/** What each item touches, whichever of the two says so; names that are not there left out. */
export const mutualTouches = (
  items: readonly { readonly name: string; readonly touches: readonly string[] }[],
): ((name: string) => string[]) => {
  const names = new Set(items.map(({ name }) => name));
  const touching = new Map(items.map(({ name, touches }) => [name, present(touches, names)]));
  return (name) => [
    ...new Set([
      ...(touching.get(name) ?? []),
      ...items.filter((other) => touching.get(other.name)?.includes(name)).map((o) => o.name),
    ]),
  ];
};

/** The assembly with everything where it stands at one setting. */
export const placed = (items: readonly Item[], at: Standing): Placement[] => {
  const mutual = mutualTouches(items);
  return items.map(({ name, part, group, frame }) => ({
    part,
    name,
    frame: frameOf(group, frame, at),
    carrier: CARRIER[group],
    touches: mutual(name),
  }));
};
