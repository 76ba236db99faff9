import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, symlinkSync } from 'node:fs';
import { afterAll, describe, expect, it, vi } from 'vitest';
import { gaugeText } from '../robust/gauge.ts';
import { run, runJson, workshop } from './runner.ts';

// The template family is quick: the same commands over a registry of that family alone.
vi.mock('../../jigs/registry.ts', async () => ({
  registry: (await import('../robust/gauge.ts')).gaugeRegistry,
}));

const { at, put, clear } = workshop();
afterAll(clear);

const good = put('good.jig.json', gaugeText());
/** The same with something exchanged in its text. */
const changed = (name: string, from: string | RegExp, to: string): string =>
  put(name, gaugeText().replace(from, to));
/** Follows a share of the height, which one angle cannot: a check fails. */
const failing = put(
  'failing.jig.json',
  gaugeText().replaceAll('"follow":"edge"', '"follow":"share"'),
);

interface Told {
  readonly code: string;
  readonly severity: string;
  readonly path: string;
  readonly message: string;
  readonly fix: string;
}

const issuesOf = (value: Record<string, unknown>): Told[] => value.issues as Told[];

describe('exit codes', () => {
  it('are 0 for what is done', async () => {
    for (const args of [
      ['solve', good],
      ['check', good],
      ['list'],
      ['schema', 'design'],
      ['link', good],
    ])
      expect((await run(...args)).code, args.join(' ')).toBe(0);
    expect((await run('--help')).code).toBe(0);
  });

  it('are 1 where a check fails, and the answer names it', async () => {
    const { code, value } = await runJson('check', failing);
    expect(code).toBe(1);
    expect(value.passed).toBe(false);
    const made = await runJson('make', failing, '--out', at('failed'));
    expect(made.code).toBe(1);
    expect(issuesOf(made.value).map((issue) => issue.code)).toContain('checks-failed');
    expect(existsSync(at('failed'))).toBe(false);
  });

  it('are 1 where the fixture fails a check once it is adapted, and 0 where it does not', async () => {
    const bad = await runJson('adapt', failing, '--grinder', 'arm-50');
    expect([bad.code, bad.value.passed]).toEqual([1, false]);
    const fine = await runJson('adapt', good, '--grinder', 'arm-50');
    expect([fine.code, fine.value.passed]).toEqual([0, true]);
  });

  it('are 1 for a failing package that was asked for, which says so on its pages', async () => {
    const { code, value } = await runJson(
      'make',
      failing,
      '--out',
      at('accepted'),
      '--accept-failing',
    );
    expect(code).toBe(1);
    expect(value.passed).toBe(false);
    expect(JSON.parse(readFileSync(at('accepted/manifest.json'), 'utf8'))).toMatchObject({
      passed: false,
    });
    const sheet = (value.files as string[]).find((file) => file.startsWith('drawings/')) ?? '';
    expect(readFileSync(at(`accepted/${sheet}`), 'utf8')).toContain('CHECKS FAILED');
  });

  it('are 2 for bad input, told as issues on standard output with --json', async () => {
    const bad: [string, string][] = [
      ['file-unreadable', at('missing.jig.json')],
      ['not-json', put('empty.jig.json', '{')],
      ['not-json', put('short.jig.json', gaugeText().slice(0, 700))],
      ['too-new', changed('new.jig.json', '"schema":1', '"schema":99')],
      ['not-this-format', put('other.jig.json', '{"format":"platenwright-grinder","schema":1}')],
      ['family-unknown', changed('family.jig.json', 'bevel-gauge', 'no-such-family')],
      ['out-of-range', changed('range.jig.json', '"length":210', '"length":1e999')],
      ['forbidden-key', changed('key.jig.json', '"schema":1', '"__proto__":{"a":1},"schema":1')],
      ['too-deep', put('deep.jig.json', `{"a":${'['.repeat(5000)}${']'.repeat(5000)}}`)],
      ['too-large', put('large.jig.json', `${gaugeText()}${' '.repeat(600_000)}`)],
      ['no-design', put('text.txt', 'nothing of ours')],
      ['not-utf8', put('bytes.jig.json', new Uint8Array([0x7b, 0xff, 0xfe, 0x7d]))],
    ];
    for (const command of ['solve', 'check', 'link'] as const)
      for (const [code, file] of bad) {
        const ended = await runJson(command, file);
        expect(ended.code, `${command} ${code}`).toBe(2);
        const [issue] = issuesOf(ended.value).filter(({ severity }) => severity === 'error');
        expect(issue?.code, `${command} ${file}`).toBe(code);
        for (const told of issuesOf(ended.value)) {
          expect(Object.keys(told).sort()).toEqual(['code', 'fix', 'message', 'path', 'severity']);
          expect(told.message.length * told.fix.length).toBeGreaterThan(0);
          expect(`${told.message}${told.fix}`).not.toMatch(/\n\s+at |node:internal|\.ts:\d+|ENO/);
        }
        expect(ended.err).toBe('');
      }
  });

  it('are 2 for folders, devices and wrong usage', async () => {
    mkdirSync(at('folder'));
    for (const file of [at('folder'), '/dev/zero'])
      expect((await runJson('solve', file)).value).toMatchObject({
        issues: [{ code: 'file-unreadable' }],
      });
    for (const args of [[], ['solve'], ['nonsense'], ['make', good], ['solve', good, '--wrong']]) {
      const { code, out, err } = await run(...args);
      expect(code, args.join(' ')).toBe(2);
      expect(`${out}${err}`).not.toMatch(/\n\s+at /);
    }
    expect((await runJson('compare', good)).value).toMatchObject({ issues: [{ code: 'usage' }] });
  });

  it('are 3 for a defect, told without a stack trace', async () => {
    const { gaugeRegistry } = await import('../robust/gauge.ts');
    const family = gaugeRegistry.families['bevel-gauge'];
    if (!family) throw new Error('no family');
    const broken = vi.spyOn(family, 'solve').mockImplementation(() => {
      throw new Error('a bug');
    });
    const told = await run('solve', good);
    const { code, value } = await runJson('solve', good);
    broken.mockRestore();
    expect(code).toBe(3);
    expect(value).toMatchObject({ issues: [{ code: 'internal' }] });
    expect(told.code).toBe(3);
    expect(told.out).toBe('');
    expect(told.err).toContain('a bug');
    expect(told.err).not.toMatch(/\n\s+at /);
  });
});

