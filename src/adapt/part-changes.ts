import type { Part } from '../model/part.ts';
import { text } from '../text/index.ts';
import { loopContent, partContent } from './part-content.ts';
import { partReasons, sameHole } from './part-reasons.ts';

/** What becomes of one made part. */
export interface PartChange {
  readonly part: string;
  readonly name: string;
  readonly kind: Exclude<Part['kind'], 'hardware'>;
  /** `rework`: the part at hand needs more holes and nothing else. */
  readonly change: 'unchanged' | 'rework' | 'remake' | 'new' | 'left-over' | 'more';
  /** Pieces to make, to rework, or left over; 0 for an unchanged part. */
  readonly quantity: number;
  readonly reasons: readonly string[];
  /** SHA-256 of shape, material, threads and marks. */
  readonly content: string;
}

/** Bought pieces: how many more are needed, or are left over where negative. */
export interface Purchase {
  readonly designation: string;
  readonly name: string;
  readonly have: number;
  readonly need: number;
}

const words = text.adapt.reasons;

type Made = Exclude<Part, { kind: 'hardware' }>;

const made = (parts: readonly Part[]): Made[] =>
  parts.filter((part): part is Made => part.kind !== 'hardware');

/**
 * The holes to drill where a plate at hand becomes the new one by drilling alone: the new one less
 * its added holes is the one at hand, marks and all.
 */
const drilled = (from: Made, to: Made): string[] | undefined => {
  if (from.kind !== 'plate' || to.kind !== 'plate') return undefined;
  const added = to.holes.filter((hole) => !from.holes.some((old) => sameHole(old, hole)));
  const cuts = new Set(added.map(({ loop }) => loopContent(loop)));
  const undrilled: Made = {
    ...to,
    holes: to.holes.filter((hole) => !added.includes(hole)),
    layers: to.layers.map((layer) => {
      const holes = layer.profile.holes.filter((loop) => !cuts.has(loopContent(loop)));
      return { ...layer, profile: { ...layer.profile, holes } };
    }),
  };
  const round = added.every(({ slotLength }) => slotLength === undefined);
  return round && partContent(undrilled) === partContent(from)
    ? added.map(({ id }) => id)
    : undefined;
};

const changeOf = (before: Made | undefined, part: Made): PartChange => {
  const { id, name, kind, quantity } = part;
  const head = { part: id, name, kind, content: partContent(part) };
  if (before === undefined)
    return { ...head, change: 'new', quantity, reasons: [words.wanted(quantity)] };
  if (partContent(before) === head.content) {
    const more = quantity - before.quantity;
    return more > 0
      ? {
          ...head,
          change: 'more',
          quantity: more,
          reasons: [words.count(before.quantity, quantity)],
        }
      : { ...head, change: 'unchanged', quantity: 0, reasons: [] };
  }
  const drill = drilled(before, part);
  return drill && before.quantity >= quantity
    ? { ...head, change: 'rework', quantity, reasons: [words.drill(drill)] }
    : { ...head, change: 'remake', quantity, reasons: partReasons(before, part) };
};

/**
 * What becomes of every made part: matched by its id, and where that fails by its content. A part
 * counts as unchanged only when shape, material, threads and marks are equal.
 */
export const partChanges = (from: readonly Part[], to: readonly Part[]): PartChange[] => {
  const [old, now] = [made(from), made(to)];
  const ids = new Set(now.map(({ id }) => id));
  const free = new Map(
    old.filter(({ id }) => !ids.has(id)).map((part) => [partContent(part), part]),
  );
  const used = new Set<string>();
  const changes = now.map((part): PartChange => {
    const before = old.find(({ id }) => id === part.id);
    const twin = free.get(partContent(part));
    if (before !== undefined || twin === undefined || used.has(twin.id))
      return changeOf(before, part);
    used.add(twin.id);
    const change = changeOf(twin, part);
    return { ...change, reasons: [...change.reasons, text.adapt.reuse(twin.name)] };
  });
  const left = old
    .filter(({ id }) => !ids.has(id) && !used.has(id))
    .map((part): PartChange => {
      const { id, name, kind, quantity } = part;
      return {
        part: id,
        name,
        kind,
        change: 'left-over',
        quantity,
        reasons: [],
        content: partContent(part),
      };
    });
  return [...changes, ...left];
};

/** Bought pieces by designation: what is at hand and what is needed, where they differ. */
export const purchases = (from: readonly Part[], to: readonly Part[]): Purchase[] => {
  const counts = (parts: readonly Part[]): Map<string, { name: string; count: number }> => {
    const found = new Map<string, { name: string; count: number }>();
    for (const part of parts) {
      if (part.kind !== 'hardware') continue;
      const count = (found.get(part.designation)?.count ?? 0) + part.quantity;
      found.set(part.designation, { name: part.name, count });
    }
    return found;
  };
  const [have, need] = [counts(from), counts(to)];
  return [...new Set([...need.keys(), ...have.keys()])].flatMap((designation) => {
    const [at, wanted] = [have.get(designation), need.get(designation)];
    const purchase = {
      designation,
      name: (wanted ?? at)?.name ?? designation,
      have: at?.count ?? 0,
      need: wanted?.count ?? 0,
    };
    return purchase.have === purchase.need ? [] : [purchase];
  });
};
