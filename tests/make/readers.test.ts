import { describe, expect, it } from 'vitest';
import { registry } from '../../jigs/registry.ts';
import { checkDesign } from '../../src/document/open.ts';
import type { Design } from '../../src/document/schema.ts';
import type { PackageFile } from '../../src/export/index.ts';
import { solveDesign } from '../../src/make/engine.ts';
import { plateFiles } from '../../src/make/files/plates.ts';
import { printFiles } from '../../src/make/files/prints.ts';
import { seeded } from '../../src/setup/random.ts';
import { examplesOf } from '../family/examples.ts';
import { randomDesign } from '../robust/random-design.ts';
import {
  admeshFaults,
  coreSchema,
  schemaFaults,
  auditDxf,
  hasAdmesh,
  python,
  python3mf,
  read3mf,
  written,
} from './outside.ts';

/** Cut files and prints of a design, with everything that can be asked for; none if refused. */
const filesOf = (design: Design): PackageFile[] => {
  const { plates } = design.making;
  const asked: Design = {
    ...design,
    making: {
      ...design.making,
      plates: { ...plates, inches: 'beside', nest: { ...plates.nest, sheets: 'beside' } },
    },
  };
  const sound = checkDesign(asked, registry);
  const solved = sound.ok ? solveDesign(sound.value, registry) : sound;
  const parts = solved.ok ? solved.value.parts() : solved;
  if (!parts.ok) return [];
  const cut = plateFiles(parts.value, asked.making, 'x');
  const prints = printFiles(parts.value, asked.making, 'x');
  return cut.ok && prints.ok ? [...cut.value, ...prints.value] : [];
};

/** Every worked design of the family and the first random ones that can be built. */
const families = Object.keys(registry.families).map((family) => {
  const worked = examplesOf(family).map(({ design }) => design);
  const random = seeded(7);
  const drawn = Array.from({ length: 6 }, () => randomDesign(random, worked, registry).design);
  const built = drawn.map(filesOf).filter((files) => files.length > 0);
  return { family, worked: worked.map(filesOf), random: built.slice(0, 2) };
});

describe.each(families)('other readers of the files of $family', ({ worked, random }) => {
  const paths = [...worked, ...random].flatMap(written);
  const ending = (...endings: string[]): string[] =>
    paths.filter((path) => endings.some((end) => path.endsWith(end)));

  it('have every worked design and random ones to read', () => {
    expect(worked.every((files) => files.length > 0)).toBe(true);
    expect(random.length).toBeGreaterThan(0);
    expect(ending('.dxf').length).toBeGreaterThan(10);
  });

  it.skipIf(python === undefined)(
    'ezdxf finds nothing wrong and nothing to fix (needs python3-ezdxf)',
    () => {
      expect(auditDxf(ending('.dxf'))).toEqual([]);
    },
  );

  it.skipIf(!hasAdmesh)('admesh finds nothing open, degenerate or reversed (needs admesh)', () => {
    expect(admeshFaults(ending('.stl'))).toEqual([]);
  });

  it.skipIf(python3mf === undefined)(
    'lib3mf reads closed and oriented objects without a warning (needs lib3mf1)',
    () => {
      expect(read3mf(ending('.3mf'))).toEqual([]);
    },
  );

  it.skipIf(coreSchema === undefined)(
    'xmllint holds 3MF models by the published core schema (needs xmllint and its path in THREEMF_XSD)',
    () => {
      expect(schemaFaults(ending('.3mf'))).toEqual([]);
    },
  );
});
