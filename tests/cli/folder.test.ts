import { spawn } from 'node:child_process';
import {
  appendFileSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it, vi } from 'vitest';
import { gaugeText } from '../robust/gauge.ts';
import { run, runJson, workshop } from './runner.ts';
import { isWhole, stateOf } from './whole.ts';

vi.mock('../../jigs/registry.ts', async () => ({
  registry: (await import('../robust/gauge.ts')).gaugeRegistry,
}));

const { dir, at, put, clear } = workshop();
afterAll(clear);

const good = put('good.jig.json', gaugeText());

/** Entries of the workshop that some run left over. */
const leftovers = (): string[] => readdirSync(dir).filter((name) => name.startsWith('.'));

describe('the output folder', () => {
  it('may be missing, empty, or an earlier package, and then holds a whole one', async () => {
    const out = at('package');
    expect((await run('make', good, '--out', out)).code).toBe(0);
    expect(isWhole(out)).toBe(true);
    const first = stateOf(out);
    expect((await run('make', good, '--out', out)).code).toBe(0);
    expect(stateOf(out)).toBe(first);
    mkdirSync(at('empty'));
    expect((await run('make', good, '--out', at('empty'))).code).toBe(0);
    expect(stateOf(at('empty'))).toBe(first);
    expect(leftovers()).toEqual([]);
  });

  it('is refused untouched when anything in it is not of this program', async () => {
    const out = at('package');
    const attempts: [string, () => string][] = [
      [
        'output-folder-foreign',
        () => {
          mkdirSync(at('mine'));
          writeFileSync(at('mine/diary.txt'), 'mine');
          return at('mine');
        },
      ],
      [
        'output-folder-foreign',
        () => {
          mkdirSync(at('nested/deep'), { recursive: true });
          return at('nested');
        },
      ],
      ['output-not-a-folder', () => put('file', 'x')],
      [
        'output-folder-foreign',
        () => {
          writeFileSync(join(out, 'note.txt'), 'beside the package');
          return out;
        },
      ],
    ];
    for (const [code, prepare] of attempts) {
      const target = prepare();
      const before = existsSync(join(target, '..')) ? stateOf(dir) : '';
      const { code: exit, value } = await runJson('make', good, '--out', target);
      expect(exit, code).toBe(2);
      expect(value).toMatchObject({ issues: [{ code }] });
      expect(stateOf(dir)).toBe(before);
    }
  });

  it('is refused untouched when a file of the package was changed', async () => {
    const out = at('empty');
    appendFileSync(join(out, 'hardware.csv'), 'my own line\r\n');
    const before = stateOf(out);
    const { code, value } = await runJson('make', good, '--out', out);
    expect(code).toBe(2);
    expect(value).toMatchObject({ issues: [{ code: 'output-file-changed' }] });
    expect(stateOf(out)).toBe(before);
  });

  it('does not trust a manifest that someone else wrote', async () => {
    for (const [name, manifest] of Object.entries({
      none: '{"format":"platenwright-package","schema":1,"files":[null,{"path":7}]}',
      wrong: '{"format":"platenwright-package","files":[{"path":"keep.txt","sha256":"0"}]}',
      upwards:
        '{"format":"platenwright-package","files":[{"path":"../good.jig.json","sha256":"0"}]}',
    })) {
      mkdirSync(at(name));
      writeFileSync(at(`${name}/keep.txt`), 'keep');
      writeFileSync(at(`${name}/manifest.json`), manifest);
      const { code } = await runJson('make', good, '--out', at(name));
      expect(code, name).toBe(2);
      expect(readFileSync(at(`${name}/keep.txt`), 'utf8')).toBe('keep');
    }
    expect(existsSync(good)).toBe(true);
  });

  it('leaves hidden folders of others beside it alone', async () => {
    const others = ['.beside.old', '.beside.new'];
    for (const other of others) {
      mkdirSync(at(other));
      writeFileSync(at(`${other}/diary.txt`), 'mine');
    }
    for (let i = 0; i < 2; i += 1)
      expect((await run('make', good, '--out', at('beside'))).code).toBe(0);
    expect(leftovers().sort()).toEqual(others.sort());
    for (const other of others) {
      expect(readFileSync(at(`${other}/diary.txt`), 'utf8')).toBe('mine');
      rmSync(at(other), { recursive: true });
    }
  });

  it('cannot be written below a file, and nothing is left', async () => {
    const before = stateOf(dir);
    const { code, value } = await runJson('make', good, '--out', at('file/inside'));
    expect(code).toBe(2);
    expect(value).toMatchObject({ issues: [{ severity: 'error' }] });
    expect(stateOf(dir)).toBe(before);
  });
});

describe('a write that is killed', () => {
  /** Writes the same package again and again in a process of its own until it is killed. */
  const killedAfter = (target: string, ms: number): Promise<void> =>
    new Promise((resolve) => {
      const child = spawn(
        process.execPath,
        ['--import', 'tsx', 'tests/cli/write-again.ts', target],
        { stdio: ['ignore', 'pipe', 'ignore'] },
      );
      child.stdout.once('data', () => setTimeout(() => child.kill('SIGKILL'), ms));
      child.once('exit', () => {
        resolve();
      });
    });

  it('leaves the old package, the new one, or none, and the next write goes on', async () => {
    const target = at('killed');
    for (const ms of [3, 17, 41, 97]) {
      await killedAfter(target, ms);
      if (existsSync(target)) expect(isWhole(target), `after ${ms} ms`).toBe(true);
      expect(leftovers().every((name) => name.startsWith('.killed.'))).toBe(true);
    }
    expect((await run('make', good, '--out', target)).code).toBe(0);
    expect(isWhole(target)).toBe(true);
    expect(leftovers()).toEqual([]);
  });
});
