import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it, vi } from 'vitest';
import { writePackage } from '../../src/cli/package-folder.ts';
import { withManifest } from '../../src/export/index.ts';
import { workshop } from './runner.ts';
import { isWhole, stateOf } from './whole.ts';

/** Changes to the disk that are still made; from then on, none: what a kill leaves of a run. */
const life = vi.hoisted(() => ({ left: Infinity, done: 0 }));

vi.mock('node:fs', async (importActual) => {
  const fs = await importActual<typeof import('node:fs')>();
  const mortal =
    <A extends unknown[], R>(change: (...args: A) => R) =>
    (...args: A): R | undefined => {
      if (life.done >= life.left) return undefined;
      life.done += 1;
      return change(...args);
    };
  return {
    ...fs,
    mkdirSync: mortal(fs.mkdirSync),
    writeFileSync: mortal(fs.writeFileSync),
    renameSync: mortal(fs.renameSync),
    rmSync: mortal(fs.rmSync),
  };
});

const { dir, at, clear } = workshop();
afterAll(() => {
  life.left = Infinity;
  clear();
});

const packageOf = (word: string) =>
  withManifest(
    ['a.txt', 'part/b.txt', 'part/c.txt'].map((path) => ({
      path,
      kind: 'sample',
      bytes: new TextEncoder().encode(`${word} ${path}\n`),
    })),
    { design: word, passed: true },
  );

const write = (target: string, word: string, left = Infinity): void => {
  [life.done, life.left] = [0, left];
  writePackage(target, packageOf(word));
  [life.done, life.left] = [0, Infinity];
};

const besides = (): string[] => readdirSync(dir).filter((name) => name.startsWith('.'));

describe('a package write that ends after any of its changes to the disk', () => {
  const target = at('out');
  write(target, 'new');
  const fresh = stateOf(target);
  write(target, 'old');
  const old = stateOf(target);
  // All changes of one whole replacement.
  [life.done, life.left] = [0, Infinity];
  writePackage(target, packageOf('new'));
  const steps = life.done;

  it('leaves the old package, the new one, or between them none with the old one beside', () => {
    expect(steps).toBeGreaterThan(8);
    const seen: string[] = [];
    for (let left = 0; left <= steps; left += 1) {
      write(target, 'old');
      expect(stateOf(target)).toBe(old);
      write(target, 'new', left);
      if (existsSync(target)) {
        expect(isWhole(target)).toBe(true);
        seen.push(stateOf(target) === old ? 'old' : 'new');
        expect([old, fresh]).toContain(stateOf(target));
      } else {
        seen.push('none');
        expect(isWhole(at('.out.platenwright-old'))).toBe(true);
        expect(stateOf(at('.out.platenwright-old'))).toBe(old);
      }
      // A write that is refused puts the old one back too; one that goes on leaves nothing else.
      if (seen.at(-1) === 'none') {
        write(target, 'third', 1);
        expect(stateOf(target)).toBe(old);
      }
      write(target, 'third');
      expect(isWhole(target)).toBe(true);
      expect(besides()).toEqual([]);
    }
    // First the old one, for one moment none, then the new one.
    expect(seen.join(' ')).toMatch(/^(?:old )+none (?:new ?)+$/);
  });

  it('the same by a kill of the process itself between the two renames', () => {
    write(target, 'old');
    const child = spawnSync(
      process.execPath,
      ['--import', 'tsx', 'tests/cli/write-again.ts', target, '2'],
      { encoding: 'utf8' },
    );
    expect(child.signal, child.stderr).toBe('SIGKILL');
    expect(existsSync(target)).toBe(false);
    expect(stateOf(at('.out.platenwright-old'))).toBe(old);
    expect(isWhole(join(dir, '.out.platenwright-new'))).toBe(true);
    write(target, 'new');
    expect(stateOf(target)).toBe(fresh);
    expect(besides()).toEqual([]);
  });
});
