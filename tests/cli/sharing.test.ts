import { Ajv } from 'ajv';
import { existsSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { join, relative } from 'node:path';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { saveDesign, saveGrinder } from '../../src/document/save.ts';
import { zipPackage } from '../../src/export/index.ts';
import { gaugeDesign } from '../robust/gauge.ts';
import { seeded } from '../../src/setup/random.ts';
import { wholeFiles } from '../soak/formats.ts';
import { mutated } from '../soak/mutate.ts';
import { run, runJson, workshop } from './runner.ts';

vi.mock('../../jigs/registry.ts', async () => ({
  registry: (await import('../robust/gauge.ts')).gaugeRegistry,
}));

const { at, put, clear } = workshop();
afterAll(clear);

const text = saveDesign(gaugeDesign());
const design = put('own.jig.json', text);

beforeAll(async () => {
  expect((await run('make', design, '--out', at('package'))).code).toBe(0);
});

describe('open', () => {
  it('restores the identical design from a file of every format', async () => {
    const whole = await wholeFiles();
    const formats = Object.keys(whole).filter((name) => name !== 'grinder');
    expect(formats).toHaveLength(8);
    for (const name of formats) {
      const file = put(`share-${name}`, whole[name] ?? new Uint8Array());
      const out = at(`from-${name}.jig.json`);
      expect((await run('open', file, '--out', out)).code, name).toBe(0);
      expect(readFileSync(out, 'utf8'), name).toBe(text);
    }
  });

  it('restores it from every file of a package, the folder, and the folder packed', async () => {
    const all = readdirSync(at('package'), { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map(({ parentPath, name }) => join(relative(at('package'), parentPath), name));
    // These formats have no place for it, and the refusal says which files beside them have one.
    const without = all.filter((name) => /\.(csv|stl|txt)$/.test(name));
    const files = all.filter((name) => !without.includes(name));
    expect(files).toEqual(expect.arrayContaining(['report.json', 'manifest.json']));
    expect(files.length).toBeGreaterThan(10);
    expect(without.length).toBeGreaterThan(0);
    for (const name of without) {
      const out = at('none.jig.json');
      const { code, value } = await runJson('open', at(`package/${name}`), '--out', out);
      expect(code, name).toBe(2);
      expect(value).toMatchObject({
        issues: [{ code: 'no-design', fix: expect.stringContaining('report.json') as string }],
      });
    }
    const listed = JSON.parse(readFileSync(at('package/manifest.json'), 'utf8')) as {
      files: { path: string; kind: string }[];
    };
    const packed = zipPackage(
      [...listed.files, { path: 'manifest.json', kind: 'manifest' }].map((file) => ({
        ...file,
        bytes: readFileSync(join(at('package'), file.path)),
      })),
    );
    const sources = [
      at('package'),
      put('packed.zip', packed),
      ...files.map((f) => at(`package/${f}`)),
    ];
    for (const [i, source] of sources.entries()) {
      const out = at(`again-${String(i)}.jig.json`);
      expect((await run('open', source, '--out', out)).code, source).toBe(0);
      expect(readFileSync(out, 'utf8'), source).toBe(text);
    }
  });

  it('restores it from the link that link prints, given in the place of a file', async () => {
    const printed = (await run('link', design)).out.trim();
    expect(printed).toMatch(/^#2\.[\w-]+$/);
    for (const [i, link] of [
      printed,
      printed.slice(1),
      `https://example.org/p${printed}`,
    ].entries()) {
      const out = at(`linked-${String(i)}.jig.json`);
      expect((await run('open', link, '--out', out)).code).toBe(0);
      expect(readFileSync(out, 'utf8')).toBe(text);
    }
    const damaged = await runJson('open', printed.slice(0, -9), '--out', at('damaged.jig.json'));
    expect(damaged.code).toBe(2);
    expect(damaged.value).toMatchObject({ issues: [{ code: 'link-damaged' }] });
    expect(existsSync(at('damaged.jig.json'))).toBe(false);
  });

  it('restores a design whose words look like a carried design', async () => {
    const decoy = `platenwright-design:${btoa('{}')}`;
    const tricky = saveDesign({ ...gaugeDesign(), name: decoy, notes: decoy });
    const folder = at('tricky');
    const made = await run('make', put('tricky.jig.json', tricky), '--out', folder);
    expect(made.code).toBe(0);
    const files = readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .filter((name) => /\.(svg|pdf|dxf|json)$/.test(name))
      .map((name) => join(folder, name));
    for (const [i, source] of files.entries()) {
      const out = at(`tricky-${String(i)}.jig.json`);
      expect((await run('open', source, '--out', out)).code, source).toBe(0);
      expect(readFileSync(out, 'utf8'), source).toBe(tricky);
    }
  });

  it('never replaces a file, its own source least of all', async () => {
    const { code, value } = await runJson('open', design, '--out', design);
    expect(code).toBe(2);
    expect(value).toMatchObject({ issues: [{ code: 'output-exists' }] });
    expect(readFileSync(design, 'utf8')).toBe(text);
    const lost = await runJson('open', design, '--out', at('no/such/folder/x.jig.json'));
    expect(lost.value).toMatchObject({ issues: [{ code: 'output-unwritable' }] });
  });
});

describe('damaged files given to open', () => {
  it('end with a design or an issue, and leave no other file behind', async () => {
    const random = seeded(31);
    const whole = await wholeFiles();
    const ends = new Set<number>();
    for (const [name, bytes] of Object.entries(whole).filter(([format]) => format !== 'grinder'))
      for (let i = 0; i < 6; i += 1) {
        const file = put('damaged', mutated(random, bytes));
        const out = at('mended.jig.json');
        const before = readdirSync(at('.')).sort();
        const { code, value } = await runJson('open', file, '--out', out);
        ends.add(code);
        const wrote = code === 0 ? ['mended.jig.json'] : [];
        expect(readdirSync(at('.')).sort(), `${name} ${String(i)}`).toEqual(
          [...before, ...wrote].sort(),
        );
        if (code === 0) rmSync(out);
        else expect(value).toMatchObject({ issues: [{ severity: 'error' }] });
      }
    expect([...ends].sort()).toEqual([0, 2]);
  });
});

describe('adapt and compare', () => {
  it('write only when asked, never over a file, and then what was reported', async () => {
    const before = readdirSync(at('.'));
    const asked = await runJson('adapt', design, '--grinder', 'platen-75');
    expect(asked.code).toBe(0);
    expect(readdirSync(at('.'))).toEqual(before);
    const out = at('adapted.jig.json');
    const machine = put('mine.grinder.json', saveGrinder({ ...gaugeDesign().grinder, lean: 1 }));
    expect((await run('adapt', design, '--grinder', machine, '--out', out)).code).toBe(0);
    expect((await run('check', out)).code).toBe(0);
    const compared = await runJson('compare', design, out);
    expect(compared.code).toBe(0);
    const labels = (compared.value.differences as { path: string }[]).map(({ path }) => path);
    expect(labels).toContain('grinder.lean');
    expect(readFileSync(design, 'utf8')).toBe(text);
    for (const taken of [design, out])
      expect(
        (await runJson('adapt', design, '--grinder', machine, '--out', taken)).value,
      ).toMatchObject({
        issues: [{ code: 'output-exists' }],
      });
  });

  it('refuse what they cannot do', async () => {
    expect((await runJson('adapt', design)).value).toMatchObject({
      issues: [{ code: 'nothing-to-adapt' }],
    });
    expect((await runJson('adapt', design, '--grinder', 'no-such')).value).toMatchObject({
      issues: [
        { code: 'grinder-unknown', message: expect.stringContaining('platen-50') as string },
      ],
    });
    expect((await runJson('reach', design)).value).toMatchObject({
      issues: [{ code: 'reach-unknown' }],
    });
  });
});

/** The same schema with every object closed: what it does not name must not be there. */
const closed = (schema: unknown): unknown => {
  if (Array.isArray(schema)) return schema.map(closed);
  if (typeof schema !== 'object' || schema === null) return schema;
  const inner = Object.fromEntries(
    Object.entries(schema).map(([key, value]: [string, unknown]) => [key, closed(value)]),
  );
  return 'properties' in inner ? { ...inner, additionalProperties: false } : inner;
};

describe('published schemas', () => {
  const schemaOf = async (name: string) =>
    JSON.parse((await run('schema', name)).out) as Record<string, unknown>;
  const answer = async (...args: string[]): Promise<unknown> => (await runJson(...args)).value;
  const file = (path: string): unknown => JSON.parse(readFileSync(path, 'utf8'));

  it('validate what the program writes, by a validator of its own', async () => {
    const answers: [string, unknown][] = [
      ['design', file(design)],
      ['grinder', JSON.parse(saveGrinder(gaugeDesign().grinder))],
      ['solve', await answer('solve', design)],
      ['check', await answer('check', design)],
      ['report', file(at('package/report.json'))],
      ['manifest', file(at('package/manifest.json'))],
      ['compare', await answer('compare', design, design)],
      ['adapt', await answer('adapt', design, '--grinder', 'arm-50')],
    ];
    for (const [name, value] of answers) {
      const ajv = new Ajv({ strict: false, allErrors: true });
      const schema = await schemaOf(name);
      const isOpen = name === 'design' || name === 'grinder';
      const validate = ajv.compile(isOpen ? schema : (closed(schema) as object));
      expect(validate(value), `${name}: ${JSON.stringify(validate.errors)}`).toBe(true);
      expect(validate({ format: 'something else' }), name).toBe(false);
    }
  });

  it('are refused by name when there is none', async () => {
    expect((await run('schema', 'no-such')).code).toBe(2);
    expect((await run('schema', '__proto__')).code).toBe(2);
  });
});
