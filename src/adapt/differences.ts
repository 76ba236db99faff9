import type { Parameter } from '../core/parameter.ts';
import { plain } from '../core/units.ts';
import { documentSchema, type Design, type Families } from '../document/schema.ts';
import { text } from '../text/index.ts';
import { nameOf } from './fields.ts';

/** One thing that two designs state differently. */
export interface Difference {
  /** Where it is, entries of lists by their name: "blades.Kitchen 210.outline.length". */
  readonly path: string;
  /** The part of the design that it belongs to: "blades.Kitchen 210", "grinder.rest". */
  readonly area: string;
  readonly label: string;
  readonly from: string;
  readonly to: string;
}

const words = text.adapt;

type Record_ = Readonly<Record<string, unknown>>;

const isRecord = (value: unknown): value is Record_ =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** By what the entries of a list are told apart: their name or id, where every one has its own. */
const keyOf = (list: readonly unknown[]): 'name' | 'id' | undefined =>
  (['name', 'id'] as const).find(
    (key) =>
      list.length > 0 &&
      new Set(list.flatMap((entry) => (isRecord(entry) ? [entry[key]] : []))).size ===
        list.length &&
      list.every((entry) => isRecord(entry) && typeof entry[key] === 'string'),
  );

/** Entries of a value by key; entries of a list by name, id or place. */
const entriesOf = (value: unknown, by: 'name' | 'id' | undefined): Map<string, unknown> =>
  new Map(
    Array.isArray(value)
      ? value.map((entry: unknown, i) => [
          by !== undefined && isRecord(entry) ? String(entry[by]) : String(i + 1),
          entry,
        ])
      : isRecord(value)
        ? Object.entries(value)
        : [],
  );

const isList = (value: unknown): value is readonly unknown[] => Array.isArray(value);

/** Lists of numbers and points are one value; everything else with parts is looked into. */
const hasParts = (value: unknown): boolean =>
  isRecord(value) || (isList(value) && value.length > 0 && value.every(isRecord));

/** Whether two values have their parts in common: things of different kinds are told as a whole. */
const comparable = (a: unknown, b: unknown): boolean =>
  hasParts(a) &&
  hasParts(b) &&
  isList(a) === isList(b) &&
  !(isRecord(a) && isRecord(b) && a.kind !== b.kind);

const spoken = (value: unknown, unit: string | undefined): string => {
  if (value === undefined) return words.absent;
  if (typeof value === 'number') {
    const shown = unit === undefined || unit === 'count' || unit === 'ratio' ? '' : ` ${unit}`;
    return plain(value, 4) + shown;
  }
  if (typeof value === 'string') return value === '' ? '""' : value;
  if (isList(value)) {
    if (value.length === 0) return words.none;
    if (value.every(isList)) return words.points(value.length);
    if (value.every(isRecord)) return words.entries(value.length);
    return value.length <= 6
      ? value.map((inner) => spoken(inner, undefined)).join(', ')
      : words.values(value.length);
  }
  if (!isRecord(value)) return words.there;
  if (typeof value.kind === 'string') return value.kind;
  // An entry with a name is told by it already; one without is told by its numbers.
  const numbers = Object.entries(value).filter(([, inner]) => typeof inner === 'number');
  return 'name' in value || 'id' in value || numbers.length === 0
    ? words.there
    : numbers.map(([key, inner]) => `${key} ${spoken(inner, undefined)}`).join(', ');
};

/** Parts of the document that are told as one, by how many keys of the path name them. */
const AREA_DEPTH: Readonly<Record<string, number>> = {
  blades: 2,
  grinder: 2,
  fixture: 3,
  making: 2,
};

const areaOf = (keys: readonly string[]): string =>
  keys.slice(0, AREA_DEPTH[keys[0] ?? ''] ?? 1).join('.');

/** Marks of the file that no person set. */
const MARKS = new Set(['format', 'schema']);

interface Walk {
  readonly whole: Design;
  readonly other: Design;
  readonly parameters: Readonly<Record<string, Parameter>>;
}

interface At {
  /** Keys as a person names them, and as the data has them. */
  readonly named: readonly string[];
  readonly keys: readonly string[];
}

interface Labelled {
  readonly label: string;
  readonly unit?: string | undefined;
  readonly options?: readonly { readonly value: string; readonly label: string }[];
}

/** A field of the fixture: its parameters are named by the table of the family. */
const fixtureLabel = (named: readonly string[], parameters: Walk['parameters']): Labelled => {
  const parameter = parameters[named[2] ?? ''];
  if (!parameter) return { label: named[1] === 'family' ? words.family : named.join('.') };
  const label = words.parameter(parameter.label);
  return parameter.kind === 'number'
    ? { label, unit: parameter.unit }
    : { label, options: parameter.options };
};

const labelOf = (
  { whole, other, parameters }: Walk,
  { named, keys }: At,
  missing: boolean,
): Labelled => {
  if (named[0] === 'fixture') return fixtureLabel(named, parameters);
  const { labels, unit } = nameOf(documentSchema, missing ? other : whole, keys, named);
  // These two groups have no title of their own.
  const heads: Readonly<Record<string, string>> = words.areas;
  const head = heads[named[0] ?? ''];
  return { label: words.path(head === undefined ? labels : [head, ...labels]), unit };
};

const compareAt = (walk: Walk, at: At, a: unknown, b: unknown): Difference[] => {
  const last = at.named.at(-1) ?? '';
  if (JSON.stringify(a) === JSON.stringify(b) || MARKS.has(last)) return [];
  if (comparable(a, b)) {
    const both = [...(isList(a) ? a : []), ...(isList(b) ? b : [])];
    const by =
      isList(a) && isList(b) && keyOf(a) === keyOf(b) && both.length > 0 ? keyOf(a) : undefined;
    const [left, right] = [entriesOf(a, by), entriesOf(b, by)];
    const place = (source: unknown, key: string): string => {
      if (!isList(source)) return key;
      const i = [...entriesOf(source, by).keys()].indexOf(key);
      return String(i);
    };
    return [...new Set([...left.keys(), ...right.keys()])].flatMap((key) =>
      compareAt(
        walk,
        {
          named: [...at.named, key],
          keys: [...at.keys, place(left.has(key) ? a : b, key)],
        },
        left.get(key),
        right.get(key),
      ),
    );
  }
  const { label, unit, options } = labelOf(walk, at, a === undefined);
  const say = (value: unknown): string =>
    options?.find((option) => option.value === value)?.label ?? spoken(value, unit);
  return [
    {
      path: at.named.join('.'),
      area: areaOf(at.named),
      label,
      from: say(a),
      to: say(b),
    },
  ];
};

/**
 * Everything that two designs state differently, in the order of the file and in the words of its
 * fields. Blades, belts, wheels and the like are told apart by name, so that one more in front does
 * not change all.
 */
export const differences = (from: Design, to: Design, { families }: Families): Difference[] => {
  const parameters = {
    ...families[from.fixture.family]?.parameters,
    ...families[to.fixture.family]?.parameters,
  };
  return compareAt({ whole: from, other: to, parameters }, { named: [], keys: [] }, from, to);
};
