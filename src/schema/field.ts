import * as v from 'valibot';
import type { ChoiceParameter, NumberParameter, ParameterText } from '../core/parameter.ts';
import { text } from '../text/index.ts';

/**
 * What a field of a file is checked against, built from the parameter tables so that each range
 * and each word exists once. Every message is two lines: what is wrong (parameter, value, range,
 * reason) and, on the second, what mends it; `src/schema/check.ts` takes them apart again.
 */
const words = text.document.field;

const lines = ({ message, fix }: { message: string; fix: string }): string => `${message}\n${fix}`;

const about = (p: ParameterText): string => `${p.meaning} ${p.reason}`;

/** A number that must be present. */
export const numberField = (p: NumberParameter) =>
  v.pipe(
    v.number((issue) => lines(words.notNumber(p, issue.input))),
    v.minValue(p.min, (issue) => lines(words.range(p, issue.input))),
    v.maxValue(p.max, (issue) => lines(words.range(p, issue.input))),
    v.title(p.label),
    v.description(words.description(p)),
    v.metadata({ unit: p.unit }),
  );

/** A number whose initial value stands in where the file leaves it out. */
export const optionalNumber = (p: NumberParameter) => v.optional(numberField(p), p.initial);

/** A whole number whose initial value stands in where the file leaves it out. */
export const optionalCount = (p: NumberParameter) =>
  v.optional(
    v.pipe(
      numberField(p),
      v.integer((issue) => lines(words.notWhole(p, issue.input))),
    ),
    p.initial,
  );

/** The words of a choice: one label for each value. */
export interface ChoiceText<T extends string> extends ParameterText {
  readonly options: Readonly<Record<T, string>>;
}

const valuesOf = <T extends string>(choice: ChoiceText<T>): T[] =>
  Object.keys(choice.options) as T[];

/** The parameter-table row of a choice. */
export const choiceParameter = <T extends string>(
  choice: ChoiceText<T>,
  initial: NoInfer<T>,
): ChoiceParameter => ({
  kind: 'choice',
  label: choice.label,
  meaning: choice.meaning,
  reason: choice.reason,
  initial,
  options: valuesOf(choice).map((value) => ({ value, label: choice.options[value] })),
});

/** One of the named values of a choice. */
export const choiceField = <T extends string>(choice: ChoiceText<T>) =>
  v.pipe(
    v.picklist(valuesOf(choice), (issue) =>
      lines(words.choice(choice, valuesOf(choice), issue.input)),
    ),
    v.title(choice.label),
    v.description(about(choice)),
    v.metadata({ choices: choice.options }),
  );

/** One of the named values of a choice, or the initial one where the file leaves it out. */
export const optionalChoice = <T extends string>(choice: ChoiceText<T>, initial: NoInfer<T>) =>
  v.optional(choiceField(choice), initial);

/** One of the choices of a family's parameter table, where only the table is known. */
export const tableChoice = (p: ChoiceParameter) => {
  const values = p.options.map((option) => option.value);
  return v.pipe(
    v.picklist(values, (issue) => lines(words.choice(p, values, issue.input))),
    v.title(p.label),
    v.description(about(p)),
  );
};

/** Text of bounded length. Only notes may hold line breaks; no other control character passes. */
export const textField = (p: ParameterText, min: number, max: number, multiline = false) =>
  v.pipe(
    v.string((issue) => lines(words.notText(p, issue.input))),
    v.minLength(min, (issue) => lines(words.textLength(p, issue.input.length, min, max))),
    v.maxLength(max, (issue) => lines(words.textLength(p, issue.input.length, min, max))),
    v.regex(multiline ? /^(?:\P{Cc}|\n)*$/u : /^\P{Cc}*$/u, lines(words.control(p))),
    v.title(p.label),
    v.description(about(p)),
  );

/** A short name by which other parts of the file refer to this one. */
export const idField = (p: ParameterText) =>
  v.pipe(
    v.string((issue) => lines(words.notText(p, issue.input))),
    v.regex(/^[A-Za-z0-9][A-Za-z0-9.-]{0,31}$/, (issue) => lines(words.id(p, issue.input))),
    v.title(p.label),
    v.description(about(p)),
  );

/** A list of bounded length. */
export const listField = <Item extends v.GenericSchema>(
  p: ParameterText,
  item: Item,
  min: number,
  max: number,
) =>
  v.pipe(
    v.array(item, (issue) => lines(words.notList(p, issue.input))),
    v.minLength(min, (issue) => lines(words.listLength(p, issue.input.length, min, max))),
    v.maxLength(max, (issue) => lines(words.listLength(p, issue.input.length, min, max))),
    v.title(p.label),
    v.description(about(p)),
  );

/** A pair of numbers in the given ranges. */
export const pairField = (p: ParameterText, first: NumberParameter, second: NumberParameter) =>
  v.pipe(
    v.strictTuple([numberField(first), numberField(second)], (issue) =>
      lines(words.notPair(p, issue.input)),
    ),
    v.title(p.label),
    v.description(about(p)),
    v.metadata({ unit: first.unit }),
  );

/** Three numbers in one range: a point or a corner. */
export const tripleField = (p: ParameterText, each: NumberParameter) =>
  v.pipe(
    v.strictTuple([numberField(each), numberField(each), numberField(each)], (issue) =>
      lines(words.notTriple(p, issue.input)),
    ),
    v.title(p.label),
    v.description(about(p)),
    v.metadata({ unit: each.unit }),
  );

/** Numbers and words by name, as yet unchecked: a family's own table says what they must be. */
export const recordField = (p: ParameterText) =>
  v.pipe(
    v.record(
      v.string(),
      v.union([v.number(), v.string()], (issue) => lines(words.notValue(p, issue.input))),
      (issue) => lines(words.notGroup(issue.input)),
    ),
    v.title(p.label),
    v.description(about(p)),
  );

/** Fields by name. A missing one is reported by its own label; unknown ones are dropped. */
export const group = <Entries extends v.ObjectEntries>(entries: Entries) =>
  v.object(entries, (issue) => {
    const key = issue.path?.at(-1)?.key;
    const entry = typeof key === 'string' ? entries[key] : undefined;
    return issue.expected === 'Object' || entry === undefined
      ? lines(words.notGroup(issue.input))
      : lines(words.missing(v.getTitle(entry) ?? String(key), v.getDescription(entry)));
  });

/** Groups told apart by their `kind`, which may have their words. */
export const kinds = <const Options extends v.VariantOptions<'kind'>>(
  p: ParameterText & { readonly kinds?: Readonly<Record<string, string>> },
  options: Options,
) =>
  v.pipe(
    v.variant('kind', options, (issue) =>
      lines(words.kind(p, issue.expected ?? '', issue.received)),
    ),
    v.title(p.label),
    v.description(about(p)),
    v.metadata(p.kinds ? { choices: p.kinds } : {}),
  );
