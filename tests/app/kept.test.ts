import { describe, expect, it, vi } from 'vitest';
import { NumberDraft } from '../../src/app/entry/draft.svelte.ts';
import { readNumber } from '../../src/app/entry/read.ts';
import { Bench } from '../../src/app/state/bench.svelte.ts';
import { Calibrating } from '../../src/app/state/calibrating.svelte.ts';
import { begin, edit, undo } from '../../src/app/state/history.ts';
import { save } from '../../src/app/state/keeper.ts';
import { Mending } from '../../src/app/state/mending.svelte.ts';
import { Notices } from '../../src/app/state/notices.svelte.ts';
import { withOutline } from '../../src/app/state/outlined.ts';
import { Packing } from '../../src/app/state/packing.svelte.ts';
import { notePast, recallPast } from '../../src/app/state/past.ts';
import { keptText, Shelf } from '../../src/app/state/shelf.svelte.ts';
import { memoryStore, type Store } from '../../src/app/state/store.ts';
import type { Mended } from '../../src/adapt/mend-all.ts';
import { number } from '../../src/core/parameter.ts';
import { fail, ok, type Result } from '../../src/core/result.ts';
import type { Design } from '../../src/document/schema.ts';
import type { Calibrated } from '../../src/make/calibrate.ts';
import type { Readings } from '../../src/setup/readings/schema.ts';
import type { Engine } from '../../src/worker/protocol.ts';
import { entryEngine } from './page.ts';
import { example } from './sample.ts';

const design = example();
const named = (name: string): Design => ({ ...design, name });
const settled = () => new Promise((resolve) => setTimeout(resolve));

/** An answer that comes when it is told to. */
const later = <T>() => {
  let come: (value: T) => void = () => undefined;
  const promise = new Promise<T>((resolve) => (come = resolve));
  return { promise, come: (value: T) => come(value) };
};

const hired = (over: Partial<Engine>) => ({
  engine: () => ({ ...entryEngine(), ...over }),
  giveUp: vi.fn(),
});

describe('a shelf', () => {
  /** A store whose writes wait until they are let go. */
  const shelfWith = () => {
    const store = memoryStore();
    const held: (() => void)[] = [];
    const slow: Store = {
      ...store,
      write: async (entry, after) => {
        await new Promise<void>((resolve) => held.push(resolve));
        return store.write(entry, after);
      },
    };
    let ids = 0;
    const shelf = new Shelf(slow, true, {
      now: () => 1,
      newId: () => `id-${String((ids += 1))}`,
      tell: () => undefined,
      forked: () => undefined,
    });
    const letGo = async () => {
      await settled();
      held.shift()?.();
      await settled();
    };
    return { store, shelf, letGo };
  };
  const nameAt = async (store: Store, id: string) => (await store.read(id))?.name;

  it('writes what was changed while it wrote, too', async () => {
    const { store, shelf, letGo } = shelfWith();
    shelf.hold(design, null);
    const { id } = shelf.held;
    shelf.changed(named('first'));
    const first = shelf.flush();
    await settled();
    shelf.changed(named('second'));
    await letGo();
    await first;
    expect(await nameAt(store, id)).toBe('first');
    expect(shelf.clean).toBe(false);
    expect(shelf.keeping).toBe('pending');
    const rest = shelf.flush();
    await letGo();
    await rest;
    expect(await nameAt(store, id)).toBe('second');
    expect([shelf.clean, shelf.keeping]).toEqual([true, 'kept']);
  });

  it.each(['before', 'while'] as const)(
    'keeps what an undo brought back %s it wrote',
    async (when) => {
      const { store, shelf, letGo } = shelfWith();
      shelf.hold(design, null);
      const { id } = shelf.held;
      shelf.changed(named('undone'));
      if (when === 'before') shelf.changed(design);
      const writing = shelf.empty();
      await settled();
      if (when === 'while') shelf.changed(design);
      await letGo();
      await letGo();
      await writing;
      expect(await nameAt(store, id)).toBe(design.name);
      expect([shelf.clean, shelf.keeping]).toEqual([true, 'kept']);
    },
  );

  it('goes on with the design that came while it wrote another', async () => {
    const { store, shelf, letGo } = shelfWith();
    shelf.hold(design, null);
    const { id } = shelf.held;
    shelf.changed(named('mine'));
    const writing = shelf.flush();
    await settled();
    shelf.hold(named('other'), null);
    const { held } = shelf;
    shelf.changed(named('other, changed'));
    await letGo();
    await writing;
    expect(await nameAt(store, id)).toBe('mine');
    expect(shelf.held).toBe(held);
    expect(shelf.clean).toBe(false);
  });

  it('puts nothing beside an entry that the browser refused to write', async () => {
    const store = memoryStore();
    const refusing: Store = {
      ...store,
      write: (entry, after) =>
        entry.id === 'a' ? Promise.resolve('refused') : store.write(entry, after),
    };
    const held = { id: 'a', revision: 0 };
    const draft = { name: 'Rest', text: 'one' };
    const saved = await save(
      refusing,
      held,
      draft,
      1,
      () => 'other',
      (name) => name,
    );
    expect(saved).toEqual({ state: 'refused', held });
    expect(await store.list()).toEqual([]);
  });
});

