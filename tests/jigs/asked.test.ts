import { describe, expect, it } from 'vitest';
import { examplesOf, solved, valueOf } from '../family/examples.ts';

// How far hands and parts must stay from what runs, in every family: what the design says, and not a
// number of a check's own. 40 mm from hand to belt are the least that any design may ask.

const RUNNING = ['belt', 'wheels', 'platen'] as const;
/** What is meant to touch or to press the belt, or is held off it by what it presses. */
const AT_BELT = ['blade', 'pad', 'stick', 'hand', 'handOnStick', 'face'];

const gapsOf = (family: string, file: string) => {
  const example = examplesOf(family).find((one) => one.file.startsWith(file));
  if (!example) throw new Error('no example');
  // Numbers that stand nowhere else, so that no other is taken for them.
  const parameters = { ...example.design.fixture.parameters };
  if ('handDistance' in parameters) parameters.handDistance = 50.125;
  const design = { ...example.design, fixture: { ...example.design.fixture, parameters } };
  const { setUps } = valueOf(
    solved({ ...example, design }).solids?.() ?? { ok: false, issues: [] },
  );
  const rules = setUps.flatMap(({ asked }) => asked.map(({ rule }) => rule));
  const clear = rules.flatMap((rule) => (rule.kind === 'clear' ? [rule] : []));
  return { parameters, clear };
};

describe.each([
  ['spine-rest', 'paring', ['hand', 'handOnStick']],
  ['edge-rest', 'herb', ['hand', 'handOnStick']],
  ['carriage', 'marking', ['hand']],
  ['backing-carrier', 'leather-finish', []],
] as const)('clearances of a %s', (family, file, hands) => {
  const { parameters, clear } = gapsOf(family, file);
  const gaps = (a: string, b: string): number[] => [
    ...new Set(clear.filter((rule) => rule.a === a && rule.b === b).map(({ gap }) => gap)),
  ];

  it.each([...hands])('keep the %s from all that runs as far as the design asks', (hand) => {
    for (const part of RUNNING) expect(gaps(hand, part), part).toEqual([50.125]);
    // And clear of whatever stands still, or is pushed.
    for (const part of ['rest', 'guards']) expect(gaps(hand, part)[0], part).toBeGreaterThan(0);
  });

  it('keep every part from the belt by the clearance that the design asks', () => {
    const parts = new Set(clear.flatMap(({ a, b }) => (b === 'belt' ? [a] : [])));
    expect(parts.size).toBeGreaterThan(1);
    for (const part of parts)
      if (!AT_BELT.includes(part))
        expect(gaps(part, 'belt'), part).toEqual([parameters.runningClearance]);
  });
});
