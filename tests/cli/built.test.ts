import { spawnSync } from 'node:child_process';
import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  rmSync,
  statSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';

const built = JSON.stringify(pathToFileURL(resolve('src/cli/built.mjs')).href);

let root = '';
const main = () => join(root, 'src/cli/main.ts');
const kept = () => join(root, 'node_modules/.cache/platenwright');

/** A checkout of one program that imports one other file, which says a word. */
beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'built-'));
  for (const folder of ['src/cli', 'src/core', 'jigs', 'node_modules'])
    mkdirSync(join(root, folder), { recursive: true });
  writeFileSync(join(root, 'package.json'), '{"type":"module"}');
  writeFileSync(join(root, 'package-lock.json'), '{}');
  writeFileSync(main(), `import { word } from '../core/word.ts';\nconsole.log(word);\n`);
  say('one');
});
afterEach(() => rmSync(root, { recursive: true }));

const say = (word: string): void =>
  writeFileSync(join(root, 'src/core/word.ts'), `export const word: string = '${word}';\n`);

const start = () => {
  const code = `const { program } = await import(${built}); await program('main', ${JSON.stringify(root)});`;
  const { stdout, stderr } = spawnSync(process.execPath, ['--input-type=module', '--eval', code], {
    encoding: 'utf8',
  });
  return { out: stdout.trim(), err: stderr };
};

describe('a program that is built once', () => {
  it('is built anew for what the sources say, even at the same size and time, and else not', () => {
    expect(start()).toEqual({ out: 'one', err: '' });
    const [first = ''] = readdirSync(kept());
    const { ctimeMs } = statSync(join(kept(), first));
    expect(start().out).toBe('one');
    expect(readdirSync(kept())).toEqual([first]);
    expect(statSync(join(kept(), first)).ctimeMs).toBe(ctimeMs);

    const file = join(root, 'src/core/word.ts');
    const { atime, mtime } = statSync(file);
    say('two');
    utimesSync(file, atime, mtime);
    // What was left a day ago goes, what a running program may still read stays.
    const left = join(kept(), 'left');
    mkdirSync(left);
    const longAgo = new Date(Date.now() - 25 * 60 * 60 * 1000);
    utimesSync(left, longAgo, longAgo);
    expect(start().out).toBe('two');
    expect(readdirSync(kept())).toContain(first);
    expect(readdirSync(kept())).toHaveLength(2);
  });

  it('names the place of the source in an error', () => {
    writeFileSync(main(), `interface Gone {\n  a: 1;\n}\n\nthrow new Error('lost' as string);\n`);
    const { err } = start();
    expect(err).toContain('Error: lost');
    expect(err).toContain(`${main()}:5:`);
  });

  it('tells what is wrong with a source, and keeps nothing', () => {
    writeFileSync(main(), 'const = 1;\n');
    expect(start().err).toMatch(/src\/cli\/main\.ts:1:6/);
    expect(() => readdirSync(kept())).toThrow();
  });

  it('runs where nothing can be kept', () => {
    // A file where the folder would be: this refuses a superuser, too, whom no mode of a folder does.
    writeFileSync(join(root, 'node_modules/.cache'), '');
    expect(start()).toEqual({ out: 'one', err: '' });
  });
});
