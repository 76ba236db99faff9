import { describe, expect, it } from 'vitest';
import { edgeRestFit } from '../../src/setup/calibration/edge-rest.ts';
import { registry } from '../../jigs/registry.ts';
import type { Design } from '../../src/document/schema.ts';
import { solveDesign } from '../../src/make/engine.ts';
import { examplesOf, solved, valueOf } from '../family/examples.ts';

const nothing = { value: 0, uncertainty: 1 };

it('a calibrated edge rest is told the same way from its zero as a length and in turns', () => {
  const [example] = examplesOf('edge-rest');
  if (!example) throw new Error('no example');
  const calibration = { offset: 0.1, uncertainty: 0.02, note: '' };
  const told = (fixture: Design['fixture']) =>
    valueOf(solveDesign({ ...example.design, fixture }, registry)).settings.map(({ readings }) => ({
      length: readings.find(({ key }) => key === 'fromZero')?.value ?? NaN,
      turns: readings[0]?.dial?.turnsFromZero ?? NaN,
    }));
  const [before, after] = [
    told(example.design.fixture),
    told({ ...example.design.fixture, calibration }),
  ];
  after.forEach(({ length, turns }, i) => {
    // It stands 0.1 mm beyond what it says, so it is set that much less: a turn is 1 mm (ISO 261).
    expect(length).toBeCloseTo((before[i]?.length ?? NaN) - 0.1, 9);
    expect(turns).toBeCloseTo(length, 9);
  });
});

// A fixture that stands as its design says leaves what the plan expects: a calibration of it has to
// find no offset. Plan and calibration compute the hollow each by itself.
describe.each(examplesOf('edge-rest').map((example) => [example.file, example] as const))(
  'what a calibration is told of %s',
  (_, example) => {
    const { known, settings } = solved(example);
    if (!known) throw new Error('nothing is known');

    it.each(known.settings.map((setting) => [setting.id, setting] as const))(
      'leaves the planned hollow, %s',
      (id, { set }) => {
        if (set.kind !== 'edge-rest') throw new Error('another kind');
        const { hollow } = settings.find((one) => one.id === id) ?? {};
        const { depth = NaN, lower = NaN, upper = NaN } = hollow?.progress.at(-1) ?? {};
        const place = {
          label: 'a',
          depth: { value: depth, uncertainty: 0.01 },
          lower: nothing,
          upper: nothing,
        };
        const fit = edgeRestFit([place], { ...set, faceOffset: 0 });
        const [, low = NaN, high = NaN] = fit?.places[0]?.predict([0], depth) ?? [];
        expect(low).toBeCloseTo(lower, 6);
        expect(high).toBeCloseTo(upper, 6);
      },
    );
  },
);
