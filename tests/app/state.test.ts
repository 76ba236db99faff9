import { describe, expect, it, vi } from 'vitest';
import type { Adapted, Target } from '../../src/adapt/adapt.ts';
import { Adapting } from '../../src/app/state/adapting.svelte.ts';
import { Finding } from '../../src/app/state/finding.svelte.ts';
import { Latest } from '../../src/app/state/latest.svelte.ts';
import { Pace } from '../../src/app/state/pace.ts';
import { Shop } from '../../src/app/state/shop.svelte.ts';
import { signs, stepOf, type Known } from '../../src/app/state/steps.ts';
import { fail, ok, type Result } from '../../src/core/result.ts';
import type { Design } from '../../src/document/schema.ts';
import { entryEngine, outsideWith } from './page.ts';
import { example } from './sample.ts';

/** Answers on demand, in any order. */
const desk = () => {
  const open: {
    design: Design;
    answer: (result: Result<string> | null) => void;
    crash: () => void;
  }[] = [];
  const work = (design: Design): Promise<Result<string> | null> =>
    new Promise((resolve, reject) =>
      open.push({ design, answer: resolve, crash: () => reject(new Error('lost')) }),
    );
  return { open, work };
};

const one = example();
const [two, three]: Design[] = [
  { ...one, name: 'two' },
  { ...one, name: 'three' },
];
if (!two || !three) throw new Error('three designs');
const settled = () => new Promise((resolve) => setTimeout(resolve));

describe('asking about the newest design', () => {
  it('answers the newest, and skips those between', async () => {
    const { open, work } = desk();
    const latest = new Latest(work);
    latest.ask(one);
    latest.ask(two);
    latest.ask(three);
    open[0]?.answer(ok('one'));
    await settled();
    expect(open.map(({ design }) => design)).toEqual([one, three]);
    expect(latest.value(three)).toBeNull();
    expect(latest.seen(three)).toEqual({ value: 'one', stale: true });
    open[1]?.answer(ok('three'));
    await settled();
    expect(latest.seen(three)).toEqual({ value: 'three', stale: false });
    expect(latest.busy).toBe(false);
  });

  it('comes back to a design that was answered, while another is worked at', async () => {
    for (const overtake of [null, () => undefined]) {
      const { open, work } = desk();
      const latest = new Latest(work, null, overtake);
      latest.ask(one);
      open[0]?.answer(ok('one'));
      await settled();
      latest.ask(two);
      latest.ask(one);
      open[1]?.answer(overtake ? null : ok('two'));
      await settled();
      open[2]?.answer(ok('one again'));
      await settled();
      expect(latest.value(one)).not.toBeNull();
      expect(latest.busy).toBe(false);
    }
    const { open, work } = desk();
    const latest = new Latest(work);
    latest.ask(one);
    latest.ask(two);
    latest.ask(one);
    open[0]?.answer(ok('one'));
    await settled();
    expect(latest.value(one)).toBe('one');
    expect(latest.busy).toBe(false);
  });

  it('shows nothing of an earlier design once the newest is known to have no answer', async () => {
    const { open, work } = desk();
    const latest = new Latest(work);
    latest.ask(one);
    open[0]?.answer(ok('one'));
    await settled();
    latest.ask(two);
    open[1]?.answer(fail());
    await settled();
    expect(latest.seen(two)).toBeNull();
  });

  it('gives up long work for a newer question and ignores what comes of it', async () => {
    const { open, work } = desk();
    const interrupt = vi.fn();
    const latest = new Latest(work, interrupt);
    latest.ask(one);
    latest.ask(two);
    expect(interrupt).toHaveBeenCalledOnce();
    open[1]?.answer(ok('two'));
    open[0]?.answer(ok('one'));
    await settled();
    expect(latest.value(two)).toBe('two');
  });

  it('is not disturbed by the same question asked again', () => {
    const { open, work } = desk();
    const interrupt = vi.fn();
    const latest = new Latest(work, interrupt);
    latest.ask(one);
    latest.ask(one);
    expect([interrupt.mock.calls.length, open.length]).toEqual([0, 1]);
  });

  it('knows nothing after a stop, and can be asked again', async () => {
    const { open, work } = desk();
    const latest = new Latest(work, () => undefined);
    latest.ask(one);
    latest.stop();
    open[0]?.answer(ok('one'));
    await settled();
    expect([latest.working, latest.about(one)]).toEqual([false, null]);
    latest.ask(one);
    open[1]?.answer(ok('again'));
    await settled();
    expect(latest.value(one)).toBe('again');
  });

  it('leaves work alone that gives itself up for a newer question, but stops it when told to', async () => {
    const { open, work } = desk();
    const interrupt = vi.fn();
    const latest = new Latest(work, interrupt, () => undefined);
    latest.ask(one);
    latest.ask(two);
    expect(interrupt).not.toHaveBeenCalled();
    expect(open.map(({ design }) => design)).toEqual([one, two]);
    // The old question ends without an answer, before or after the new one.
    open[0]?.answer(null);
    await settled();
    expect([latest.busy, latest.about(one), latest.about(two)]).toEqual([true, null, null]);
    open[1]?.answer(ok('two'));
    await settled();
    expect([latest.busy, latest.value(two)]).toEqual([false, 'two']);
    latest.ask(three);
    latest.stop();
    expect(interrupt).toHaveBeenCalledOnce();
  });

  it('reports a defect as such, and asks again when asked', async () => {
    const { open, work } = desk();
    const latest = new Latest(work);
    latest.ask(one);
    open[0]?.crash();
    await settled();
    expect(latest.about(one)).toMatchObject({ result: null, crash: 'lost' });
    latest.ask(one);
    expect(open.length).toBe(2);
  });

  it('waits for the hand to rest, and counts the wait as work', () => {
    vi.useFakeTimers();
    const { open, work } = desk();
    const latest = new Latest(work);
    latest.askSoon(one, 300);
    expect(latest.working).toBe(true);
    vi.advanceTimersByTime(200);
    latest.askSoon(two, 300);
    vi.advanceTimersByTime(299);
    expect(open.length).toBe(0);
    vi.advanceTimersByTime(1);
    expect(open.map(({ design }) => design)).toEqual([two]);
    vi.useRealTimers();
  });

  it('does not wait for ever for a hand that does not rest', () => {
    vi.useFakeTimers();
    const { open, work } = desk();
    const latest = new Latest(work);
    // A drag: another state every frame.
    const states = Array.from({ length: 30 }, (_, i): Design => ({ ...one, name: String(i) }));
    for (const state of states) {
      latest.askSoon(state, 60, 200);
      vi.advanceTimersByTime(16);
    }
    expect(open.length).toBeGreaterThan(0);
    expect(open[0]?.design).toBe(states[12]);
    vi.useRealTimers();
  });
});

