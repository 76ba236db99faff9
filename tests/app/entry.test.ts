import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { digits, shown } from '../../src/app/entry/format.ts';
import { parseAngle, parseLength, parsePlain } from '../../src/app/entry/parse.ts';
import { sentenceIn } from '../../src/app/entry/sentence.ts';
import { echo, readNumber } from '../../src/app/entry/read.ts';
import { DISPLAYS, type Display } from '../../src/app/entry/unit.ts';
import { number } from '../../src/core/parameter.ts';

const words = { label: 'Width', meaning: 'How wide it is.', reason: 'Wider does not fit.' };
const width = number(words, 'mm', 1, 50, 150);
const angle = number(words, 'deg', -20, 0, 20);
const teeth = number(words, 'count', 1, 2, 9);

describe('typed lengths', () => {
  // 1 in = 25.4 mm exactly (international inch, ISO 31-1).
  const cases: readonly (readonly [string, Display, number | null])[] = [
    ['12.5', 'mm', 12.5],
    ['12,5', 'mm', 12.5],
    ['6mm', 'mm', 6],
    ['6 mm', 'inch', 6],
    ['.5', 'mm', 0.5],
    ['-3', 'mm', -3],
    ['−3', 'mm', -3],
    ['2 cm', 'mm', 20],
    ['0.125 in', 'mm', 3.175],
    ['0.125', 'inch', 3.175],
    ['5/16', 'mm', 7.9375],
    ['5/16', 'fraction', 7.9375],
    ['1 1/4', 'mm', 31.75],
    ['1-1/4"', 'mm', 31.75],
    ['1 1/4"', 'fraction', 31.75],
    ['1 1/4 inches', 'mm', 31.75],
    ['1½”', 'mm', 38.1],
    ['¾', 'mm', 19.05],
    ['2"', 'mm', 50.8],
    ["2''", 'mm', 50.8],
    ['5 thou', 'mm', 0.127],
    ['-1/2', 'mm', -12.7],
    ['', 'mm', null],
    ['abc', 'mm', null],
    ['1/0', 'mm', null],
    ['1.2.3', 'mm', null],
    ['1,234.5', 'mm', null],
    ['3 furlongs', 'mm', null],
    ['1e3', 'mm', null],
    ['Infinity', 'mm', null],
  ];
  it.each(cases)('%s shown in %s', (typed, display, mm) => {
    expect(parseLength(typed, display)).toBe(mm);
  });

  it('never answers NaN or an infinite number', () => {
    fc.assert(
      fc.property(fc.string(), fc.constantFrom(...DISPLAYS), (typed, display) => {
        const read = parseLength(typed, display);
        expect(read === null || Number.isFinite(read)).toBe(true);
      }),
    );
  });

  it('reads back every 1/64 inch that it shows', () => {
    for (let n = 1; n <= 640; n++) {
      const mm = Number(((n / 64) * 25.4).toFixed(6));
      expect(parseLength(digits(mm, 'mm', 'fraction'), 'fraction')).toBe(mm);
    }
  });

  it('reads back what it shows within half of the last digit shown', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -500, max: 500, noNaN: true }),
        fc.constantFrom(...DISPLAYS),
        (mm, display) => {
          const read = parseLength(shown(mm, 'mm', display), display);
          // 0.02 mm: how near a fraction must lie to be shown; 0.00127: half of 0.0001 in.
          const slack = { mm: 0.000501, inch: 0.00128, fraction: 0.020001 }[display];
          expect(Math.abs((read ?? Infinity) - mm)).toBeLessThanOrEqual(slack);
        },
      ),
    );
  });
});

describe('typed angles and plain numbers', () => {
  it.each([
    ['3.5', 3.5],
    ['3,5°', 3.5],
    ['3 1/2', 3.5],
    ["3° 30'", 3.5],
    ['3°30′', 3.5],
    ['-2 deg', -2],
    ['x', null],
  ] as const)('%s', (typed, value) => expect(parseAngle(typed)).toBe(value));

  it('takes a number with or without its unit', () => {
    expect(parsePlain('2850 rev/min', 'rev/min')).toBe(2850);
    expect(parsePlain('35', 'm/s')).toBe(35);
    expect(parsePlain('35 mm', 'm/s')).toBeNull();
  });
});

