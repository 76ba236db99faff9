import { describe, expect, it } from 'vitest';
import type { Part } from '../../src/model/part.ts';
import { registry } from '../../jigs/registry.ts';
import { examplesOf, solved, valueOf } from '../family/examples.ts';

/** What a step may ask for that is neither a part nor a tool (common practice, no source). */
const USED_UP = ['paper', 'tape', 'leather', 'glue', 'cement', 'grease', 'shim', 'test bar'];
/** The words of the list for those that it calls otherwise. */
const LISTED: Readonly<Record<string, RegExp>> = {
  glue: /adhesive|cement/,
  'test bar': /test piece/,
};

const designations = (parts: readonly Part[]): string[] =>
  parts.flatMap((part) => (part.kind === 'hardware' ? [part.name] : []));

const examples = Object.keys(registry.families).flatMap(examplesOf);

describe.each(examples)('the steps of $file', (example) => {
  const fixture = solved(example);
  const parts = valueOf(fixture.parts());
  const { assembly, zeroing, supplies = [] } = fixture;
  const told = [...assembly, ...zeroing, ...parts.flatMap((part) => part.notes)];
  const at = (pattern: RegExp): number => assembly.findIndex((step) => pattern.test(step));

  it('ask for nothing that is on no list', () => {
    const list = supplies.map(([what, use]) => `${what} ${use}`.toLowerCase());
    // The leather of a carrier is a part of its own.
    list.push(...parts.map((part) => (part.kind === 'stock' ? part.section : part.name)));
    const missing = USED_UP.filter(
      (word) =>
        told.some((step) => new RegExp(`\\b${word}\\b`, 'i').test(step)) &&
        !list.some((line) => (LISTED[word] ?? new RegExp(word, 'i')).test(line)),
    );
    expect(missing).toEqual([]);
  });

  it('name screws that are on the parts list', () => {
    const bought = designations(parts);
    const named = assembly.flatMap((step) => step.match(/\bM\d+ x \d+(\.\d+)?/g) ?? []);
    expect(named.filter((one) => !bought.some((name) => name.endsWith(` ${one}`)))).toEqual([]);
  });

  it('name the reamer where a hole is reamed, and the countersink where a head is sunk', () => {
    const purposes = parts.flatMap((part) => [
      ...('holes' in part ? part.holes : []),
      ...(part.kind === 'stock' ? part.crossHoles : []),
    ]);
    const asked = ['ream', 'countersink', 'countersunk'].filter((word) =>
      purposes.some(({ purpose }) => purpose.includes(word)),
    );
    const tools = assembly[0] ?? '';
    expect(asked.filter((word) => !tools.includes(word.replace('sunk', 'sink')))).toEqual([]);
  });

  it('tap threads before screws go into them, and reach each screw', () => {
    const tapped = at(/\b[Tt]ap\b.*(thread|holes)/);
    const threads = parts.some(
      (part) => 'holes' in part && part.holes.some(({ thread }) => thread !== undefined),
    );
    expect(!threads || tapped > 0).toBe(true);
    const screwed = at(/\b(Bolt|Screw|Put the .* on|hold) .*M\d/);
    expect(screwed === -1 || !threads || tapped < screwed).toBe(true);
    // The knob of a carriage stands over the screws of its push block.
    if (at(/heel screw, /) >= 0)
      expect(at(/Screw the push block/)).toBeLessThan(at(/heel screw, /));
  });
});

const SPINE_RESTS = examplesOf('spine-rest');

describe.each(SPINE_RESTS)('what a tenth of the step does to $file', (example) => {
  it('is told as the simulated budget has it, which grinds sections and knows no derivative', () => {
    const { zeroing, budget } = solved(example);
    const told = zeroing.flatMap(
      (step) => /turns the bevel by ([\d.]+) degrees/.exec(step)?.[1] ?? [],
    );
    expect(told).toHaveLength(1);
    // With a strip no budget is simulated.
    if (budget === undefined) return;
    const { outputs } = valueOf(budget({ draws: 200, seed: 5 }));
    const effects = outputs.find(({ key }) => key === 'angle')?.effects ?? [];
    const perMm = effects.find(({ id }) => id === 'step')?.sensitivity ?? NaN;
    // Told in hundredths.
    expect(Math.abs(Number(told[0]) - 0.1 * Math.abs(perMm))).toBeLessThan(0.0051);
  });
});
