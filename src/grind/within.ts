import { problem, type Issue } from '../core/issue.ts';
import type { NumberParameter } from '../core/parameter.ts';
import { text } from '../text/index.ts';

/** The issues of named numbers that are not finite or lie outside their parameter's range. */
export const outside = <Key extends string>(
  parameters: Readonly<Record<Key, NumberParameter>>,
  values: Readonly<Partial<Record<Key, number>>>,
): Issue[] =>
  (Object.keys(parameters) as Key[]).flatMap((key) => {
    const [parameter, value] = [parameters[key], values[key]];
    if (value === undefined || (value >= parameter.min && value <= parameter.max)) return [];
    return [problem('out-of-range', key, text.document.field.range(parameter, value))];
  });
