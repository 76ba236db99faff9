import type { ChoiceParameter, NumberParameter, ParameterText } from '../../core/parameter.ts';
import type { Path } from '../../core/path.ts';

/** A value that a person sets, and where it stands in the design. */
export type Field =
  | {
      readonly kind: 'number';
      readonly path: Path;
      readonly parameter: NumberParameter;
      /** Shown with a slider beside the typed field. */
      readonly slider?: boolean;
      /** The only values that can be had, ascending: slider and arrow keys go from one to the next. */
      readonly stops?: readonly number[];
      /** For an element of a list: what tells it from its neighbours. */
      readonly label?: string;
    }
  | { readonly kind: 'choice'; readonly path: Path; readonly parameter: ChoiceParameter }
  | {
      readonly kind: 'text';
      readonly path: Path;
      readonly words: ParameterText;
      readonly most: number;
      readonly long?: boolean;
    }
  /** One of several shapes of the same thing; choosing one starts it from its usual values. */
  | {
      readonly kind: 'variant';
      readonly path: Path;
      readonly words: ParameterText;
      readonly options: readonly Variant[];
    }
  | {
      readonly kind: 'list';
      readonly path: Path;
      /** `one`: what a single entry is called. */
      readonly words: ParameterText & { readonly one: string };
      readonly items: readonly (readonly Field[])[];
      readonly least: number;
      readonly most: number;
      readonly fresh: () => unknown;
    };

export interface Variant {
  readonly value: string;
  readonly label: string;
  readonly fresh: () => unknown;
}

/** Fields that belong together, under one heading. */
export interface FieldGroup {
  readonly key: string;
  readonly title: string;
  readonly fields: readonly Field[];
  /** Folded away until asked for. */
  readonly folded?: boolean;
}

export const numeric = (path: Path, parameter: NumberParameter, slider = false): Field => ({
  kind: 'number',
  path,
  parameter,
  slider,
});

export const choosing = (path: Path, parameter: ChoiceParameter): Field => ({
  kind: 'choice',
  path,
  parameter,
});

/** The element id of the field of a path. */
export const fieldId = (path: Path): string => `field-${path.replaceAll('.', '-')}`;

/** What the fields of groups are called. */
export const labelsOf = (groups: readonly FieldGroup[]): string[] => {
  const label = (field: Field): string[] => {
    if (field.kind === 'list') return [field.words.label, ...field.items.flat().flatMap(label)];
    if (field.kind === 'number') return [field.label ?? field.parameter.label];
    return [field.kind === 'choice' ? field.parameter.label : field.words.label];
  };
  return groups.flatMap(({ title, fields }) => [title, ...fields.flatMap(label)]);
};
