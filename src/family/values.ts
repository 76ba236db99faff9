import type { ChoiceParameter, NumberParameter, Parameter } from '../core/parameter.ts';

/** The values of a parameter table: a number or the chosen word for each. */
export type ValuesOf<Table extends Readonly<Record<string, Parameter>>> = {
  readonly [K in keyof Table]: Table[K] extends NumberParameter
    ? number
    : Table[K] extends ChoiceParameter
      ? string
      : number | string;
};

/**
 * The value of every parameter of a table: as given in the document, which has checked it
 * against the table, or its initial value where the document says nothing.
 */
export const valuesOf = <Table extends Readonly<Record<string, Parameter>>>(
  table: Table,
  given: Readonly<Record<string, unknown>>,
): ValuesOf<Table> => {
  const entries = Object.entries(table).map(([key, parameter]) => {
    const value = given[key];
    const fits = typeof value === (parameter.kind === 'number' ? 'number' : 'string');
    return [key, fits ? value : parameter.initial];
  });
  return Object.fromEntries(entries) as ValuesOf<Table>;
};
