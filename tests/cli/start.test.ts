import { spawnSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';

describe('start', () => {
  it('refuses what it does not know by name, before it does anything', () => {
    const { status, stdout, stderr } = spawnSync(
      process.execPath,
      ['--import', 'tsx', 'src/cli/start.ts', '--once', '--port=80', 'fast'],
      { encoding: 'utf8' },
    );
    expect(status).toBe(2);
    expect(stdout).toBe('');
    expect(stderr).toContain('"--port=80"');
    expect(stderr).toContain('"fast"');
    expect(stderr).not.toContain('know "--once"');
  });
});
