import type { NumberParameter, ParameterText, Unit } from '../../core/parameter.ts';

const unitNames: Record<Unit, string> = {
  mm: ' mm',
  deg: ' degrees',
  count: '',
  ratio: '',
  'm/s': ' m/s',
  '1/min': ' a minute',
  'mm/turn': ' mm a turn',
  N: ' N',
  'N/mm': ' N/mm',
  'N/mm2': ' N/mm2',
};

/** A value from a file as it may be shown in a message: short, on one line. */
const shown = (value: unknown): string => {
  if (value === undefined) return 'missing';
  const written = typeof value === 'number' ? String(value) : (JSON.stringify(value) ?? 'unknown');
  return written.length > 40 ? `${written.slice(0, 37)}...` : written;
};

const span = (p: NumberParameter): string => `from ${p.min} to ${p.max}${unitNames[p.unit]}`;

interface Words {
  readonly message: string;
  readonly fix: string;
}

/** Messages about a single field of a file, each with its mend. */
export const field = {
  shown,
  notNumber: (p: NumberParameter, value: unknown): Words => ({
    message: `${p.label} is ${shown(value)}; it must be a number ${span(p)}. ${p.reason}`,
    fix: `Enter a number ${span(p)} for ${p.label}.`,
  }),
  range: (p: NumberParameter, value: number): Words => ({
    message: `${p.label} is ${value}${unitNames[p.unit]}; it must be ${span(p)}. ${p.reason}`,
    fix: `Set ${p.label} to a value ${span(p)}.`,
  }),
  notWhole: (p: NumberParameter, value: number): Words => ({
    message: `${p.label} is ${value}; it must be a whole number ${span(p)}. ${p.reason}`,
    fix: `Set ${p.label} to a whole number.`,
  }),
  choice: (p: ParameterText, values: readonly string[], value: unknown): Words => ({
    message: `${p.label} is ${shown(value)}; it must be one of ${values.join(', ')}. ${p.reason}`,
    fix: `Choose one of ${values.join(', ')} for ${p.label}.`,
  }),
  kind: (p: ParameterText, expected: string, received: string): Words => ({
    message: `The kind of ${p.label} is ${received}; it must be one of ${expected}. ${p.reason}`,
    fix: `Choose one of ${expected} as the kind of ${p.label}.`,
  }),
  notText: (p: ParameterText, value: unknown): Words => ({
    message: `${p.label} is ${shown(value)}; it must be text. ${p.reason}`,
    fix: `Write ${p.label} as text.`,
  }),
  textLength: (p: ParameterText, length: number, min: number, max: number): Words => ({
    message: `${p.label} has ${length} characters; it must have from ${min} to ${max}. ${p.reason}`,
    fix: `Give ${p.label} between ${min} and ${max} characters.`,
  }),
  control: (p: ParameterText): Words => ({
    message: `${p.label} holds a control character; only printable text is allowed. ${p.reason}`,
    fix: `Type ${p.label} again without control characters.`,
  }),
  id: (p: ParameterText, value: string): Words => ({
    message: `${p.label} is ${shown(value)}; it must be 1 to 32 letters, digits, dots or hyphens and begin with a letter or digit. ${p.reason}`,
    fix: `Rename ${p.label} with letters, digits, dots and hyphens only.`,
  }),
  notList: (p: ParameterText, value: unknown): Words => ({
    message: `${p.label} is ${shown(value)}; it must be a list. ${p.reason}`,
    fix: `Write ${p.label} as a list.`,
  }),
  listLength: (p: ParameterText, length: number, min: number, max: number): Words => ({
    message: `${p.label} has ${length} entries; it must have from ${min} to ${max}. ${p.reason}`,
    fix: `Give ${p.label} between ${min} and ${max} entries.`,
  }),
  notPair: (p: ParameterText, value: unknown): Words => ({
    message: `An entry of ${p.label} is ${shown(value)}; it must be a pair of numbers. ${p.reason}`,
    fix: `Write each entry of ${p.label} as two numbers.`,
  }),
  notTriple: (p: ParameterText, value: unknown): Words => ({
    message: `${p.label} is ${shown(value)}; it must be three numbers. ${p.reason}`,
    fix: `Write ${p.label} as three numbers.`,
  }),
  notValue: (p: ParameterText, value: unknown): Words => ({
    message: `An entry of ${p.label} is ${shown(value)}; it must be a number or a word. ${p.reason}`,
    fix: `Write each entry of ${p.label} as a number or a word.`,
  }),
  notGroup: (value: unknown): Words => ({
    message: `A group of fields is expected here, not ${shown(value)}.`,
    fix: 'Write the named fields of this group, or remove it.',
  }),
  missing: (label: string, description: string | undefined): Words => ({
    message: `${label} is missing; the file must state it.${description === undefined ? '' : ` ${description}`}`,
    fix: `Add ${label} to the file.`,
  }),
  unknown: (key: string): Words => ({
    message: `The field ${shown(key)} is not known here and was left out.`,
    fix: 'Check its spelling, or remove it.',
  }),
  otherwise: 'Correct this field.',
  description: (p: NumberParameter): string => `${p.meaning} Allowed ${span(p)}. ${p.reason}`,
} as const;