describe('the pace of questions', () => {
  it('is that of the answers: a quick one is asked for at once, a slow one not before its end', () => {
    const pace = new Pace();
    pace.took(12);
    expect(pace.delay).toBe(12);
    expect(pace.most).toBeLessThan(20);
    pace.took(900);
    expect(pace.delay).toBeLessThan(100);
    expect(pace.most).toBeGreaterThan(900);
  });
});

describe('what unfinished checks have found', () => {
  it('is told of the design it is about, and of no other', () => {
    const finding = new Finding();
    finding.tell(one, { share: 0.5, failed: [] });
    expect(finding.about(one)).toEqual({ share: 0.5, failed: [] });
    expect(finding.about(two)).toBeNull();
  });
});

const known: Known = {
  issues: [],
  solved: true,
  solving: false,
  failing: 0,
  checked: 12,
  building: false,
  kept: true,
};
const issue = (path: string) =>
  ({ code: 'x', severity: 'error', path, message: '', fix: '' }) as const;

describe('asking what a change of grinder or blades means', () => {
  it('asks about both, and takes no answer to a question that was dropped or overtaken', async () => {
    const asked: { target: Target; answer: (result: Result<Adapted>) => void }[] = [];
    const giveUp = vi.fn();
    const engine = {
      ...entryEngine(),
      adapt: (_: Design, target: Target) =>
        new Promise<Result<Adapted>>((answer) => asked.push({ target, answer })),
    };
    const adapting = new Adapting({ engine: () => engine, giveUp });
    void adapting.ask(one, { grinder: one.grinder });
    expect(adapting.busy).toBe(true);
    void adapting.ask(one, { blades: two });
    expect(giveUp).toHaveBeenCalledTimes(1);
    expect(asked.map(({ target }) => target)).toEqual([{ grinder: one.grinder }, { blades: two }]);
    asked[0]?.answer(fail());
    await settled();
    expect(adapting.result).toBeNull();
    const answer = fail();
    asked[1]?.answer(answer);
    await settled();
    expect(adapting.result).toBe(answer);
    adapting.drop();
    expect(adapting.asked).toBeNull();
    expect(adapting.result).toBeNull();
  });
});

describe('a file that is refused', () => {
  it('is told by what stopped it, not by a warning met on the way', async () => {
    const shop = new Shop(outsideWith());
    await shop.start('');
    const bad = { ...one, stray: 1, revision: 0 };
    await shop.designs.open('bad.json', new TextEncoder().encode(JSON.stringify(bad)));
    const told = shop.notices.list.map(({ text }) => text).join();
    expect(told).toContain('Revision is 0');
    expect(told).not.toContain('stray');
  });
});

