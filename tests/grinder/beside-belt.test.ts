import { describe, expect, it } from 'vitest';
import { grinderPresets } from '../../src/grinder/presets/index.ts';
import { grinderIssues } from '../../src/grinder/rules.ts';
import type { Grinder } from '../../src/grinder/schema.ts';

const warned = (grinder: Grinder): string[] =>
  grinderIssues(grinder)
    .filter(({ code }) => code === 'beside-belt')
    .map(({ path }) => path);

describe('what stands bare beside a belt', () => {
  it('is told of no preset, and of each with a belt half as wide', () => {
    for (const [name, preset] of Object.entries(grinderPresets)) {
      expect(warned(preset), name).toEqual([]);
      const narrow = { ...preset, belt: { ...preset.belt, width: preset.belt.width / 2 } };
      expect(warned(narrow), name).toHaveLength(1);
    }
  });
});
