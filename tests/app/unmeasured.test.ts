import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { cards } from '../../jigs/cards.ts';
import { Bench } from '../../src/app/state/bench.svelte.ts';
import { Unmeasured } from '../../src/app/state/unmeasured.svelte.ts';
import { openDesign } from '../../src/document/open.ts';
import type { Design } from '../../src/document/schema.ts';
import type { Grinder } from '../../src/grinder/schema.ts';
import { grinderPresets } from '../../src/grinder/presets/index.ts';

const leather = (): Design => {
  const file = 'jigs/backing-carrier/examples/leather-finish.jig.json';
  const opened = openDesign(readFileSync(file), cards);
  if (!opened.ok) throw new Error('the example does not open');
  return opened.value;
};
const [second, third] = Object.values(grinderPresets).filter(
  ({ name }) => name !== leather().grinder.name,
);
if (!second || !third) throw new Error('three grinders');

/** A board, what is warned of on it, and another grinder put in as the page does it. */
const board = () => {
  const bench = new Bench(leather());
  const written = new Map<string, string>();
  const open = () =>
    new Unmeasured(
      () => bench.design,
      () => Object.values(cards.families),
      {
        get: (key) => written.get(key) ?? null,
        set: (key, value) => void (value === null ? written.delete(key) : written.set(key, value)),
      },
    );
  const unmeasured = open();
  unmeasured.turnTo('one');
  const put = (grinder: Grinder) => {
    unmeasured.onto(grinder);
    bench.set('grinder', grinder);
  };
  const warned = () =>
    unmeasured.issues.map(({ path }) => path.replace('fixture.parameters.', '')).join(' ');
  return { bench, unmeasured, put, warned, open, written };
};

describe('values that describe a grinder which was taken off', () => {
  it('are warned of, with what to measure, until they are changed or put away', () => {
    const { bench, unmeasured, put, warned } = board();
    const first = bench.design.grinder.name;
    expect(warned()).toBe('');
    put(second);
    expect(warned()).toBe('tension platenThickness takeUp');
    const [tension] = unmeasured.issues;
    expect(tension).toMatchObject({ severity: 'warning', code: 'describes-machine' });
    expect(tension?.message).toContain(first);
    expect(tension?.message).toContain(second.name);
    expect(tension?.fix).toMatch(/pull|measure/i);
    bench.set('fixture.parameters.platenThickness', 9.5);
    expect(warned()).toBe('tension takeUp');
    if (tension) unmeasured.putAway(tension);
    expect(warned()).toBe('takeUp');
  });

  it('are warned of again when their entry is opened again, and on a copy of it', () => {
    const { unmeasured, put, warned, open, written } = board();
    put(second);
    unmeasured.turnTo('two');
    expect(warned()).toBe('');
    unmeasured.turnTo('one');
    expect(warned()).toBe('tension platenThickness takeUp');
    unmeasured.moveTo('copy');
    const later = open();
    for (const entry of ['one', 'copy']) {
      later.turnTo(entry);
      expect(later.issues).toEqual(unmeasured.issues);
    }
    for (const damaged of ['{', '{}', '[null, 1, {}]']) {
      written.set('carried.one', damaged);
      later.turnTo('one');
      expect(later.issues).toEqual([]);
    }
  });

  it('go with their entry when it is taken off the shelf, and come back with it', () => {
    const { unmeasured, put, warned, written } = board();
    put(second);
    const putBack = unmeasured.leave('one');
    expect([...written.keys()]).toEqual([]);
    unmeasured.turnTo('one');
    expect(warned()).toBe('');
    putBack();
    unmeasured.turnTo('one');
    expect(warned()).toBe('tension platenThickness takeUp');
  });

  it('belong to the machine they were measured on, through undo and further grinders', () => {
    const { bench, unmeasured, put, warned } = board();
    const first = bench.design.grinder;
    put(second);
    bench.undo();
    expect(warned()).toBe('');
    bench.redo();
    expect(warned()).toBe('tension platenThickness takeUp');
    // Measured on the second, so of the second when a third comes; the others are of the first still.
    bench.set('fixture.parameters.takeUp', 12);
    put(third);
    expect(warned()).toBe('tension platenThickness takeUp');
    const names = unmeasured.issues.map(({ message }) => /from "([^"]*)"/.exec(message)?.[1]);
    expect(names).toEqual([first.name, first.name, second.name]);
    put(first);
    expect(warned()).toBe('takeUp');
  });

  it('are not warned of for new belts, nor where they do not matter', () => {
    const { bench, put, warned } = board();
    const { grinder } = bench.design;
    put({ ...grinder, belts: grinder.belts.slice(0, 1) });
    expect(warned()).toBe('');
    put(second);
    // A hard face is not pressed in by the belt: its tension is of no account.
    bench.set('fixture.parameters.face', 'radius');
    expect(warned()).toBe('platenThickness takeUp');
  });
});