describe('the program as it is started', () => {
  const start = (...args: string[]) =>
    spawnSync(process.execPath, ['src/cli/jig.mjs', ...args], { encoding: 'utf8' });

  it('ends with the same codes', () => {
    const listed = start('list', '--json');
    expect(listed.status).toBe(0);
    expect(JSON.parse(listed.stdout)).toHaveProperty('families');
    const refused = start('solve', at('missing.jig.json'));
    expect(refused.status).toBe(2);
    expect(refused.stdout).toBe('');
    expect(refused.stderr).toContain('mend:');
  });

  it.skipIf(process.platform === 'win32')('says nothing when its reader has seen enough', () => {
    const { stderr } = spawnSync('sh', [
      '-c',
      `${JSON.stringify(process.execPath)} src/cli/jig.mjs schema design | head -c 10`,
    ]);
    expect(String(stderr)).toBe('');
  });
});

describe('reading', () => {
  it('follows a link in the file system and leaves the file as it was', async () => {
    symlinkSync(good, at('linked.jig.json'));
    const before = readFileSync(good);
    expect((await run('solve', at('linked.jig.json'))).code).toBe(0);
    expect(readFileSync(good).equals(before)).toBe(true);
  });

  it('reports unknown fields and goes on', async () => {
    const file = changed('more.jig.json', '"schema":1', '"schema":1,"mood":"calm"');
    const { code, err } = await run('solve', file);
    expect(code).toBe(0);
    expect(err).toContain('mood');
  });
});
