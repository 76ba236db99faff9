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

const spoken = (value: unknown, unit: string | undefined): string => {
  if (value === undefined) return words.absent;
  if (typeof value === 'number') {
    const shown = unit === undefined || unit === 'count' || unit === 'ratio' ? '' : ` ${unit}`;
    return plain(value, 4) + shown;
  }
  if (typeof value === 'string') return value === '' ? '""' : value;
  if (isList(value)) {
    if (value.length > 0 && value.every(isList)) return words.points(value.length);
    return value.length <= 6
      ? value.map((inner) => spoken(inner, undefined)).join(', ')
      : words.values(value.length);
  }
  return words.there;
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

/** Parts of the document whose own field has a title. */
const TITLED = new Set(['blades', 'sequence', 'name', 'notes', 'revision']);

const labelOf = ({ whole, other, parameters }: Walk, { named, keys }: At, missing: boolean) => {
  if (named[0] === 'fixture') {
    const parameter = parameters[named[2] ?? ''];
    return parameter
      ? {
          label: words.parameter(parameter.label),
          unit: parameter.kind === 'number' ? parameter.unit : undefined,
        }
      : { label: named[1] === 'family' ? words.family : named.join('.'), unit: undefined };
  }
  const { labels, unit } = nameOf(documentSchema, missing ? other : whole, keys);
  const own = named.filter((key, i) => keys[i] !== key);
  const [area = ''] = named;
  const head = Object.hasOwn(words.areas, area)
    ? words.areas[area as keyof typeof words.areas]
    : area;
  // The title of a list or of a single field says the same as the head.
  const rest = TITLED.has(area) ? labels.slice(1) : labels;
  return { label: words.path([[head, ...own].join(' '), ...rest]), unit };
};

const compareAt = (walk: Walk, at: At, a: unknown, b: unknown): Difference[] => {
  const last = at.named.at(-1) ?? '';
  if (JSON.stringify(a) === JSON.stringify(b) || MARKS.has(last)) return [];
  if (hasParts(a) && hasParts(b) && isList(a) === isList(b)) {
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
  const { label, unit } = labelOf(walk, at, a === undefined);
  return [
    {
      path: at.named.join('.'),
      area: areaOf(at.named),
      label,
      from: spoken(a, unit),
      to: spoken(b, unit),
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
