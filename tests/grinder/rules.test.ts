import { describe, expect, it } from 'vitest';
import { withValue } from '../../src/core/path.ts';
import { grinderPresets } from '../../src/grinder/presets/index.ts';
import { grinderIssues } from '../../src/grinder/rules.ts';
import type { Grinder } from '../../src/grinder/schema.ts';

const off = (grinder: Grinder) => grinderIssues(grinder).filter(({ code }) => code === 'off-rest');

const boxed = (lean: number): string[] =>
  Object.values(grinderPresets).flatMap((preset) =>
    grinderIssues({ ...preset, lean })
      .filter(({ code }) => code === 'platen-in-box')
      .map(({ path }) => path),
  );

describe('a keep-out box behind a platen', () => {
  it('is told of once the platen has been leaned into it', () => {
    expect(boxed(0)).toEqual([]);
    expect(boxed(2)).toEqual([]);
    expect(new Set(boxed(5))).toEqual(new Set(['keepOuts.0']));
  });
});

describe('slots and holes that a smaller rest no longer holds', () => {
  const tables = Object.values(grinderPresets).filter(({ rest }) => rest.kind === 'table');

  it('come back onto it at the values that are named', () => {
    let mended = 0;
    for (const preset of tables) {
      let grinder = withValue(withValue(preset, 'rest.width', 90), 'rest.depth', 60);
      for (let i = 0; i < 20 && off(grinder).length > 0; i += 1)
        for (const { mend } of off(grinder)) {
          expect(mend?.path).toMatch(/^rest\.pattern\./);
          if (mend) grinder = withValue(grinder, mend.path, mend.value);
          mended += 1;
        }
      expect(off(grinder)).toEqual([]);
    }
    expect(mended).toBeGreaterThan(3);
  });
});
