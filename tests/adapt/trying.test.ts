import { describe, expect, it } from 'vitest';
import { bevelGauge } from '../../jigs/template/index.ts';
import { build } from '../../src/adapt/consequence.ts';
import { firstBuilt } from '../../src/adapt/give-way.ts';
import { isTried } from '../../src/adapt/tried.ts';
import { mendByTrying } from '../../src/adapt/try-values.ts';
import type { CheckResult } from '../../src/check/result.ts';
import { createWorkshop } from '../../src/check/workshop.ts';
import { problem } from '../../src/core/issue.ts';
import { fail, ok, type Result } from '../../src/core/result.ts';
import type { Design } from '../../src/document/schema.ts';
import type { Fixture, Registry } from '../../src/family/index.ts';
import { gaugeDesign } from '../robust/gauge.ts';

/** The template family with its answer changed: what a search finds is then known beforehand. */
const registryOf = (change: (design: Design, fixture: Fixture) => Result<Fixture>): Registry => ({
  families: {
    'bevel-gauge': {
      ...bevelGauge,
      solve: (design, workshop) => {
        const solved = bevelGauge.solve(design, workshop);
        return solved.ok ? change(design, solved.value) : solved;
      },
    },
  },
});

const parameter = ({ fixture }: Design, key: string): number => Number(fixture.parameters[key]);

const check = (id: string, key: string, passed: boolean): CheckResult => ({
  id,
  label: id,
  kind: 'range',
  passed,
  unit: 'mm',
  found: 0,
  basis: '',
  message: '',
  fix: '',
  parameter: `fixture.parameters.${key}`,
});

describe('a value that is found by trying', () => {
  const checksOf = (design: Design, key: string): CheckResult[] => [
    check('room', key, parameter(design, key) > (key === 'height' ? 61 : 5)),
    check('other', key, parameter(design, key) <= 61 || parameter(design, key) > 66),
  ];
  const found = (key: string) => {
    const design = gaugeDesign();
    const registry = registryOf((one, fixture) =>
      ok({ ...fixture, checks: () => ok(checksOf(one, key)) }),
    );
    const failed = checksOf(design, key).filter(({ passed }) => !passed);
    expect(failed.map(({ id }) => id)).toEqual(['room']);
    return mendByTrying(design, failed, registry, createWorkshop());
  };

  it('makes nothing else fail that did not', () => {
    // Steps of 1 mm from 60: 61 is too little still, 62 and 64 fail the other check, 68 neither.
    expect(found('height')).toEqual([{ path: 'fixture.parameters.height', value: 68 }]);
  });

  it('is more of what a check asks more of, and nothing else that a maker wishes kept', () => {
    const tried = (key: string) => isTried(`fixture.parameters.${key}`);
    expect(['padMargin', 'handDistance', 'guardRise', 'travelReserve'].every(tried)).toBe(true);
    expect(['runningClearance', 'leastEdge', 'builtTravel'].some(tried)).toBe(false);
  });

  it('is no thickness of a sheet: those are at hand or not', () => {
    expect(found('thickness')).toEqual([]);
  });
});

describe('a choice that cannot stay', () => {
  it('becomes the one that keeps most parts', () => {
    const from = gaugeDesign();
    const { options } = bevelGauge.parameters.screw as { options: readonly { value: string }[] };
    const others = options.map(({ value }) => value).filter((one) => one !== 'M5');
    expect(others.length).toBeGreaterThan(1);
    const built = bevelGauge.solve(from);
    if (!built.ok) throw new Error('no gauge');
    const registry = registryOf((design, fixture) => {
      const screw = design.fixture.parameters['screw'];
      if (screw === 'M5' && design.grinder.lean > 0)
        return fail(problem('refused', 'grinder.lean', { message: 'x', fix: 'x' }));
      // All but the last choice make every part of another material.
      const keeps = screw === 'M5' || screw === others.at(-1);
      return ok({
        ...fixture,
        parts: () => {
          const parts = built.value.parts();
          if (!parts.ok || keeps) return parts;
          return ok(parts.value.map((part) => ({ ...part, material: String(screw) })));
        },
      });
    });
    const before = build(from, registry);
    if (!before.ok) throw new Error('not built');
    const leaning = { ...from, grinder: { ...from.grinder, lean: 1 } };
    const first = firstBuilt({ design: leaning, notes: [] }, before.value, registry);
    if (!first.ok) throw new Error(JSON.stringify(first.issues));
    expect(first.value.design.fixture.parameters['screw']).toBe(others.at(-1));
  });
});
