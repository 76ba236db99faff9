import { describe, expect, it } from 'vitest';
import type { Design } from '../../src/document/schema.ts';
import { setupData } from '../../src/make/setup-data.ts';
import { examplesOf, solved } from '../family/examples.ts';

const example =
  examplesOf('spine-rest').find(({ file }) => file.startsWith('kitchen')) ??
  expect.fail('no example for two blades');
const fixture = solved(example);
const { design } = example;
const told = (of: Design) => setupData(of, fixture, [], '');

describe('what a set-up sheet tells', () => {
  it('of every blade after the first: its picture, its places, and what comes of every pass', () => {
    const { settings, others } = told(design);
    const [first, second] = design.blades.map(({ name }) => name);
    expect(settings.blade).toBe(first);
    expect(others.map(({ blade }) => blade)).toEqual([second]);
    const [other] = others;
    expect(other?.picture.title).toContain(second);
    expect(other?.places).toHaveLength(3);
    expect(other?.bevels).toEqual(
      fixture.settings.map(({ expected }) =>
        expected.filter(({ blade }) => blade === second).map(({ bevelHeight }) => bevelHeight),
      ),
    );
  });

  it('of every blade what it was entered with, at the places where it is measured', () => {
    const { bladeRows, progressBlade, progress, settings } = told(design);
    expect(bladeRows.map(({ blade }) => blade)).toEqual(design.blades.map(({ name }) => name));
    const [row] = bladeRows;
    expect(row?.edge).toBe('0.7; 0.2');
    // By hand: the edge runs straight from 50 at the plunge to 49 at 95 mm, the spine is straight
    // as far as that, so the heights at 21 and 47.5 mm are 50 - 21/95 and 50 - 0.5.
    expect(row?.places[0]).toEqual({ place: 'heel 21', thickness: '3', height: '49.8' });
    expect(progressBlade).toContain('47.5 mm from the plunge, 3 mm thick and 49.5 mm high');
    // A progress table is found by the number of its pass in the table of settings.
    expect(progress.map(({ title }) => title.slice(0, title.indexOf(',')))).toEqual(
      settings.rows.map(({ belt }, i) => `${String(i + 1)}. ${belt.slice(0, belt.indexOf(' '))}`),
    );
  });

  it('what belongs to single passes, with their numbers, and every note of theirs', () => {
    const { notes } = told(design);
    for (const note of new Set(fixture.settings.flatMap((setting) => setting.notes))) {
      const [line, ...more] = notes.filter((one) => one.endsWith(`: ${note}`));
      expect(more).toEqual([]);
      const numbers = [
        ...(line ?? '').slice(0, -note.length).matchAll(/(\d+)(?:–(\d+))?/g),
      ].flatMap(([, from, to = from]) =>
        Array.from({ length: Number(to) - Number(from) + 1 }, (_, i) => Number(from) + i),
      );
      const having = fixture.settings.flatMap((setting, i) =>
        setting.notes.includes(note) ? [i + 1] : [],
      );
      if (having.length < fixture.settings.length) expect(numbers).toEqual(having);
      else expect(line).toContain('Every pass');
    }
  });

  it.each([
    ['sheets', { units: 'in' }],
    ['cut files', { plates: { ...design.making.plates, inches: 'beside' } }],
  ] as const)('lengths in inches too where %s are wanted in them', (_, wanted) => {
    expect(told(design).inches).toBe(false);
    const { once, settings, inches, zeroing } = told({
      ...design,
      making: { ...design.making, ...wanted },
    });
    expect(inches).toBe(true);
    expect(settings.names.map((name) => name.endsWith('(mm)'))).toEqual(settings.lengths);
    expect(settings.lengths).toContain(true);
    // An inch is 25.4 mm exactly (ISO 80000-3): four decimals are within 0.0013 mm, three 0.013.
    // So is every length in the steps of finding zero, as exactly as it is told in millimetres.
    const lengths = [...zeroing.join(' ').matchAll(/(\d+(?:\.\d+)?) mm( \((\S+)″\))?/g)];
    expect(lengths.length).toBeGreaterThan(8);
    for (const [, mm, , inch] of lengths)
      expect(Math.abs(Number(inch) * 25.4 - Number(mm))).toBeLessThan(0.013);
    expect(told(design).zeroing.join(' ')).not.toContain('″');
    const both = once.flatMap(({ value }) => /^(\S+) mm \((\S+)″\)$/.exec(value) ?? []);
    expect(both.length).toBeGreaterThan(0);
    expect(Math.abs(Number(both[2]) * 25.4 - Number(both[1]))).toBeLessThan(0.0013);
  });
});
