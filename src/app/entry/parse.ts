import { MM_PER_INCH } from '../../core/units.ts';
import type { Display } from './unit.ts';

/** What a person typed, as millimetres or degrees; null when it is not understood. */
export type Entered = number | null;

/** Stored numbers keep six decimals, so that a typed decimal stays the decimal that was typed. */
const tidy = (value: number): number => Number(value.toFixed(6)) + 0;

const DECIMAL = /^(?:\d+(?:[.,]\d*)?|[.,]\d+)$/;
const FRACTION = /^(?:(\d+)(?:\s+|\s*-\s*))?(\d+)\s*\/\s*(\d+)$/;

/** Length units that may follow a number, in millimetres. */
const LENGTH_UNITS: Readonly<Record<string, number>> = {
  mm: 1,
  cm: 10,
  in: MM_PER_INCH,
  inch: MM_PER_INCH,
  inches: MM_PER_INCH,
  '"': MM_PER_INCH,
  thou: MM_PER_INCH / 1000,
};

/** One spelling of signs, quotes, spaces and ready-made fractions ("1½" becomes "1 1/2"). */
const normal = (text: string): string =>
  text
    .replace(/[¼-¾⅐-⅞]/g, ' $&')
    .normalize('NFKC')
    .replace(/⁄/g, '/')
    .replace(/[−–]/g, '-')
    .replace(/[″”“]|''|’’|′′/g, '"')
    .replace(/[′’]/g, "'")
    .trim()
    .toLowerCase();

interface Amount {
  readonly value: number;
  readonly fraction: boolean;
}

/** A decimal with point or comma, a fraction, or a whole number with a fraction. */
const amount = (text: string): Amount | null => {
  if (DECIMAL.test(text)) return { value: Number(text.replace(',', '.')), fraction: false };
  const [, whole, top, bottom] = FRACTION.exec(text) ?? [];
  if (top === undefined || bottom === undefined || Number(bottom) === 0) return null;
  return { value: Number(whole ?? 0) + Number(top) / Number(bottom), fraction: true };
};

const signed = (text: string): readonly [number, string] =>
  /^[-+]/.test(text) ? [text.startsWith('-') ? -1 : 1, text.slice(1).trim()] : [1, text];

/**
 * A length in mm. Understood are `12.5`, `12,5`, `6mm`, `0.125 in`, `5/16`, `1 1/4`, `1-1/4"`.
 * A bare number is in the unit shown; a bare fraction is always inches, because nobody writes
 * sixteenths of a millimetre.
 */
export const parseLength = (text: string, display: Display): Entered => {
  const [sign, body] = signed(normal(text));
  const suffix = /(?:[a-z]+|")$/.exec(body)?.[0] ?? '';
  const unit = suffix === '' ? undefined : LENGTH_UNITS[suffix];
  if (suffix !== '' && unit === undefined) return null;
  const read = amount(body.slice(0, body.length - suffix.length).trim());
  if (read === null) return null;
  const inches = read.fraction || display !== 'mm';
  return tidy(sign * read.value * (unit ?? (inches ? MM_PER_INCH : 1)));
};

/** An angle in degrees: `3.5`, `3,5°`, `3 1/2`, `3° 30'`. */
export const parseAngle = (text: string): Entered => {
  const [sign, body] = signed(normal(text));
  const [, whole, minutes] = /^(\d+)\s*(?:°|deg)\s*(\d+(?:[.,]\d+)?)\s*'$/.exec(body) ?? [];
  if (whole !== undefined && minutes !== undefined)
    return tidy(sign * (Number(whole) + Number(minutes.replace(',', '.')) / 60));
  const read = amount(body.replace(/\s*(?:°|deg|degrees?)$/, ''));
  return read === null ? null : tidy(sign * read.value);
};

/** A number without a unit, or with the unit that the field shows anyway. */
export const parsePlain = (text: string, unit: string): Entered => {
  const [sign, body] = signed(normal(text));
  const suffix = unit.toLowerCase();
  const bare = suffix !== '' && body.endsWith(suffix) ? body.slice(0, -suffix.length) : body;
  const read = amount(bare.trim());
  return read === null ? null : tidy(sign * read.value);
};
