import { describe, expect, it } from 'vitest';
import type { CheckResult } from '../../src/check/result.ts';
import type { Making } from '../../src/document/schema.ts';
import { stl } from '../../src/export/index.ts';
import { checksFile } from '../../src/make/files/checks.ts';
import { hardwareFile } from '../../src/make/files/hardware.ts';
import { plateFiles } from '../../src/make/files/plates.ts';
import { titleBlock } from '../../src/make/files/title.ts';
import { bar, base, screw } from '../drawing/parts.ts';
import { examplesOf, valueOf } from '../family/examples.ts';

const linesOf = ({ bytes }: { readonly bytes: Uint8Array }): string[] =>
  new TextDecoder().decode(bytes).trimEnd().split('\r\n');
const [{ design } = expect.fail('no example')] = examplesOf('spine-rest');

describe('lists of a package', () => {
  it('name what is bought: hardware, stock by its section, and supplies', () => {
    const [, ...rows] = linesOf(
      hardwareFile([base, screw, { ...bar, quantity: 3 }], [['oil', 'x']]),
    );
    expect(rows).toEqual([
      '2,ISO 4762 - M6 x 20 - 8.8,Socket head cap screw,Steel S235',
      '3,square bar 20 x 20,Bar,Steel S235',
      'as needed,oil,x,',
    ]);
  });

  it('tell of every check whether it passed, with its least and greatest in their columns', () => {
    const check = (over: Partial<CheckResult>): CheckResult => ({
      id: 'a',
      label: 'Gap',
      kind: 'range',
      passed: true,
      unit: 'mm',
      found: 2,
      atLeast: 1,
      atMost: 3,
      basis: 'rule',
      message: '',
      fix: 'mend it',
      ...over,
    });
    const rows = linesOf(
      checksFile([check({}), check({ passed: false, found: null, pose: { setting: '1-left' } })]),
    );
    expect(rows.slice(1)).toEqual([
      'Gap,yes,2,1,3,mm,,rule,',
      'Gap,NO,,1,3,mm,1-left,rule,mend it',
    ]);
  });
});

describe('cut files of a plate', () => {
  const making: Making = { ...design.making, plates: { ...design.making.plates, kerf: 0.3 } };
  const paths = (part: typeof base) =>
    valueOf(plateFiles([part], making, 'x')).map(({ path }) => path);

  it('allow for a beam, which a saw does not have', () => {
    expect(paths({ ...base, process: 'laser' })[0]).toContain('kerf0.3');
    expect(paths(base).join()).not.toContain('kerf');
  });

  it('mark in a file of their own what is engraved', () => {
    const engraving = [
      [
        [20, 40],
        [60, 40],
      ],
    ] as const;
    expect(paths({ ...base, engraving }).filter((path) => path.includes('engrave'))).toHaveLength(
      1,
    );
    expect(paths(base).filter((path) => path.includes('engrave'))).toEqual([]);
  });
});

it('sheets are of the paper that is at hand where inches are', () => {
  const paper = (units: 'mm' | 'in') =>
    titleBlock({ ...design, making: { ...design.making, units } }, 'x').paper;
  expect([paper('mm'), paper('in')]).toEqual(['iso', 'us']);
});

it('an STL is not written of a mesh that leaks', () => {
  const open = {
    vertices: Float64Array.of(0, 0, 0, 9, 0, 0, 0, 9, 0),
    triangles: Uint32Array.of(0, 1, 2),
  };
  expect(stl(open).ok).toBe(false);
});