describe('shown values', () => {
  it.each([
    [31.75, 'mm', '31.75 mm'],
    [31.75, 'inch', '1.25 in'],
    [31.75, 'fraction', '1 1/4 in'],
    [7.9375, 'fraction', '5/16 in'],
    [0.2, 'fraction', '0.0079 in'],
    [50, 'fraction', '1 31/32 in'],
    [3, 'fraction', '0.1181 in'],
    [-12.7, 'fraction', '-1/2 in'],
    [25.4, 'fraction', '1 in'],
    [0, 'fraction', '0 in'],
  ] as const)('%d mm in %s', (mm, display, said) => expect(shown(mm, 'mm', display)).toBe(said));

  it('writes degrees without a space', () => expect(shown(3.5, 'deg', 'inch')).toBe('3.5°'));
});

describe('a value held against its parameter', () => {
  it('is stored when it lies in the range', () => {
    expect(readNumber('2"', width, 'mm')).toEqual({ ok: true, value: 50.8 });
  });

  it('is refused with parameter, value, range, reason and the nearest that holds', () => {
    const read = readNumber('200', width, 'mm');
    expect(read).toMatchObject({ ok: false, nearest: 150 });
    if (read.ok) return;
    for (const part of ['Width', '200 mm', '1 mm', '150 mm', 'Wider does not fit.'])
      expect(read.message).toContain(part);
  });

  it('says what is not understood, and offers no value for it', () => {
    expect(readNumber('wide', width, 'mm')).toMatchObject({ ok: false, nearest: null });
    expect(readNumber('steep', angle, 'mm')).toMatchObject({ ok: false, nearest: null });
  });

  it('keeps counts whole', () => {
    expect(readNumber('2.4', teeth, 'mm')).toMatchObject({ ok: false, nearest: 2 });
  });

  it('echoes only what the typed text does not say itself', () => {
    expect(echo('5/16', width, 'mm')).toBe('7.938 mm');
    expect(echo('12,5', width, 'mm')).toBe('12.5 mm');
    expect(echo('12.5', width, 'mm')).toBeNull();
    expect(echo('12.5 mm', width, 'mm')).toBeNull();
    expect(echo('6mm', width, 'inch')).toBe('0.2362 in');
    expect(echo('?', width, 'mm')).toBeNull();
  });
});

describe('sentences of the engine in a page of inches', () => {
  // 1 in = 25.4 mm exactly (international inch, ISO 31-1).
  it.each([
    ['Gap is 25.4 mm; at least 12.7 mm.', 'Gap is 1 in; at least 1/2 in.'],
    ['It must be from 0 to 254 mm long.', 'It must be from 0 to 10 in long.'],
    ['End the points between 6.35 and 12.7 mm.', 'End the points between 1/4 and 1/2 in.'],
    ['An angle of 50.8 x 50.8 x 6.35 mm', 'An angle of 2 x 2 x 1/4 in'],
    ['Step moved from -12.7 mm: 5 and 25.4 mm', 'Step moved from -1/2 in: 5 and 1 in'],
    [
      '“Rest of 50 mm” and "50 mm belt" are 25.4 mm off',
      '“Rest of 50 mm” and "50 mm belt" are 1 in off',
    ],
    [
      'Screws M6 x 16 mm, 2.4 mm³, 3 mm2, 0.8 N/mm, 4 mm/turn',
      'Screws M6 x 16 mm, 2.4 mm³, 3 mm2, 0.8 N/mm, 4 mm/turn',
    ],
  ])('%s', (said, inches) => {
    expect(sentenceIn('fraction', said)).toBe(inches);
    expect(sentenceIn('mm', said)).toBe(said);
  });
});
