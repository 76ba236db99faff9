import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MAX_DEPTH } from '../../src/document/json.ts';
import {
  MAX_DESIGN_BYTES,
  MAX_GRINDER_BYTES,
  openDesign,
  openGrinder,
} from '../../src/document/open.ts';
import { saveDesign, saveGrinder } from '../../src/document/save.ts';
import { grinderPresets } from '../../src/grinder/presets/index.ts';
import { changed, registry, sparse } from './documents.ts';

const opened = (document: unknown) => openDesign(JSON.stringify(document), registry);
const codes = (input: Uint8Array | string): string[] =>
  openDesign(input, registry).issues.map((issue) => issue.code);
const good = () => {
  const result = opened(sparse());
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
};

describe('opening', () => {
  it('fills in every initial value', () => {
    const result = opened(sparse());
    expect(result.issues).toEqual([]);
    expect(good()).toMatchObject({
      notes: '',
      revision: 1,
      blades: [{ quantity: 1, ricasso: 0, spineRadius: 0.3, edge: { shareLeft: 0.5 } }],
      fixture: { parameters: { noseWidth: 50, bolts: 4, hand: 'right' } },
      making: { units: 'mm', plates: { kerf: 0 }, prints: { fit: 'clearance', nozzle: 0.4 } },
      sequence: [{ steeper: 0.3 }, { steeper: 0 }],
    });
  });

  it('warns of every unknown field and drops it', () => {
    const document = changed('blades.0.colour', 'blue') as Record<string, unknown>;
    document.mood = { deep: 1 };
    (document.fixture as { parameters: Record<string, unknown> }).parameters.teeth = 3;
    const result = opened(document);
    expect(result.ok).toBe(true);
    expect(result.issues.map(({ severity, path }) => [severity, path])).toEqual([
      ['warning', 'blades.0.colour'],
      ['warning', 'mood'],
      ['warning', 'fixture.parameters.teeth'],
    ]);
    expect(result.issues[0]?.message).toContain('colour');
    expect(result.ok && saveDesign(result.value)).toBe(saveDesign(good()));
  });

  it('takes UTF-8 bytes, with or without a byte order mark', () => {
    const text = JSON.stringify({ ...sparse(), name: 'Küche ⌀ 3' });
    for (const input of [new TextEncoder().encode(text), `\uFEFF${text}`]) {
      const result = openDesign(input, registry);
      expect(result.ok && result.value.name).toBe('Küche ⌀ 3');
    }
  });
});

describe('saving', () => {
  it('opens again as the same design and saves as the same bytes', () => {
    const saved = saveDesign(good());
    expect(saved.endsWith('}\n')).toBe(true);
    const again = openDesign(saved, registry);
    expect(again.issues).toEqual([]);
    expect(again.ok && again.value).toEqual(good());
    expect(again.ok && saveDesign(again.value)).toBe(saved);
  });

  it('does not depend on the order of keys', () => {
    const reversed = (value: unknown): unknown =>
      Array.isArray(value)
        ? value.map(reversed)
        : typeof value === 'object' && value !== null
          ? Object.fromEntries(
              Object.entries(value)
                .reverse()
                .map(([key, inner]: [string, unknown]) => [key, reversed(inner)]),
            )
          : value;
    const result = opened(reversed(sparse()));
    expect(result.ok && saveDesign(result.value)).toBe(saveDesign(good()));
  });

  it('keeps every number to its last bit', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 30, max: 500, noNaN: true }),
        fc.double({ min: 0.8, max: 10, noNaN: true }),
        fc.string({ maxLength: 60, unit: 'binary' }).filter((s) => !/\p{Cc}|\p{Cs}/u.test(s)),
        (length, t, notes) => {
          const design = { ...good(), notes };
          const blade = { ...design.blades[0], ricasso: length / 10, thickness: [{ u: 0, t }] };
          const changedDesign = { ...design, blades: [blade] } as typeof design;
          expect(JSON.parse(saveDesign(changedDesign))).toEqual(changedDesign);
        },
      ),
      { numRuns: 200, seed: 1 },
    );
  });
});

