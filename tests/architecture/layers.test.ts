import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { describe, expect, it } from 'vitest';

/** Folders of the source, each with the folders it may import (besides itself). */
const MAY_IMPORT: Readonly<Record<string, readonly string[]>> = {
  core: [],
  text: ['core'],
  schema: ['core', 'text'],
  geometry: ['core', 'text'],
  blade: ['core', 'text', 'schema', 'geometry'],
  grinder: ['core', 'text', 'schema', 'geometry'],
  grind: ['core', 'text', 'geometry', 'blade', 'grinder'],
  setup: ['core', 'text', 'schema', 'geometry', 'blade', 'grinder', 'grind'],
  document: ['core', 'text', 'schema', 'geometry', 'blade', 'grinder'],
  model: ['core', 'text', 'geometry'],
  hardware: ['core', 'text', 'geometry', 'model'],
  check: ['core', 'text', 'geometry', 'model'],
  outline: ['core', 'text', 'geometry', 'blade'],
  virtual: ['core', 'text', 'geometry', 'blade', 'grinder', 'grind', 'model'],
  drawing: ['core', 'text', 'geometry', 'model'],
  export: ['core', 'text', 'geometry', 'model', 'drawing'],
  family: [
    'core',
    'text',
    'schema',
    'geometry',
    'blade',
    'grinder',
    'grind',
    'setup',
    'document',
    'model',
    'hardware',
    'check',
    'virtual',
  ],
};
/** The outer shells may see everything; these alone may see the registry and the outside world. */
const SHELLS = ['app', 'cli', 'worker'];
/** Both put the layers below together: making packages, adapting and comparing designs. */
const INNER = ['make', 'adapt'];

/** A field may be a list, whose rows are made of fields. */
const NESTED = ['src/app/ui/FieldView.svelte', 'src/app/ui/ListField.svelte'];

/** Whether one file comes to another by its imports. */
const reaches = (
  targets: ReadonlyMap<string, readonly string[]>,
  from: string,
  to: string,
): boolean => {
  const seen = new Set<string>();
  const open = [...(targets.get(from) ?? [])];
  for (let file = open.pop(); file !== undefined; file = open.pop()) {
    if (file === to) return true;
    if (seen.has(file)) continue;
    seen.add(file);
    open.push(...(targets.get(file) ?? []));
  }
  return false;
};

const files = (dir: string): string[] =>
  readdirSync(dir, { withFileTypes: true }).flatMap((entry) =>
    entry.isDirectory()
      ? files(join(dir, entry.name))
      : /\.(ts|svelte)$/.test(entry.name)
        ? [join(dir, entry.name)]
        : [],
  );

const importsOf = (file: string): string[] =>
  [...readFileSync(file, 'utf8').matchAll(/(?:from|import)\s*\(?\s*'([^']+)'/g)].map(
    (match) => match[1] ?? '',
  );

const resolved = (file: string, target: string): string =>
  relative('.', join(dirname(file), target)).replaceAll('\\', '/');

const sources = files('src').map((file) => ({
  file,
  folder: file.split(/[\\/]/)[1] ?? '',
  text: readFileSync(file, 'utf8'),
  imports: importsOf(file),
}));
const inner = sources.filter(
  ({ file, folder }) => !SHELLS.includes(folder) && file !== 'src/index.ts',
);

describe('architecture', () => {
  it('finds the sources', () => {
    expect(sources.length).toBeGreaterThan(20);
  });

  it('imports only from the layers below', () => {
    const wrong = inner
      .filter(({ folder }) => !INNER.includes(folder))
      .flatMap(({ file, folder, imports }) =>
        imports
          .filter((target) => target.startsWith('.'))
          .map((target) => resolved(file, target))
          .filter((target) => {
            const to = target.split('/')[1] ?? '';
            return to !== folder && !(MAY_IMPORT[folder] ?? []).includes(to);
          })
          .map((target) => `${file} imports ${target}`),
      );
    expect(wrong).toEqual([]);
  });

  it('keeps the registry, Node, the page and Svelte out of the inner layers', () => {
    const wrong = inner.flatMap(({ file, imports }) =>
      imports
        .filter((target) => /^node:|^svelte|jigs\/|^three/.test(target))
        .map((target) => `${file} imports ${target}`),
    );
    expect(wrong).toEqual([]);
  });

  it('keeps clock and chance out of the inner layers', () => {
    const wrong = inner.filter(({ text }) =>
      /\bDate\.now\(|\bnew Date\(\)|\bMath\.random\(|\bperformance\.now\(|\bprocess\.(?:env|cwd|argv|exit|platform|hrtime|nextTick)\b|\bwindow\.|\bdocument\.(get|query|create|body)/.test(
        text,
      ),
    );
    expect(wrong.map(({ file }) => file)).toEqual([]);
  });

  it('lets the families see the family facade alone', () => {
    const wrong = files('jigs').flatMap((file) =>
      importsOf(file)
        .filter((target) => target.startsWith('.'))
        .map((target) => resolved(file, target))
        .filter((target) => target.startsWith('src/') && !target.startsWith('src/family/'))
        .map((target) => `${file} imports ${target}`),
    );
    expect(wrong).toEqual([]);
  });

  it('gives each modelling library one door', () => {
    const doors: Readonly<Record<string, RegExp>> = {
      earcut: /^src\/model\//,
      pdfkit: /^src\/export\//,
      'dxf-parser': /^src\/outline\//,
      'fast-xml-parser': /^src\/outline\//,
      'svg-pathdata': /^src\/outline\//,
    };
    const wrong = Object.entries(doors).flatMap(([library, door]) =>
      sources
        .filter(({ imports }) => imports.includes(library))
        .filter(({ file }) => !door.test(file.replaceAll('\\', '/')))
        .map(({ file }) => `${file} imports ${library}`),
    );
    expect(wrong).toEqual([]);
  });

  it('imports in no circle', () => {
    const all = [...sources.map(({ file }) => file), ...files('jigs')];
    const known = new Set(all.map((file) => file.replaceAll('\\', '/')));
    const targets = new Map(
      all.map((file) => [
        file.replaceAll('\\', '/'),
        importsOf(file)
          .filter((target) => target.startsWith('.'))
          .map((target) => resolved(file, target))
          .filter((target) => known.has(target)),
      ]),
    );
    const round = [...known].filter((file) => reaches(targets, file, file));
    expect(round.sort()).toEqual(NESTED);
  });

  it('keeps files short', () => {
    const long = [...sources.map(({ file }) => file), ...files('jigs'), ...files('tests')].filter(
      (file) => readFileSync(file, 'utf8').split('\n').length > 400,
    );
    expect(long).toEqual([]);
  });
});
