import * as v from 'valibot';
import type { Parameter } from '../core/parameter.ts';
import type { Result } from '../core/result.ts';
import { checkFields } from '../schema/check.ts';
import { group, optionalCount, optionalNumber, tableChoice } from '../schema/field.ts';

export type ParameterValues = Readonly<Record<string, number | string>>;

const entryOf = (parameter: Parameter): v.GenericSchema<unknown, number | string> => {
  if (parameter.kind === 'choice') return v.optional(tableChoice(parameter), parameter.initial);
  return parameter.unit === 'count' ? optionalCount(parameter) : optionalNumber(parameter);
};

/** The schema of a family's parameters, from its table. */
export const parametersSchema = (table: Readonly<Record<string, Parameter>>) =>
  group(
    Object.fromEntries(
      Object.entries(table).map(([key, parameter]) => [key, entryOf(parameter)] as const),
    ),
  );

/** Checks values by a family's table; initial values stand in for what is left out. */
export const checkParameters = (
  table: Readonly<Record<string, Parameter>>,
  values: ParameterValues,
): Result<Record<string, number | string>> => {
  const checked = checkFields(parametersSchema(table), values);
  const issues = checked.issues.map((issue) => ({
    ...issue,
    path: `fixture.parameters${issue.path === '' ? '' : `.${issue.path}`}`,
  }));
  return { ...checked, issues };
};
