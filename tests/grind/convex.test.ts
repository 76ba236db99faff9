import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { registry } from '../../jigs/registry.ts';
import { withValue } from '../../src/core/path.ts';
import { openDesign } from '../../src/document/open.ts';
import { solveDesign } from '../../src/make/engine.ts';
import { valueOf } from '../family/examples.ts';

const convexIn = (example: string, values: Readonly<Record<string, unknown>>) => {
  const worked = valueOf(openDesign(readFileSync(`jigs/${example}.jig.json`), registry));
  const design = Object.entries(values).reduce(
    (next, [path, value]) => withValue(next, path, value),
    worked,
  );
  return solveDesign(design, registry);
};

const warnedOf = (...of: Parameters<typeof convexIn>) =>
  convexIn(...of).issues.filter(({ code }) => code === 'convex-face');

/** What is told of every grind line. */
const linesOf = (...of: Parameters<typeof convexIn>) =>
  valueOf(valueOf(convexIn(...of)).checks('near')).filter(({ id }) => id.startsWith('range/line/'));

// A circle of 36 in (914.4 mm) behind 195 mm of platen: its ends lie 97.5 mm from the crown, and
// sin 6.12 degrees = 97.5 / 914.4 (table of sines, from memory: sin 6 = 0.1045, sin 6.25 = 0.1089).
const CONVEX = { 'grinder.platen.kind': 'radius', 'grinder.platen.radius': 914.4 };

describe.each(['spine-rest/examples/kitchen-210', 'carriage/examples/camp-90'])('%s', (example) => {
  it('is told as that of a flat face on a convex platen, with its radius and lean', () => {
    const [warning, ...others] = warnedOf(example, CONVEX);
    expect(others).toEqual([]);
    expect(warning?.severity).toBe('warning');
    expect(warning?.message).toMatch(/914\.4 mm/);
    expect(warning?.message).toMatch(/6\.12 degrees/);
  });

  it('has no grind line that passes where the last belt grinds on a convex face', () => {
    const flat = linesOf(example, {});
    expect(flat.length).toBeGreaterThan(0);
    expect(flat.filter(({ passed, found }) => !passed || found === null)).toEqual([]);
    const lines = linesOf(example, CONVEX);
    expect(lines.map(({ id }) => id)).toEqual(flat.map(({ id }) => id));
    expect(lines.filter(({ passed, found }) => passed || found !== null)).toEqual([]);
  });

  it('says nothing of it on a flat platen, nor of a convex backing that no pass uses', () => {
    expect(warnedOf(example, {})).toEqual([]);
    const backings = [
      { kind: 'none', id: 'bare', thickness: 0 },
      { kind: 'leather', id: 'leather', thickness: 5 },
      { kind: 'radius', id: 'round', thickness: 6, radius: 900 },
    ];
    expect(warnedOf(example, { 'grinder.backings': backings })).toEqual([]);
    const used = warnedOf(example, {
      'grinder.backings': backings,
      'sequence.0.backing': 'round',
    });
    expect(used.map(({ message }) => /900 mm/.test(message))).toEqual([true]);
    // The last belt still grinds on the flat platen.
    const lines = linesOf(example, { 'grinder.backings': backings, 'sequence.0.backing': 'round' });
    expect(lines.every(({ found }) => found !== null)).toBe(true);
  });
});
