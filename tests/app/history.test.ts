import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Bench } from '../../src/app/state/bench.svelte.ts';
import { notePast, recallPast } from '../../src/app/state/past.ts';
import { keptText } from '../../src/app/state/shelf.svelte.ts';
import { entryEngine } from './page.ts';
import { example } from './sample.ts';
import {
  begin,
  DEPTH,
  edit,
  redo,
  settle,
  undo,
  type History,
} from '../../src/app/state/history.ts';
import { valueAt, withValue } from '../../src/core/path.ts';

const times = <T>(n: number, start: T, step: (value: T) => T): T =>
  Array.from({ length: n }).reduce<T>((value) => step(value), start);

describe('undo and redo', () => {
  it('takes a long random walk back to the first value, and forward to the last', () => {
    fc.assert(
      fc.property(fc.array(fc.integer(), { maxLength: DEPTH }), (walk) => {
        const first = { value: 0.5 };
        const end = walk.reduce<History<{ value: number }>>(
          (h, value) => edit(h, { value }),
          begin(first),
        );
        const back = times(walk.length, end, undo);
        expect(back.present).toBe(first);
        expect(times(walk.length, back, redo).present).toBe(end.present);
      }),
    );
  });

  it('counts a drag as one step', () => {
    let h = begin('a');
    for (const value of ['b', 'c', 'd']) h = edit(h, value, 'drag');
    expect(h.present).toBe('d');
    expect(undo(h).present).toBe('a');
  });

  it('counts a second drag of the same value as another step', () => {
    const h = edit(settle(edit(begin('a'), 'b', 'drag')), 'c', 'drag');
    expect(undo(h).present).toBe('b');
  });

  it('forgets the future after a new edit, and ignores an edit that changes nothing', () => {
    const h = edit(undo(edit(begin('a'), 'b')), 'c');
    expect(redo(h)).toBe(h);
    expect(edit(h, 'c')).toBe(h);
  });

  it('keeps no more steps than its depth', () => {
    const h = times(DEPTH + 50, begin(0), (now) => edit(now, now.present + 1));
    expect(h.past.length).toBe(DEPTH);
  });
});

describe('values by path', () => {
  const root = { blades: [{ edge: { wanted: 0.2 } }, { edge: { wanted: 0.3 } }], other: { a: 1 } };

  it('reads and replaces one value and shares the rest', () => {
    const next = withValue(root, 'blades.1.edge.wanted', 0.4);
    expect(valueAt(next, 'blades.1.edge.wanted')).toBe(0.4);
    expect(valueAt(root, 'blades.1.edge.wanted')).toBe(0.3);
    expect(next.other).toBe(root.other);
    expect(next.blades[0]).toBe(root.blades[0]);
    expect(Array.isArray(next.blades)).toBe(true);
  });

  it('returns the same root when the value is the same', () => {
    expect(withValue(root, 'other.a', 1)).toBe(root);
  });

  it('knows nothing outside, and nothing inherited', () => {
    expect(valueAt(root, 'blades.9.edge')).toBeUndefined();
    expect(valueAt(root, 'constructor.name')).toBeUndefined();
  });
});

describe('steps back over a reload', () => {
  const design = example();
  const renamed = (name: string) => ({ ...design, name });
  const held = new Map<string, string>();
  const session = {
    get: (key: string) => held.get(key) ?? null,
    set: (key: string, value: string | null) =>
      void (value === null ? held.delete(key) : held.set(key, value)),
  };
  const restore = entryEngine().restore;

  it('are there again for the same design, and for no other', async () => {
    const before = new Bench(design);
    before.set('name', 'one');
    before.set('name', 'two');
    notePast(session, before.design, before.past);
    const after = new Bench(renamed('two'));
    await recallPast(session, after, { restore });
    after.undo();
    expect(after.design.name).toBe('one');
    after.undo();
    expect(after.design).toEqual(design);
    expect(after.canUndo).toBe(false);
    const other = new Bench(renamed('three'));
    await recallPast(session, other, { restore });
    expect(other.canUndo).toBe(false);
  });

  it('end where a step no longer opens, and where work went on meanwhile', async () => {
    const steps = [JSON.stringify({ damaged: true }), JSON.stringify(renamed('one'))];
    session.set('past', JSON.stringify({ from: keptText(design), steps }));
    const bench = new Bench(design);
    await recallPast(session, bench, { restore });
    expect(bench.past).toEqual([renamed('one')]);
    const busy = new Bench(design);
    const recalled = recallPast(session, busy, { restore });
    busy.set('name', 'quick');
    await recalled;
    expect(busy.past).toEqual([design]);
    for (const damaged of ['{', '3', '{"from":1}']) {
      session.set('past', damaged);
      const bare = new Bench(design);
      await recallPast(session, bare, { restore });
      expect(bare.canUndo).toBe(false);
    }
  });
});