describe('a design that comes from elsewhere', () => {
  const bytes = (design: Design) => new TextEncoder().encode(JSON.stringify(design));

  it('tells which fields were not taken, some by name and the rest by number', async () => {
    const shop = new Shop(outsideWith());
    await shop.start('');
    const told = () => shop.notices.list.filter(({ tone }) => tone === 'bad').map((n) => n.text);
    await shop.designs.open('plain.json', bytes(two));
    expect(told()).toEqual([]);
    const strays = Object.fromEntries(Array.from({ length: 9 }, (_, i) => [`stray${i}`, i]));
    await shop.designs.open('strays.json', bytes({ ...three, ...strays }));
    expect(shop.bench?.design.name).toBe('three');
    expect(told()).toHaveLength(1);
    expect(told()[0]?.match(/stray\d/g)).toHaveLength(4);
    expect(told()[0]).toContain('5 others');
  });

  it('is kept once, and leads to what differs from another of its name', async () => {
    const shop = new Shop(outsideWith());
    await shop.start('');
    const arrives = async (design: Design) => {
      await shop.designs.open('shared.json', bytes(design));
      await shop.designs.shelf.flush();
    };
    await arrives(two);
    const mine = shop.designs.shelf.held.id;
    await arrives(three);
    await arrives(two);
    expect(shop.designs.shelf.held.id).toBe(mine);
    expect(shop.designs.shelf.entries).toHaveLength(2);
    expect(shop.notices.list.every(({ action }) => action === undefined)).toBe(true);

    await arrives({ ...two, revision: 7 });
    expect(shop.designs.shelf.entries).toHaveLength(3);
    shop.notices.list.at(-1)?.action?.run();
    await expect.poll(() => shop.comparing.asked?.target.revision).toBe(two.revision);
    expect(shop.comparing.asked?.of.revision).toBe(7);
    expect(shop.view.step).toBe('designs');
  });
});

describe('what is typed while a design comes', () => {
  it.each(['open', 'example', 'take'] as const)('is kept under its own entry: %s', async (way) => {
    const outside = outsideWith();
    const shop = new Shop(outside);
    await shop.start('');
    await shop.designs.open('other.json', new TextEncoder().encode(JSON.stringify(three)));
    const other = shop.designs.shelf.held.id;
    await shop.designs.shelf.flush();
    await shop.designs.open('mine.json', new TextEncoder().encode(JSON.stringify(two)));
    await shop.designs.shelf.flush();
    const mine = shop.designs.shelf.held.id;

    const { numbers } = outside.engines;
    const asked = way === 'open' ? 'open' : 'restore';
    const reads = vi.spyOn(numbers, asked).mockImplementationOnce(async () => {
      shop.bench?.set('notes', 'typed meanwhile');
      return ok(three);
    });
    if (way === 'open') await shop.designs.open('third.json', new Uint8Array());
    else if (way === 'take') await shop.designs.take(other);
    else await shop.designs.openExample(0);
    expect(reads).toHaveBeenCalled();
    expect(shop.bench?.design.name).toBe('three');
    expect((await outside.store.read(mine))?.text).toContain('typed meanwhile');
  });
});

describe('what another tab wrote', () => {
  it('is followed, but for what is changed here before it can be read', async () => {
    const outside = outsideWith();
    const shop = new Shop(outside);
    await shop.start('');
    await shop.designs.open('mine.json', new TextEncoder().encode(JSON.stringify(two)));
    await shop.designs.shelf.flush();
    const writes = async (name: string) => {
      const entry = await outside.store.read(shop.designs.shelf.held.id);
      if (entry === undefined) throw new Error('nothing is kept');
      const { id, revision } = entry;
      const text = JSON.stringify({ ...two, name });
      await outside.store.write({ ...entry, name, text, revision: revision + 1 }, revision);
      return id;
    };
    await shop.designs.heard(await writes('theirs'));
    expect(shop.bench?.design.name).toBe('theirs');

    const { numbers } = outside.engines;
    const reads = vi.spyOn(numbers, 'restore').mockImplementationOnce(async () => {
      shop.bench?.set('name', 'typed meanwhile');
      return ok({ ...two, name: 'theirs again' });
    });
    await shop.designs.heard(await writes('theirs again'));
    expect(reads).toHaveBeenCalled();
    expect(shop.bench?.design.name).toBe('typed meanwhile');
  });
});

describe('signs of the steps', () => {
  it('all hold when everything is known to', () => {
    expect(new Set(Object.values(signs(known)))).toEqual(new Set(['holds']));
  });

  it('a step fails by its own values only', () => {
    const all = signs({ ...known, solved: false, issues: [issue('grinder.rest.gap')] });
    expect(all).toMatchObject({ blade: 'holds', grinder: 'fails', checks: 'unknown' });
  });

  it('nothing holds before it is known to', () => {
    const all = signs({ ...known, issues: null, failing: null, checked: 0 });
    expect(all).toMatchObject({ blade: 'unknown', fixture: 'unknown', checks: 'unknown' });
    expect(signs({ ...known, failing: null, building: true }).checks).toBe('working');
  });

  it('a check that failed while the others are under way fails, and none of it holds', () => {
    const all = signs({ ...known, failing: 1, checked: 0, building: true });
    expect([all.checks, all.parts, all.setup]).toEqual(['fails', 'fails', 'fails']);
  });

  it('no check at all is not a pass', () => {
    expect(signs({ ...known, failing: 0, checked: 0 }).checks).toBe('fails');
  });

  it.each([
    ['blades.0.edge.wanted', 'blade'],
    ['grinder.rest', 'grinder'],
    ['fixture.parameters.noseGap', 'fixture'],
    ['sequence.1.belt', 'fixture'],
    ['', 'fixture'],
    ['name', 'designs'],
  ] as const)('%s is set on the step %s', (path, step) => expect(stepOf(path)).toBe(step));
});
