import * as v from 'valibot';
import type { Speech } from './spoken.ts';

/** A field of the schema, as far as naming it needs: walked by its plain structure. */
type Field = object;

const inside = (field: Field, key: string): unknown => Reflect.get(field, key);

const isField = (value: unknown): value is Field => typeof value === 'object' && value !== null;

/** The field that stands behind an optional one. */
const unwrapped = (field: Field): Field => {
  const wrapped = inside(field, 'wrapped');
  return isField(wrapped) ? unwrapped(wrapped) : field;
};

/** Of the kinds of a field, the one whose `kind` the data has. */
const ofKind = (field: Field, data: unknown): Field => {
  const options = inside(field, 'options');
  if (!Array.isArray(options) || !isField(data)) return field;
  const kind = inside(data, 'kind');
  const match: unknown = options.find((option: unknown) => {
    const entries = isField(option) ? inside(option, 'entries') : undefined;
    const literal = isField(entries) ? inside(entries, 'kind') : undefined;
    return isField(literal) && inside(literal, 'literal') === kind;
  });
  return isField(match) ? match : field;
};

/** The fields of a group by name, of the kind that the data has. */
const entriesOf = (field: Field, data: unknown): Field | undefined => {
  const entries = inside(ofKind(unwrapped(field), data), 'entries');
  return isField(entries) ? entries : undefined;
};

/** The field of one key or list place within the field of the whole. */
const step = (field: Field, data: unknown, key: string): Field | undefined => {
  const entries = entriesOf(field, data);
  const next = entries ? inside(entries, key) : inside(unwrapped(field), 'item');
  return isField(next) ? next : undefined;
};

const isSchema = (field: Field): field is v.GenericSchema => inside(field, 'kind') === 'schema';

const titleOf = (field: Field | undefined): string | undefined => {
  const plain = field && unwrapped(field);
  return plain && isSchema(plain) ? v.getTitle(plain) : undefined;
};

const isChoices = (value: unknown): value is Readonly<Record<string, string>> => isField(value);

const speechOf = (field: Field | undefined): Speech => {
  const plain = field && unwrapped(field);
  if (plain === undefined || !isSchema(plain)) return {};
  const { unit, choices } = v.getMetadata(plain);
  return {
    ...(typeof unit === 'string' ? { unit } : {}),
    ...(isChoices(choices)
      ? { options: Object.entries(choices).map(([value, label]) => ({ value, label })) }
      : {}),
  };
};

/** What a field is called and how its values are said. */
export interface Named extends Speech {
  readonly labels: readonly string[];
  /** Of a group: its fields that have a title, by their keys. */
  readonly parts: readonly (Speech & { readonly key: string; readonly label: string })[];
}

const partsOf = (field: Field | undefined, data: unknown): Named['parts'] =>
  Object.entries((field && entriesOf(field, data)) ?? {}).flatMap(
    ([key, inner]: [string, Field]) => {
      const label = titleOf(inner);
      return label === undefined ? [] : [{ key, label, ...speechOf(inner) }];
    },
  );

/**
 * The titles on the way to a field, and how it is said; `data` decides between kinds. Entries of
 * lists are called by the title of the list and by their key in `named`.
 */
export const nameOf = (
  schema: Field,
  data: unknown,
  keys: readonly string[],
  named: readonly string[],
): Named => {
  let field: Field | undefined = schema;
  let value = data;
  const labels: string[] = [];
  keys.forEach((key, i) => {
    const isEntry = Array.isArray(value);
    field = field && step(field, value, key);
    value = isField(value) ? inside(value, key) : undefined;
    if (isEntry) labels.push([labels.pop() ?? '', named[i] ?? key].join(' ').trim());
    else {
      const title = titleOf(field);
      if (title !== undefined) labels.push(title);
      else if (field === undefined) labels.push(key);
    }
  });
  return { labels, ...speechOf(field), parts: partsOf(field, value) };
};
