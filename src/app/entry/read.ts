import type { NumberParameter } from '../../core/parameter.ts';
import { text } from '../../text/index.ts';
import { shown, unitName } from './format.ts';
import { parseAngle, parseLength, parsePlain, type Entered } from './parse.ts';
import type { Display } from './unit.ts';

/** What became of a typed value: stored, or refused with the reason and the nearest that holds. */
export type Reading =
  | { readonly ok: true; readonly value: number }
  | { readonly ok: false; readonly message: string; readonly nearest: number | null };

const parse = (typed: string, p: NumberParameter, display: Display): Entered => {
  if (p.unit === 'mm') return parseLength(typed, display);
  return p.unit === 'deg' ? parseAngle(typed) : parsePlain(typed, unitName(p.unit, display));
};

/** Holds a typed text against the parameter it is meant for. */
export const readNumber = (typed: string, p: NumberParameter, display: Display): Reading => {
  const value = parse(typed, p, display);
  const range = [shown(p.min, p.unit, display), shown(p.max, p.unit, display)] as const;
  if (value === null)
    return { ok: false, message: text.app.entry.notUnderstood(typed, p.unit), nearest: null };
  if (p.unit === 'count' && !Number.isInteger(value))
    return { ok: false, message: text.app.entry.whole(p.label), nearest: Math.round(value) };
  if (value >= p.min && value <= p.max) return { ok: true, value };
  const given = shown(value, p.unit, display);
  return {
    ok: false,
    message: text.app.entry.outside(p.label, given, ...range, p.reason),
    nearest: value < p.min ? p.min : p.max,
  };
};

/**
 * What the program understood, to be shown while typing; null when the typed text already says
 * it (same number, same unit).
 */
export const echo = (typed: string, p: NumberParameter, display: Display): string | null => {
  const value = parse(typed, p, display);
  if (value === null || typed.trim() === '') return null;
  const said = shown(value, p.unit, display);
  return typed.trim() === said || `${typed.trim()} ${unitName(p.unit, display)}` === said
    ? null
    : said;
};
