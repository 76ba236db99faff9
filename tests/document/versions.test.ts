import { describe, expect, it } from 'vitest';
import { designFormat, grinderFormat } from '../../src/document/formats.ts';
import { upgrade, type Format } from '../../src/document/version.ts';

/** A format with a history: "size" became "length" in 2, and got its unit in 3. */
const invented: Format = {
  mark: 'invented',
  noun: 'drawing',
  version: 3,
  migrations: [
    {
      from: 1,
      change: 'size is called length',
      up: ({ size, ...rest }) => ({ ...rest, length: size }),
    },
    { from: 2, change: 'length states its unit', up: (draft) => ({ ...draft, unit: 'mm' }) },
  ],
};

describe('migrations', () => {
  it('run one after the other from any version', () => {
    const now = { format: 'invented', schema: 3, length: 7, unit: 'mm' };
    const answer = { ok: true, value: now, issues: [] };
    // No more than that: a field under its old name would be one that is not known.
    expect(upgrade({ format: 'invented', schema: 1, size: 7 }, invented)).toEqual(answer);
    expect(upgrade({ format: 'invented', schema: 2, length: 7 }, invented)).toEqual(answer);
    expect(upgrade(now, invented)).toEqual(answer);
  });

  it('leave the file they read as it was', () => {
    const old = Object.freeze({ format: 'invented', schema: 1, size: 7 });
    upgrade(old, invented);
    expect(old).toEqual({ format: 'invented', schema: 1, size: 7 });
  });

  it('say so where there is no way', () => {
    const gap = { ...invented, migrations: invented.migrations.slice(1) };
    expect(upgrade({ format: 'invented', schema: 1 }, gap, 'inner')).toMatchObject({
      ok: false,
      issues: [{ code: 'too-old', path: 'inner.schema' }],
    });
  });

  it('refuse the very next version, which this program cannot know', () => {
    for (const schema of [4, 5, 40])
      expect(upgrade({ format: 'invented', schema, length: 7 }, invented)).toMatchObject({
        ok: false,
        issues: [{ code: 'too-new', path: 'schema' }],
      });
  });

  it.each([designFormat, grinderFormat])('are complete for the $noun', (format) => {
    const from = format.migrations.map((migration) => migration.from);
    expect(from).toEqual(Array.from({ length: format.version - 1 }, (_, i) => i + 1));
  });
});
