import type { Unit } from '../../core/parameter.ts';
import { MM_PER_INCH, plain } from '../../core/units.ts';
import { text } from '../../text/index.ts';
import type { Display } from './unit.ts';

/** Finest division of a rule marked in inches. */
const FINEST = 64;
/** A fraction is shown when it lies this near the stored value, mm; else decimals of an inch. */
const NEAR = 0.02;

const divisor = (a: number, b: number): number => (b === 0 ? a : divisor(b, a % b));

/** `1 1/4`, or null where no division of the rule is near enough. */
const fraction = (mm: number): string | null => {
  const parts = Math.round((Math.abs(mm) / MM_PER_INCH) * FINEST);
  if (parts === 0 || Math.abs((parts / FINEST) * MM_PER_INCH - Math.abs(mm)) > NEAR) return null;
  const whole = Math.floor(parts / FINEST);
  const rest = parts % FINEST;
  const shared = divisor(rest, FINEST);
  const piece = rest === 0 ? '' : `${rest / shared}/${FINEST / shared}`;
  const body = [whole === 0 ? '' : String(whole), piece].filter((s) => s !== '').join(' ');
  return mm < 0 ? `-${body}` : body;
};

/** A length without its unit, as it stands in a field. */
export const lengthDigits = (mm: number, display: Display): string => {
  if (display === 'mm') return plain(mm, 3);
  const decimals = plain(mm / MM_PER_INCH, 4);
  return display === 'inch' ? decimals : (fraction(mm) ?? decimals);
};

/** The unit written after a value of this kind. */
export const unitName = (unit: Unit, display: Display): string =>
  unit === 'mm' ? (display === 'mm' ? 'mm' : 'in') : text.app.units[unit];

/** A value without its unit. */
export const digits = (value: number, unit: Unit, display: Display): string =>
  unit === 'mm' ? lengthDigits(value, display) : plain(value, unit === 'deg' ? 3 : 4);

/** A value with its unit, as text: `6.35 mm`, `1/4 in`, `3.5°`. */
export const shown = (value: number, unit: Unit, display: Display): string => {
  const name = unitName(unit, display);
  const number = digits(value, unit, display);
  if (name === '') return number;
  return unit === 'deg' ? `${number}${name}` : `${number} ${name}`;
};

/** A computed value with its unit, rounded to what a workshop can read. */
export const rounded = (value: number, unit: Unit, display: Display): string =>
  shown(Number(value.toFixed(unit === 'mm' && display !== 'mm' ? 4 : 2)), unit, display);

/** The same with its last zeros, so that the figures of a column stand under each other. */
export const inColumn = (value: number, unit: 'mm' | 'deg', display: Display): string => {
  if (unit === 'mm' && display === 'fraction') return rounded(value, unit, display);
  const inches = unit === 'mm' && display === 'inch';
  const number = inches ? (value / MM_PER_INCH).toFixed(4) : value.toFixed(2);
  const name = unitName(unit, display);
  return unit === 'deg' ? `${number}${name}` : `${number} ${name}`;
};