describe('hostile and broken files', () => {
  it.each([
    ['__proto__', '{"__proto__": {"ok": true}}'],
    ['blades.0.constructor', '{"blades": [{"constructor": {}}]}'],
    ['a.prototype', '{"a": {"prototype": 1}}'],
  ])('refuses the key %s', (path, source) => {
    const result = openDesign(source, registry);
    expect(result.ok).toBe(false);
    expect(result.issues).toMatchObject([{ code: 'forbidden-key', path }]);
    expect(({} as { ok?: boolean }).ok).toBeUndefined();
  });

  it('refuses nesting before it parses', () => {
    const nest = (n: number): string => '['.repeat(n) + ']'.repeat(n);
    expect(codes(nest(MAX_DEPTH + 1))).toEqual(['too-deep']);
    expect(codes(nest(200_000))).toEqual(['too-deep']);
    expect(codes(nest(MAX_DEPTH))).toEqual(['not-this-format']);
    // Brackets inside strings are no nesting, escaped quotes included.
    expect(opened({ ...sparse(), notes: '[{"\\'.repeat(100) }).ok).toBe(true);
  });

  it('refuses size before it parses', () => {
    const padded = `${JSON.stringify(sparse())}${' '.repeat(MAX_DESIGN_BYTES)}`;
    expect(codes(padded)).toEqual(['too-large']);
    expect(codes(new TextEncoder().encode(padded))).toEqual(['too-large']);
    // Counted in bytes, not in characters.
    expect(codes(`"${'é'.repeat(MAX_DESIGN_BYTES / 2)}"`)).toEqual(['too-large']);
    expect(openGrinder(' '.repeat(MAX_GRINDER_BYTES + 1)).issues[0]?.code).toBe('too-large');
  });

  it('refuses what is not JSON', () => {
    expect(codes('')).toEqual(['not-json']);
    expect(codes('{"length": NaN}')).toEqual(['not-json']);
    expect(codes('{"a": 1,}')).toEqual(['not-json']);
    expect(codes(new Uint8Array([0x7b, 0xff, 0x7d]))).toEqual(['not-utf8']);
    for (const source of ['null', '7', '"x"', '[]', '{}'])
      expect(codes(source)).toEqual(['not-this-format']);
  });

  it('refuses numbers beyond all range by name', () => {
    const source = JSON.stringify(changed('blades.0.outline.length', 123456)).replace(
      '123456',
      '1e999',
    );
    const result = openDesign(source, registry);
    expect(result.issues).toMatchObject([
      { code: 'out-of-range', path: 'blades.0.outline.length' },
    ]);
    expect(result.issues[0]?.message).toContain('Infinity mm');
    const negative = JSON.stringify(changed('sequence.0.edge', 123456)).replace('123456', '-1e999');
    expect(codes(negative)).toEqual(['out-of-range']);
  });

  it('refuses a newer file and leaves it untouched', () => {
    const newer = { ...sparse(), schema: 99 };
    const copy = structuredClone(newer);
    const result = opened(newer);
    expect(result.issues).toMatchObject([{ code: 'too-new', path: 'schema' }]);
    expect(result.issues[0]?.message).toContain('99');
    expect(newer).toEqual(copy);
    const inside = changed('grinder.schema', 99);
    expect(opened(inside).issues).toMatchObject([{ code: 'too-new', path: 'grinder.schema' }]);
  });

  it('refuses other formats and versions that are none', () => {
    expect(openDesign(saveGrinder(good().grinder), registry).issues).toMatchObject([
      { code: 'not-this-format', path: 'format' },
    ]);
    for (const schema of [undefined, 0, -1, 1.5, '1', null])
      expect(opened({ ...sparse(), schema }).issues).toMatchObject([{ code: 'no-version' }]);
  });

  it('answers any JSON with a result', () => {
    fc.assert(
      fc.property(fc.jsonValue({ maxDepth: 4 }), (value) => {
        const result = openDesign(
          JSON.stringify({ ...sparse(), blades: value, sequence: value, making: value }),
          registry,
        );
        expect(result.ok).toBe(false);
        for (const issue of result.issues) {
          expect(issue.message).not.toBe('');
          expect(issue.fix).not.toBe('');
          expect(issue.message).not.toMatch(/\n|Invalid (key|type)/);
        }
      }),
      { numRuns: 300, seed: 4 },
    );
  });
});

describe('grinder files', () => {
  it.each(Object.entries(grinderPresets))('opens the preset %s without a word', (_, preset) => {
    const result = openGrinder(saveGrinder(preset));
    expect(result.issues).toEqual([]);
    expect(result.ok && result.value).toEqual(preset);
  });

  it('reports paths from its own root', () => {
    const preset = structuredClone(grinderPresets['platen-50']);
    const result = openGrinder(
      JSON.stringify({ ...preset, drive: { ...preset?.drive, beltRating: 6 } }),
    );
    expect(result.issues).toMatchObject([{ code: 'too-fast', path: 'drive.beltRating' }]);
  });
});

describe('worked designs', () => {
  const files = (folder: string): string[] =>
    readdirSync(folder, { withFileTypes: true }).flatMap((entry) =>
      entry.isDirectory()
        ? files(join(folder, entry.name))
        : entry.name.endsWith('.jig.json')
          ? [join(folder, entry.name)]
          : [],
    );

  it.each(files('jigs'))('%s is current in everything but its family', (file) => {
    const source = readFileSync(file, 'utf8');
    const { fixture } = JSON.parse(source) as { fixture: { family: string } };
    const anyFamily = { families: { [fixture.family]: { parameters: {} } } };
    const result = openDesign(source, anyFamily);
    const issues = result.issues.filter(({ path }) => !path.startsWith('fixture.parameters'));
    expect(issues).toEqual([]);
    expect(result.ok).toBe(true);
  });
});
