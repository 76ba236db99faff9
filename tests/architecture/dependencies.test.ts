import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

interface Package {
  readonly dependencies: Readonly<Record<string, string>>;
  readonly devDependencies: Readonly<Record<string, string>>;
}

interface Locked {
  readonly dev?: boolean;
  readonly integrity?: string;
  readonly license?: string;
  readonly hasInstallScript?: boolean;
}

const parsed = (file: string): unknown => JSON.parse(readFileSync(file, 'utf8'));
const own = parsed('package.json') as Package;
const { packages } = parsed('package-lock.json') as { packages: Record<string, Locked> };
const locked = Object.entries(packages).filter(([path]) => path !== '');

const sources = [
  'vite.config.ts',
  '.eslint.config.js',
  ...['src', 'jigs', 'tests'].flatMap((folder) =>
    readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .filter((name) => /\.(ts|js|mjs|svelte)$/.test(name))
      .map((name) => join(folder, name)),
  ),
].map((file) => ({ file, content: readFileSync(file, 'utf8') }));

/** What is named in quotes as a module: imports, dynamic imports, files of a package. */
const names = (content: string, dependency: string): boolean =>
  ["'", '"', '`'].some(
    (quote) =>
      content.includes(`${quote}${dependency}${quote}`) ||
      content.includes(`${quote}${dependency}/`),
  );

/** Used without being named in a source: by a script, another tool, or as types. */
const NAMED_ELSEWHERE = new Set([
  // Scripts of package.json; prettier's plugin in its settings there.
  ...['eslint', 'prettier', 'prettier-plugin-svelte', 'svelte-check', 'tsx', 'typescript', 'vite'],
  // The environment that a test names in its first line.
  'happy-dom',
]);

/** Licences under which a library may be shipped with the page and the packages. */
const SHIPPED = new Set(['MIT', 'ISC', 'BSD-2-Clause', 'BSD-3-Clause', '0BSD', 'Apache-2.0']);

describe('dependencies', () => {
  it('are all used, those of the program by the program', () => {
    const unused = (list: Readonly<Record<string, string>>, files: typeof sources): string[] =>
      Object.keys(list).filter(
        (dependency) =>
          !dependency.startsWith('@types/') &&
          !NAMED_ELSEWHERE.has(dependency) &&
          !files.some(({ content }) => names(content, dependency)),
      );
    const program = sources.filter(({ file }) => !file.startsWith('tests'));
    expect(unused(own.dependencies, program)).toEqual([]);
    expect(unused(own.devDependencies, sources)).toEqual([]);
  });

  it('come from the lock file by their checksum, and one alone runs a script', () => {
    expect(locked.length).toBeGreaterThan(100);
    expect(locked.filter(([, { integrity }]) => integrity === undefined)).toEqual([]);
    const scripts = locked.filter(([, one]) => one.hasInstallScript === true);
    expect(scripts.map(([path]) => path.replace(/^.*node_modules\//, ''))).toEqual([
      'esbuild',
      ...(scripts.length > 1 ? ['fsevents'] : []),
    ]);
  });

  it('that are shipped have licences that allow it', () => {
    const others = locked
      .filter(([, { dev, license = '' }]) => dev !== true && !SHIPPED.has(license))
      .map(([path]) => path.replace(/^.*node_modules\//, ''))
      .sort();
    // The typeface has a free licence of its own; this PNG reader states its licence, MIT, in a file.
    expect(others).toEqual(['dejavu-fonts-ttf', 'png-js']);
    const text = (file: string): string => readFileSync(join('node_modules', file), 'utf8');
    expect(text('dejavu-fonts-ttf/LICENSE')).toMatch(
      /Permission is hereby granted, free of charge/,
    );
    expect(existsSync('node_modules/png-js/LICENSE')).toBe(true);
    expect(text('png-js/LICENSE')).toMatch(/MIT/);
  });
});
