/** Units a parameter may have. Lengths are millimetres and angles degrees everywhere. */
export const UNITS = [
  'mm',
  'deg',
  'count',
  'ratio',
  'm/s',
  '1/min',
  'mm/turn',
  'N',
  'N/mm',
  'N/mm2',
] as const;
export type Unit = (typeof UNITS)[number];

/** The words of a parameter, from the catalogue. */
export interface ParameterText {
  readonly label: string;
  /** One line: what it is. */
  readonly meaning: string;
  /** Why the range is what it is. */
  readonly reason: string;
}

/** What a value is that describes the maker's machine rather than the fixture. */
export interface OfMachine {
  /** What is measured on a machine to know it, as an instruction. */
  readonly measure: string;
  /** A parameter and its value with which this one is of no account. */
  readonly unless?: { readonly key: string; readonly is: number | string };
}

interface Described extends ParameterText {
  /** Present where the value was measured on the grinder: another one may have another. */
  readonly machine?: OfMachine;
}

/** A number that a person may set. */
export interface NumberParameter extends Described {
  readonly kind: 'number';
  readonly unit: Unit;
  readonly min: number;
  readonly max: number;
  readonly initial: number;
  /** Smallest sensible increment for a stepper; not a grid. */
  readonly step: number;
  /** Whether it is the thickness of a sheet, so that only those at hand can be had. */
  readonly sheet?: boolean;
}

/** One of several named possibilities. */
export interface ChoiceParameter extends Described {
  readonly kind: 'choice';
  readonly options: readonly { readonly value: string; readonly label: string }[];
  readonly initial: string;
}

export type Parameter = NumberParameter | ChoiceParameter;

export const number = (
  text: ParameterText,
  unit: Unit,
  min: number,
  initial: number,
  max: number,
  step = unit === 'mm' ? 0.1 : unit === 'deg' ? 0.1 : 1,
): NumberParameter => ({ kind: 'number', unit, min, initial, max, step, ...text });

export const choice = (
  text: ParameterText,
  initial: string,
  options: ChoiceParameter['options'],
): ChoiceParameter => ({ kind: 'choice', initial, options, ...text });

/** Marks a parameter as describing the machine; its words say what to measure there. */
export const ofMachine = <P extends Parameter>(
  parameter: P,
  { measure }: { readonly measure: string },
  unless?: OfMachine['unless'],
): P => ({ ...parameter, machine: { measure, ...(unless ? { unless } : {}) } });

/** Marks a parameter as the thickness of a sheet. */
export const ofSheet = (parameter: NumberParameter): NumberParameter => ({
  ...parameter,
  sheet: true,
});
