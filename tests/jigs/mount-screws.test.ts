import { describe, expect, it } from 'vitest';
import { withValue } from '../../src/core/path.ts';
import { examplesOf, solved } from '../family/examples.ts';

// The sole of a carriage slides on its base: no screw from below may stand out of it, whatever the
// rest is thick. The upper side of the base is z = 0 of the seat frame.
describe.each(
  examplesOf('carriage')
    .filter(({ file }) => /camp|marking/.test(file))
    .map((example) => [example.file, example] as const),
)('mounting screws of %s', (_, example) => {
  it.each([8, 8.9, 9, 9.1, 9.7, 9.8, 9.9, 10])(
    'end in the base on a rest of %s mm',
    (thickness) => {
      const design = withValue(example.design, 'grinder.rest.thickness', thickness);
      const { place, settings } = solved({ ...example, design });
      const screws = place(settings[0]?.id ?? '').filter(({ name }) =>
        /^mount-screw-\d+$/.test(name),
      );
      expect(screws).toHaveLength(4);
      for (const { part, frame } of screws) {
        // "iso-4762-m8-x-20-8-8": its shank points away from its head, upwards.
        const length = Number(/-x-(\d+)-/.exec(part)?.[1]);
        expect(frame.z[2]).toBe(-1);
        const end = frame.origin[2] + length;
        expect(end).toBeLessThan(-0.1);
        // At least 0.8 of its diameter in the thread of the base (common practice, no source).
        const diameter = Number(/-m(\d+)-/.exec(part)?.[1]);
        const { base = NaN } = example.design.fixture.parameters;
        expect(end + Number(base)).toBeGreaterThan(0.8 * diameter - 1e-6);
      }
    },
  );
});
