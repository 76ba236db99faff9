import { describe, expect, it } from 'vitest';
import { localise, place } from '../../src/geometry/frame.ts';
import { boundingBox } from '../../src/geometry/loop-measure.ts';
import { examplesOf, solved, valueOf } from '../family/examples.ts';

// What a maker sets with a rule and a protractor, read off the placed parts and the placed blade.
describe.each(examplesOf('carriage').map((example) => [example.file, example] as const))(
  'readings of %s',
  (_, example) => {
    const fixture = solved(example);
    const parts = valueOf(fixture.parts());

    /** From front to rear of a placed plate along y, mm. */
    const alongY = (name: string, setting: string): readonly [number, number] => {
      const placed = fixture.place(setting).find((one) => one.name === name);
      const outer = parts.find(({ id }) => id === placed?.part)?.layers[0]?.profile.outer;
      if (!placed || !outer) throw new Error(`no ${name}`);
      const { min, max } = boundingBox(outer);
      const ys = [min, max].map(
        ([x, y]) => placed.frame.origin[1] + x * placed.frame.x[1] + y * placed.frame.y[1],
      );
      return [Math.min(...ys), Math.max(...ys)];
    };

    it.each(fixture.settings.map((setting) => [setting.id, setting] as const))(
      'are where the parts stand, %s',
      (id, setting) => {
        const reading = (key: string): number =>
          setting.readings.find((one) => one.key === key)?.value ?? NaN;
        const [front] = alongY('base', id);
        const [, rear] = alongY('fence', id);
        expect(reading('fenceFromFront')).toBeCloseTo(rear - front, 6);
        expect(reading('fence')).toBeCloseTo(rear, 6);
        // The blade's way to its tip against the level of the stroke: tip up is positive.
        const [pose] = fixture.poses(id, example.design.blades[0]?.name ?? '');
        const [along = NaN, , up = NaN] = pose?.frame.x ?? [];
        const turn = (Math.acos(Math.min(1, Math.abs(along))) * 180) / Math.PI;
        expect(reading('turn')).toBeCloseTo(up < 0 ? -turn : turn, 4);
      },
    );
  },
);

it('a blade is turned on its own where its tip would not be ground', () => {
  const turns = examplesOf('carriage').flatMap((example) =>
    solved(example).settings.flatMap(({ readings }) =>
      readings.flatMap(({ key, value }) => (key === 'turn' ? [value] : [])),
    ),
  );
  expect(Math.max(...turns)).toBeGreaterThan(1);
});

// The jaw as it is placed against the blade as it is placed, in the jaw's own plane: it grips the
// blade from its spine side up to its own upper end, however far the blade goes on.
it('what a jaw grips ends with the jaw', () => {
  const example = examplesOf('carriage').find((one) => one.file.startsWith('sheepsfoot'));
  if (!example) throw new Error('no example');
  const fixture = solved(example);
  const [blade] = example.design.blades;
  const id = fixture.settings[0]?.id ?? '';
  const jaw = fixture.place(id).find(({ part }) => part === 'jaw');
  const [pose] = fixture.poses(id, blade?.name ?? '');
  const outer = valueOf(fixture.parts()).find(({ id: part }) => part === 'jaw')?.layers[0]?.profile
    .outer;
  if (!jaw || !pose || !outer) throw new Error('no jaw or blade');
  // The tang's spine side lies 3 mm below the spine.
  const low = localise(jaw.frame, place(pose.frame, [-20, 3, 0]))[1];
  const grip = valueOf(fixture.checks()).find((check) => check.id === 'range/grip')?.found;
  expect(grip).toBeCloseTo(boundingBox(outer).max[1] - low, 6);
});
