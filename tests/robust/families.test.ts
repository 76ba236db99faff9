import { describe, expect, it } from 'vitest';
import { registry as registered } from '../../jigs/registry.ts';
import type { Registry } from '../../src/family/index.ts';
import { seeded } from '../../src/setup/random.ts';
import { gaugeDesign, gaugeRegistry } from './gauge.ts';
import { randomDesign } from './random-design.ts';
import { issueDefects, tryDesign } from './try-design.ts';
import { workedDesigns } from './worked.ts';

/** Designs a family: the soak tries thousands. */
const COUNT = 10;
/** A simple family is seldom refused: so many are tried at most until one is. */
const MOST = 100;

const families: [string, Registry][] = [
  ...Object.keys(registered.families).map((id): [string, Registry] => [id, registered]),
  ['bevel-gauge', gaugeRegistry],
];

describe('random designs', () => {
  it.each(families)('of %s end built and clean, or in issues that say all', (id, registry) => {
    const worked = id === 'bevel-gauge' ? [gaugeDesign()] : workedDesigns(id, registry);
    expect(worked.length).toBeGreaterThan(0);
    const random = seeded(20_11);
    const ends = new Map<string, number>();
    let tried = 0;
    for (; tried < COUNT || (ends.size < 2 && tried < MOST); tried += 1) {
      const { design } = randomDesign(random, worked, registry);
      const { end, defects } = tryDesign(design, registry);
      expect(defects, `design ${String(tried)} of ${id}`).toEqual([]);
      ends.set(end, (ends.get(end) ?? 0) + 1);
    }
    // A generator that makes much nonsense, or only what is known to work, shows little. Of many
    // designs some two thirds are built; so few scatter widely.
    expect(ends.get('built') ?? 0).toBeGreaterThan(tried / 4);
    expect(ends.size).toBeGreaterThan(1);
  });

  it('are told from each other by their seed alone', () => {
    const worked = [gaugeDesign()];
    const draw = (seed: number) =>
      JSON.stringify(randomDesign(seeded(seed), worked, gaugeRegistry).design);
    expect(draw(5)).toBe(draw(5));
    expect(draw(5)).not.toBe(draw(6));
  });
});

describe('what an issue owes', () => {
  const good = {
    code: 'x',
    severity: 'error',
    path: 'a.b',
    message: 'The width is 3 mm; it must be from 4 to 8 mm because it bends.',
    fix: 'Widen it.',
  } as const;

  it('is missed when parameter, value, reason or mend is not there', () => {
    expect(issueDefects(good)).toEqual([]);
    expect(issueDefects({ ...good, path: '' })).toHaveLength(1);
    expect(
      issueDefects({ ...good, message: 'The width does not suit this purpose.' }),
    ).toHaveLength(2);
    expect(issueDefects({ ...good, message: 'Width of 3 mm is wrong.' })).toHaveLength(1);
    expect(issueDefects({ ...good, message: 'Must: 3' })).toHaveLength(1);
    expect(issueDefects({ ...good, fix: '' })).toHaveLength(1);
    expect(issueDefects({ ...good, message: good.message.replace('3', 'NaN') })).toHaveLength(1);
  });
});
