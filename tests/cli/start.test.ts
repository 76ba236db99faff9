import { spawnSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';

/** As run.mjs does once the libraries are there: a test must not be what installs them. */
const code = `
  const { program } = await import('./src/cli/built.mjs');
  process.exitCode = await (await program('start')).start(process.argv.slice(1));`;

describe('start', () => {
  it('refuses what it does not know by name, before it does anything', () => {
    const { status, stdout, stderr } = spawnSync(
      process.execPath,
      ['--input-type=module', '--eval', code, '--', '--once', '--port=80', 'fast'],
      { encoding: 'utf8' },
    );
    expect(status).toBe(2);
    expect(stdout).toBe('');
    expect(stderr).toContain('"--port=80"');
    expect(stderr).toContain('"fast"');
    expect(stderr).not.toContain('know "--once"');
  });
});