describe('steps back', () => {
  it('count a drag after an undo as a step of its own', () => {
    const h = edit(undo(edit(begin('a'), 'b', 'drag')), 'c', 'drag');
    expect(undo(h).present).toBe('a');
  });

  const held = new Map<string, string>();
  const session = {
    get: (key: string) => held.get(key) ?? null,
    set: (key: string, value: string | null) => void held.set(key, value ?? ''),
  };

  it('that outlive a reload are the last ones', async () => {
    const bench = new Bench(design);
    for (let i = 0; i < 40; i += 1) bench.set('name', `step ${String(i)}`);
    notePast(session, bench.design, bench.past);
    const after = new Bench(named('step 39'));
    await recallPast(session, after, { restore: entryEngine().restore });
    expect(after.past.length).toBeGreaterThan(9);
    expect(after.past.at(-1)?.name).toBe('step 38');
  });

  it('begin after the last one that no longer opens', async () => {
    const bad = '{}';
    const steps = [bad, keptText(named('one')), bad, keptText(named('two'))];
    session.set('past', JSON.stringify({ from: keptText(design), steps }));
    const bench = new Bench(design);
    await recallPast(session, bench, { restore: entryEngine().restore });
    expect(bench.past.map(({ name }) => name)).toEqual(['two']);
  });

  it('are not given to a design that came meanwhile', async () => {
    session.set('past', JSON.stringify({ from: keptText(design), steps: [keptText(named('x'))] }));
    const bench = new Bench(design);
    const recalled = recallPast(session, bench, { restore: entryEngine().restore });
    bench.take(named('another'));
    await recalled;
    expect(bench.canUndo).toBe(false);
  });
});

describe('values that were mended', () => {
  const mended = (name: string): Result<Mended> =>
    ok({
      design: named(name),
      differences: [
        { path: 'name', area: 'name', areaLabel: 'Name', label: 'Name', from: 'a', to: 'b' },
      ],
      failed: [],
    });

  it('do not overwrite what was typed meanwhile, and are taken back only as the last step', async () => {
    const bench = new Bench(design);
    const notices = new Notices();
    const first = later<Result<Mended>>();
    const mending = new Mending(hired({ mendAll: () => first.promise }), notices);
    const asked = mending.all(bench);
    bench.set('notes', 'typed');
    first.come(mended('mended'));
    await asked;
    expect([bench.design.name, bench.design.notes]).toEqual([design.name, 'typed']);

    const second = new Mending(
      hired({ mendAll: () => Promise.resolve(mended('mended')) }),
      notices,
    );
    await second.all(bench);
    expect(bench.design.name).toBe('mended');
    const undoIt = notices.list.at(-1)?.action?.run;
    bench.set('notes', 'later');
    undoIt?.();
    expect(bench.design.notes).toBe('later');
    bench.undo();
    undoIt?.();
    expect([bench.design.name, bench.design.notes]).toEqual([design.name, 'typed']);
  });
});

describe('an answer about one state', () => {
  it('is no package of another design', async () => {
    const packed = { bytes: new Uint8Array(), name: 'x', files: [] };
    const packing = new Packing(
      hired({ pack: (() => Promise.resolve(ok(packed))) as unknown as Engine['pack'] }),
    );
    await packing.make(design, false);
    expect(packing.about(design)).toBe(packed);
    expect(packing.about(named('other'))).toBeNull();
  });

  it('is no calibration by other readings', async () => {
    const result = fail() as Result<Calibrated>;
    const calibrating = new Calibrating(hired({ calibrate: () => Promise.resolve(result) }));
    calibrating.start({ note: 'one' } as unknown as Readings);
    await calibrating.ask(design);
    expect(calibrating.about(design)).toBe(result);
    expect(calibrating.about(named('other'))).toBeNull();
    calibrating.set('note', 'two');
    expect(calibrating.about(design)).toBeNull();
  });
});

describe('a blade outline from a file', () => {
  const [blade] = design.blades;
  if (!blade) throw new Error('no blade');

  it('renames only what still bears the name of a worked example', () => {
    const taken = (own: Design) => withOutline(own, 0, blade, 'fish knife.dxf', [design.name]);
    expect(taken(design)).toMatchObject({ name: 'fish knife', blades: [{ name: 'fish knife' }] });
    const mine = named('My own');
    expect(taken(mine)).toMatchObject({ name: 'My own', blades: [{ name: blade.name }] });
  });
});

describe('a number at the end of its range', () => {
  const words = { label: 'Gap', meaning: '', reason: 'x' };
  const gap = number(words, 'mm', 0.5, 1, 3, 0.2);

  it('is taken as it is, and none beyond', () => {
    for (const end of ['0.5', '3']) expect(readNumber(end, gap, 'mm').ok).toBe(true);
    for (const beyond of ['0.49', '3.01']) expect(readNumber(beyond, gap, 'mm').ok).toBe(false);
  });

  it('is where steps up and down stop', () => {
    let value = 2.9;
    const draft = new NumberDraft({
      parameter: () => gap,
      value: () => value,
      display: () => 'mm',
      store: (next) => (value = next),
    });
    draft.nudge(1);
    expect(value).toBe(3);
    draft.nudge(1);
    expect(value).toBe(3);
    draft.nudge(-1);
    expect(value).toBe(2.8);
    for (let i = 0; i < 20; i += 1) draft.nudge(-1);
    expect(value).toBe(0.5);
  });
});
