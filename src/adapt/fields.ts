import * as v from 'valibot';

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

/** The field of one key or list place within the field of the whole. */
const step = (field: Field, data: unknown, key: string): Field | undefined => {
  const at = ofKind(unwrapped(field), data);
  const entries = inside(at, 'entries');
  const next = isField(entries) ? inside(entries, key) : inside(at, 'item');
  return isField(next) ? next : undefined;
};

const isSchema = (field: Field): field is v.GenericSchema => inside(field, 'kind') === 'schema';

const titleOf = (field: Field): string | undefined =>
  isSchema(field) ? v.getTitle(field) : undefined;

const unitOf = (field: Field): string | undefined => {
  const unit = isSchema(field) ? v.getMetadata(field).unit : undefined;
  return typeof unit === 'string' ? unit : undefined;
};

/** What a field is called and measured in. */
export interface Named {
  readonly labels: readonly string[];
  readonly unit?: string;
}

/**
 * The titles on the way to a field, and its unit; `data` decides between kinds. Entries of lists
 * are called by the title of the list and by their key in `named`.
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
      const title = field && titleOf(unwrapped(field));
      if (title !== undefined) labels.push(title);
      else if (field === undefined) labels.push(key);
    }
  });
  const unit = field && unitOf(unwrapped(field));
  return { labels, ...(unit === undefined ? {} : { unit }) };
};
