import { describe, expect, it } from 'vitest';
import { assemblySheets } from '../../src/drawing/assembly-sheets.ts';
import { bodiesOf } from '../../src/drawing/bodies.ts';
import type { Sheet } from '../../src/drawing/sheet.ts';
import { titleBlock } from '../../src/make/files/title.ts';
import { examplesOf, solved, valueOf } from '../family/examples.ts';
import { clashes, outside } from './overlap.ts';

/** Item numbers in circles on all sheets. */
const balloonsOf = (sheets: readonly Sheet[]): Set<string> =>
  new Set(
    sheets.flatMap(({ items }) =>
      items.flatMap((item) => {
        if (item.kind !== 'text' || !/^\d+$/.test(item.text)) return [];
        const isRound = items.some(
          (other) =>
            other.kind === 'circle' &&
            other.radius > 3 &&
            Math.hypot(other.centre[0] - item.at[0], other.centre[1] - item.at[1]) < 3,
        );
        return isRound ? [item.text] : [];
      }),
    ),
  );

const textsOf = (sheets: readonly Sheet[]): string[] =>
  sheets.flatMap(({ items }) => items.flatMap((item) => (item.kind === 'text' ? [item.text] : [])));

describe('the assembly of a worked design of each family', () => {
  const families = ['spine-rest', 'edge-rest', 'carriage', 'backing-carrier'];
  it.each(families)('%s: shows and numbers every part that is in it', (family) => {
    const [example] = examplesOf(family);
    if (!example) throw new Error('Every family ships a worked design.');
    const fixture = solved(example);
    const parts = valueOf(fixture.parts());
    const placements = fixture.place(fixture.settings[0]?.id ?? '');
    const { cuts = [], joined } = fixture;
    const sheets = assemblySheets(
      parts,
      placements,
      {
        title: family,
        files: new Map(),
        order: [],
        notes: [],
        sections: [],
        cuts,
        ...(joined ? { joined } : {}),
      },
      titleBlock(example.design, ''),
    );
    const texts = textsOf(sheets);
    expect(texts).toContain('Assembled');
    for (const letter of ['A', 'B'].slice(0, cuts.length))
      expect(texts).toContain(`${letter} – ${letter}`);
    const numbers = balloonsOf(sheets);
    // Items count made parts first, then bought ones.
    const listed = [
      ...parts.filter(({ kind }) => kind !== 'hardware'),
      ...parts.filter(({ kind }) => kind === 'hardware'),
    ];
    const unseen = listed.filter(
      ({ id }, i) => placements.some(({ part }) => part === id) && !numbers.has(String(i + 1)),
    );
    expect(unseen.map(({ id }) => id)).toEqual([]);
    // Width, depth and height of all that is placed, in brackets: auxiliary dimensions (ISO 129-1).
    const bodies = bodiesOf(parts, placements);
    const extents = ([0, 1, 2] as const).map(
      (i) => Math.max(...bodies.map((b) => b.max[i])) - Math.min(...bodies.map((b) => b.min[i])),
    );
    const told = textsOf(sheets.slice(0, 1)).filter((text) => /^\([\d.]+\)$/.test(text));
    expect(told.sort()).toEqual(extents.map((size) => `(${Number(size.toFixed(1))})`).sort());
    expect(sheets.flatMap(clashes)).toEqual([]);
    expect(sheets.flatMap(outside)).toEqual([]);
  });
});
