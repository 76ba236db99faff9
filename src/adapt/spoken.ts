import type { Parameter } from '../core/parameter.ts';
import { plain } from '../core/units.ts';
import { text } from '../text/index.ts';

const words = text.adapt;

/** How values of a field are said: their unit, and the words of their choices. */
export interface Speech {
  readonly unit?: string | undefined;
  readonly options?: readonly { readonly value: string; readonly label: string }[] | undefined;
}

/** How the values of a parameter are said. */
export const parameterSpeech = (parameter: Parameter): Speech =>
  parameter.kind === 'number' ? { unit: parameter.unit } : { options: parameter.options };

/** A text longer than this is told by its beginning. */
const LONGEST = 60;

const clipped = (value: string): string =>
  value.length > LONGEST ? `${value.slice(0, LONGEST - 1).trimEnd()}…` : value;

const isList = (value: unknown): value is readonly unknown[] => Array.isArray(value);

const isGroup = (value: unknown): value is object => typeof value === 'object' && value !== null;

const withUnit = (said: string, unit: string | undefined): string =>
  unit === undefined || unit === 'count' || unit === 'ratio' ? said : `${said} ${unit}`;

const listSaid = (value: readonly unknown[], unit: string | undefined): string => {
  if (value.length === 0) return words.none;
  if (value.every(isList)) return words.points(value.length);
  if (value.every(isGroup)) return words.entries(value.length);
  return value.length <= 6
    ? withUnit(value.map((inner) => spoken(inner, {})).join(', '), unit)
    : words.values(value.length);
};

/** A value of a file as a person says it. */
export const spoken = (value: unknown, { unit, options }: Speech): string => {
  if (typeof value === 'number') return withUnit(plain(value, 4), unit);
  if (isList(value)) return listSaid(value, unit);
  // A group is told by its kind where it has one.
  const said = isGroup(value) && 'kind' in value ? value.kind : value;
  if (typeof said !== 'string') return '';
  return options?.find((option) => option.value === said)?.label ?? (clipped(said) || words.none);
};
