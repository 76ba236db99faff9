import { spawnSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';
import { calcCommand } from '../../src/cli/calc.ts';

/** Runs the command in this process and gives what it printed and its exit code. */
const run = (...args: string[]) => {
  let code = -1;
  const written: string[] = [];
  const write = process.stdout.write.bind(process.stdout);
  process.stdout.write = (chunk: string | Uint8Array): boolean => written.push(String(chunk)) > 0;
  try {
    calcCommand((ended) => {
      code = ended;
    }).parse(args, { from: 'user' });
  } finally {
    process.stdout.write = write;
  }
  return { code, out: written.join('') };
};

const json = (...args: string[]) => {
  const { code, out } = run(...args, '--json');
  return { code, value: JSON.parse(out) as Record<string, unknown> };
};

const bar = ['spine-rest', '--spine-thickness', '3', '--edge-thickness', '0.2', '--height', '50'];

describe('calc spine-rest', () => {
  it('answers the worked example from each target, unrounded', () => {
    const { code, value } = json(...bar, '--angle', '3.5');
    expect(code).toBe(0);
    expect(value['setoff']).toBeCloseTo(
      1.6 * Math.cos(3.5 * (Math.PI / 180)) + 50 * Math.sin(3.5 * (Math.PI / 180)),
      12,
    );
    expect(json(...bar, '--setoff', String(value['setoff'])).value['angle']).toBeCloseTo(3.5, 9);
    const again = json(...bar, '--bevel-height', String(value['bevelHeight']));
    expect(again.value['setoff']).toBeCloseTo(Number(value['setoff']), 9);
  });

  it('reads negative values', () => {
    const { code, value } = json(...bar, '--lean', '-2', '--angle', '3.5');
    expect(code).toBe(0);
    expect(value['tilt']).toBeCloseTo(1.5, 12);
    expect(json(...bar, '--lean=-2', '--angle', '3.5').value).toEqual(value);
  });

  it('caps the bevel at full height', () => {
    expect(json(...bar, '--angle', '0.5').value['bevelHeight']).toBe(50);
  });

  it.each<[string, string, string[]]>([
    ['one-target', '--angle', [...bar]],
    ['one-target', '--setoff', [...bar, '--angle', '3', '--setoff', '4']],
    ['given-twice', '--angle', [...bar, '--angle', '3', '--angle', '4']],
    ['not-a-number', '--angle', [...bar, '--angle', '3,5']],
    ['not-a-number', '--angle', [...bar, '--angle', 'NaN']],
    ['not-a-number', '--angle', [...bar, '--angle', '']],
    ['no-value', '--angle', [...bar, '--angle']],
    [
      'missing',
      '--height',
      ['spine-rest', '--spine-thickness', '3', '--edge-thickness', '0', '--angle', '3'],
    ],
    ['unknown-argument', '--steep', [...bar, '--angle', '3', '--steep', '4']],
    ['unknown-argument', '17', [...bar, '--angle', '3', '17']],
    ['out-of-range', '--lean', [...bar, '--angle', '3', '--lean', '-31']],
    [
      'edge-too-thick',
      '--edge-thickness',
      [...bar.slice(0, 4), '4', ...bar.slice(5), '--angle', '3'],
    ],
    ['setoff-out-of-reach', '--setoff', [...bar, '--setoff', '1.5']],
    ['out-of-range', '--setoff', [...bar, '--setoff', '-1e2']],
  ])('answers %s for %s', (code, flag, args) => {
    const { code: exit, value } = json(...args);
    expect(exit).toBe(2);
    const issues = value['issues'] as Record<string, string>[];
    const issue = issues.find((one) => one['code'] === code);
    expect(issue?.['path'] ?? '').toContain(flag);
    expect(issue?.['severity']).toBe('error');
    expect(`${issue?.['message']}${issue?.['fix']}`.length).toBeGreaterThan(40);
  });
});

describe('calc edge-rest and carriage', () => {
  it('names every answer', () => {
    const edge = json(
      'edge-rest',
      '--radius',
      '150',
      '--centre',
      '20',
      '--depth',
      '0.3',
      '--drop',
      '20',
    );
    expect(Object.keys(edge.value).sort()).toEqual([
      'chord',
      'lip',
      'lower',
      'room',
      'tilt',
      'upper',
    ]);
    const carriage = json('carriage', '--base', '100', '--angle', '3.5', '--pitch', '1');
    expect(Object.keys(carriage.value).sort()).toEqual(['anglePerTurn', 'screw', 'turns']);
  });

  it('refuses a name that is no sum, and none at all', () => {
    expect(json('edge').code).toBe(2);
    expect(json().code).toBe(2);
  });

  it('prints text without --json, and the range of every flag with --help', () => {
    expect(run('carriage', '--base', '100', '--angle', '3.5', '--pitch', '1').out).toContain(
      'turns',
    );
    const help = spawnSync(process.execPath, ['src/cli/jig.mjs', 'calc', 'spine-rest', '--help'], {
      encoding: 'utf8',
    });
    expect(help.status).toBe(0);
    const flags = help.stdout.match(/--[a-z-]+ \[number\]/g) ?? [];
    expect(flags.length).toBe(8);
    expect(help.stdout.match(/from -?[\d.]+ to\s+[\d.]+/g)?.length).toBe(8);
  });
});
