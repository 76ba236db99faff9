import type { Parameter } from '../core/parameter.ts';
import { documentSchema, type Design, type Families } from '../document/schema.ts';
import { text } from '../text/index.ts';
import { nameOf, type Named } from './fields.ts';
import { parameterSpeech, spoken, type Speech } from './spoken.ts';

/** One thing that two designs state differently. */
export interface Difference {
  /** Where it is, entries of lists by their name: "blades.Kitchen 210.outline.length". */
  readonly path: string;
  /** The part of the design that it belongs to: "blades.Kitchen 210", "grinder.rest". */
  readonly area: string;
  /** What that part is called: "Blades Kitchen 210", "Grinder, Rest". */
  readonly areaLabel: string;
  readonly label: string;
  /** Null where the one design has it and the other has not. */
  readonly from: string | null;
  readonly to: string | null;
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

/** Parts of the document that are told as one, by how many keys of the path name them. */
const AREA_DEPTH: Readonly<Record<string, number>> = {
  blades: 2,
  grinder: 2,
  fixture: 3,
  making: 2,
};

/** Marks of the file that no person set. */
const MARKS = new Set(['format', 'schema']);

interface Walk {
  readonly whole: Design;
  readonly other: Design;
  readonly parameters: Readonly<Record<string, Parameter>>;
}

/** Another family has parameters of its own: the fixture is then told as one. */
const depthOf = ({ whole, other }: Walk, [head = '']: readonly string[]): number =>
  head === 'fixture' && whole.fixture.family !== other.fixture.family ? 1 : (AREA_DEPTH[head] ?? 1);

interface At {
  /** Keys as a person names them, and as the data has them. */
  readonly named: readonly string[];
  readonly keys: readonly string[];
}

interface Labelled extends Speech {
  readonly label: string;
  readonly parts: Named['parts'];
}

/** A parameter of the fixture, named by the table of its family. */
const parameterLabel = (parameter: Parameter): Labelled => ({
  label: words.parameter(parameter.label),
  parts: [],
  ...parameterSpeech(parameter),
});

const labelOf = (
  { whole, other, parameters }: Walk,
  { named, keys }: At,
  missing: boolean,
): Labelled => {
  const [head = '', part, key = ''] = named;
  if (head === 'fixture' && part === 'parameters') {
    const parameter = parameters[key];
    return parameter ? parameterLabel(parameter) : { label: key, parts: [] };
  }
  const found = nameOf(documentSchema, missing ? other : whole, keys, named);
  // Groups without a title of their own.
  const groups: Readonly<Record<string, string>> = words.areas;
  const title = groups[named.length > 1 ? `${head}.${part ?? ''}` : head] ?? groups[head];
  return {
    ...found,
    label: words.path(title === undefined ? found.labels : [title, ...found.labels]),
  };
};

/** An entry that only one design has is told by its numbers and words, one with a name by that. */
const entrySaid = (value: unknown, { parts, ...speech }: Labelled): string => {
  if (!isRecord(value) || 'kind' in value) return spoken(value, speech);
  if ('name' in value) return '';
  return parts
    .filter(({ key }) => key !== 'id' && ['number', 'string'].includes(typeof value[key]))
    .map(({ key, label, ...said }) => words.entryPart(label, spoken(value[key], said)))
    .join(', ');
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
  const labelled = labelOf(walk, at, a === undefined);
  const depth = depthOf(walk, at.named);
  const area = { named: at.named.slice(0, depth), keys: at.keys.slice(0, depth) };
  const say = (value: unknown): string | null =>
    value === undefined ? null : entrySaid(value, labelled);
  return [
    {
      path: at.named.join('.'),
      area: area.named.join('.'),
      areaLabel: labelOf(walk, area, a === undefined).label || words.wholeFixture,
      label: labelled.label,
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
