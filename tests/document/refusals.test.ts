import { describe, expect, it } from 'vitest';
import { openDesign } from '../../src/document/open.ts';
import { BAD_BLADES } from './bad-designs.ts';
import { BAD_GRINDERS } from './bad-grinders.ts';
import { changed, registry } from './documents.ts';

describe('a bad design', () => {
  it.each([...BAD_BLADES, ...BAD_GRINDERS])(
    'is refused: %s = %j is %s',
    (path, value, code, at, named) => {
      const opened = openDesign(JSON.stringify(changed(path, value)), registry);
      expect(opened.ok).toBe(false);
      const issue = opened.issues.find((found) => found.code === code && found.path === at);
      expect(issue, JSON.stringify(opened.issues, null, 1)).toBeDefined();
      expect(issue?.severity).toBe('error');
      const said = `${issue?.message} ${issue?.fix}`;
      for (const word of named) expect(said).toContain(word);
      expect(issue?.fix.length).toBeGreaterThan(10);
      // A reason: what is wrong is always more than one clause.
      expect(issue?.message).toMatch(/;|\. /);
    },
  );

  it('is told everything at once', () => {
    const document = changed('blades.0.spineRadius', 9) as { name: unknown };
    document.name = 5;
    const opened = openDesign(JSON.stringify(document), registry);
    expect(opened.issues.map((issue) => issue.path)).toEqual(['name', 'blades.0.spineRadius']);
  });
});
