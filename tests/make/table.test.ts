import { describe, expect, it } from 'vitest';
import { csv, type Cell } from '../../src/make/files/table.ts';

const line = (...cells: Cell[]): string => new TextDecoder().decode(csv([cells])).trimEnd();

describe('a table of comma-separated values', () => {
  // OWASP, "CSV Injection": beginnings that spreadsheets take for a formula.
  it.each([
    '=1+0',
    '+1',
    '-1+1',
    '@SUM(A1)',
    '\t=1',
    ' =1',
    '\uFEFF=1',
    '＝1',
    '＋1',
    '－1',
    '＠x',
  ])('holds %j as text', (name) => {
    expect(line('x', name)).toBe(`x,'${name}`);
  });

  it('holds a formula as text inside quotes too (RFC 4180)', () => {
    expect(line('=HYPERLINK("http://x","y")')).toBe(`"'=HYPERLINK(""http://x"",""y"")"`);
    expect(line('\r\n=1')).toBe(`"'\r\n=1"`);
  });

  it('leaves numbers numbers, and words as they are', () => {
    expect(line(-4.133, '-4.133', '-5', '0', '', 'M6 x 16', 'a-b', '5-left, =x')).toBe(
      `-4.133,-4.133,-5,0,,M6 x 16,a-b,"5-left, =x"`,
    );
  });
});
