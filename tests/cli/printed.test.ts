import { afterAll, describe, expect, it } from 'vitest';
import type { Consequence } from '../../src/adapt/consequence.ts';
import { readBytes } from '../../src/cli/load.ts';
import { printConsequence } from '../../src/cli/print-change.ts';
import { printSettings } from '../../src/cli/print.ts';
import type { Setting } from '../../src/family/index.ts';
import { workshop } from './runner.ts';

const { put, clear } = workshop();
afterAll(clear);

/** The lines that something prints. */
const printed = (print: () => void): string[] => {
  const { write } = process.stdout;
  let said = '';
  process.stdout.write = (chunk: string | Uint8Array): boolean => {
    said += String(chunk);
    return true;
  };
  try {
    print();
  } finally {
    process.stdout.write = write;
  }
  return said.trimEnd().split('\n');
};

describe('what is printed of settings', () => {
  const setting = (over: Partial<Setting>): Setting => ({
    id: '1-left',
    step: 1,
    side: 'left',
    belt: 'P60',
    backing: 'bare',
    edgeStop: 0.35,
    angle: 3.5,
    readings: [
      {
        key: 'setoff',
        label: 'Step to belt',
        value: 4.83,
        unit: 'mm',
        dial: { turnsFromZero: -1.17, turnsFromLast: -0.34, division: 41 },
      },
    ],
    progress: [],
    expected: [],
    push: { from: 0, to: 1, stepForce: [0, 0] },
    volume: [],
    notes: [],
    ...over,
  });

  it('tells at what to stop: the edge of a flat, the depth of a hollow', () => {
    const [, flat, hollow] = printed(() =>
      printSettings([setting({}), setting({ hollow: { stop: 0.27, progress: [] } })], false),
    );
    expect(flat).toContain('4.830 mm');
    expect(flat).toContain('0.35');
    expect(hollow).toContain('0.27');
    expect(hollow).not.toContain('0.35');
  });

  it('tells lengths in inches too where they are wanted, and only then', () => {
    // 25.4 mm to the inch exactly (ISO 80000-3): 4.83 / 25.4 = 0.19016, 0.35 / 25.4 = 0.01378.
    const rows = (wanted: boolean) => printed(() => printSettings([setting({})], wanted)).join(' ');
    for (const part of ['4.830 mm (0.1902″)', '0.35 mm (0.0138″)'])
      expect(rows(true)).toContain(part);
    expect(rows(true)).toMatch(/ deg(?! \()/);
    expect(rows(false)).not.toContain('″');
  });

  it('tells two clampings of one pass and side apart, and no sides that are set differently anyway', () => {
    const turn = (value: number) => ({ key: 'turn', label: 'Turn', value, unit: 'deg' }) as const;
    const [main] = setting({}).readings;
    if (!main) throw new Error('no reading');
    const rows = printed(() =>
      printSettings(
        [
          setting({ readings: [main, turn(0)] }),
          setting({ readings: [main, turn(6)] }),
          setting({ side: 'right', readings: [main, turn(2)] }),
        ],
        false,
      ),
    );
    expect(rows.map((row) => /Turn [\d.]+ deg/.exec(row)?.[0])).toEqual([
      undefined,
      'Turn 0.00 deg',
      'Turn 6.00 deg',
      undefined,
    ]);
  });
});

describe('what is printed of a change', () => {
  it('is what to buy beyond what is at hand, and what is left over of it', () => {
    const change: Consequence = {
      settings: [],
      parts: [],
      purchases: [
        { designation: 'M6 x 20', name: 'Screw', have: 2, need: 6 },
        { designation: 'M8 x 30', name: 'Screw', have: 5, need: 4 },
      ],
    };
    const said = printed(() => printConsequence(change));
    expect(said.filter((line) => line.includes('M6 x 20'))).toEqual([
      expect.stringMatching(/^ +4\b/),
    ]);
    expect(said.filter((line) => line.includes('M8 x 30'))).toEqual([
      expect.stringMatching(/\b1\b.*M8 x 30/),
    ]);
  });
});

describe('a file that is read', () => {
  it('is whole up to its limit, and beyond it long enough to be refused', () => {
    const lengthOf = (bytes: number): number => {
      const read = readBytes(put('file', new Uint8Array(bytes)), 100);
      return read.ok ? read.value.length : NaN;
    };
    expect([0, 99, 100].map(lengthOf)).toEqual([0, 99, 100]);
    for (const more of [101, 102, 100_000]) expect(lengthOf(more)).toBe(101);
  });
});
