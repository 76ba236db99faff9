// @vitest-environment happy-dom
import { flushSync } from 'svelte';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { memoryStore } from '../../src/app/state/store.ts';
import type { Design } from '../../src/document/schema.ts';
import { openPage, outsideWith } from './page.ts';

const find = <T extends Element>(selector: string): T => {
  const found = document.querySelector<T>(selector);
  if (!found) throw new Error(`nothing matches ${selector}`);
  return found;
};

const field = (path: string): HTMLInputElement => find(`#field-${path.replaceAll('.', '-')}`);

const type = (input: HTMLInputElement, typed: string): void => {
  input.focus();
  input.value = typed;
  input.dispatchEvent(new Event('input', { bubbles: true }));
  flushSync();
};

const press = (element: HTMLElement, key: string): void => {
  element.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true }));
  flushSync();
};

const button = (name: string): HTMLButtonElement => {
  const all = [...document.querySelectorAll('button')];
  const found = all.find((b) => (b.getAttribute('aria-label') ?? b.textContent).trim() === name);
  if (!found) throw new Error(`no button “${name}”`);
  return found;
};

const click = (element: HTMLElement): void => {
  element.click();
  flushSync();
};

const soon = (ms = 0) => new Promise((resolve) => setTimeout(resolve, ms));

describe('entering values', () => {
  let store = memoryStore();
  let close: () => Promise<void>;

  beforeEach(async () => {
    store = memoryStore();
    location.hash = '#blade';
    close = await openPage(outsideWith(store));
  });

  afterEach(async () => {
    await close();
    document.body.replaceChildren();
  });

  const kept = async (): Promise<Design> => {
    // A moment after the last change; later on a machine that has more to do.
    for (let i = 0; i < 10; i += 1) {
      await soon(300);
      const [entry] = await store.list();
      const read = entry && (await store.read(entry.id));
      if (read) return JSON.parse(read.text) as Design;
    }
    throw new Error('nothing kept');
  };

  it('echoes a fraction and stores millimetres', async () => {
    const length = field('blades.0.outline.length');
    type(length, '4 3/4');
    expect(find(`#${length.id}-said`).textContent).toContain('120.65 mm');
    press(length, 'Enter');
    expect(length.value).toBe('120.65');
    const { outline } = (await kept()).blades[0] ?? {};
    expect(outline).toMatchObject({ length: 120.65 });
  });

  it('refuses a value out of range, says why, and mends it at a touch', () => {
    const length = field('blades.0.outline.length');
    type(length, '900');
    press(length, 'Enter');
    const said = find(`#${length.id}-said`);
    expect(said.textContent).toContain('900 mm is outside 30 mm to 500 mm');
    expect(length.getAttribute('aria-invalid')).toBe('true');
    click(button('Use 500 mm'));
    expect(length.value).toBe('500');
    expect(button('Undo').disabled).toBe(false);
  });

  it('takes back and brings again', () => {
    const length = field('blades.0.outline.length');
    type(length, '118');
    press(length, 'Enter');
    click(button('Undo'));
    expect(length.value).toBe('115');
    click(button('Redo'));
    expect(length.value).toBe('118');
  });

  it('goes from one sheet thickness at hand to the next', async () => {
    await close();
    document.body.replaceChildren();
    location.hash = '#fixture';
    close = await openPage(outsideWith(store));
    const plate = field('fixture.parameters.plate');
    const slider = find<HTMLInputElement>('input[aria-label="Plate thickness, slider"]');
    // 5, 6, 8 and 10 mm are at hand; a plate has 5 to 8 mm.
    expect([plate.value, slider.max, slider.value]).toEqual(['6', '2', '1']);
    slider.value = '2';
    slider.dispatchEvent(new Event('input', { bubbles: true }));
    flushSync();
    expect(plate.value).toBe('8');
    press(plate, 'ArrowUp');
    expect(plate.value).toBe('8');
    press(plate, 'ArrowDown');
    press(plate, 'ArrowDown');
    expect([plate.value, slider.value]).toEqual(['5', '0']);
  });

  it('leaves a group open in which a value is entered', async () => {
    location.hash = '#grinder';
    window.dispatchEvent(new Event('hashchange'));
    await expect.poll(() => document.querySelector('#field-grinder-name')).not.toBeNull();
    const wheel = field('grinder.wheels.0.diameter');
    const group = wheel.closest('details');
    if (!group) throw new Error('in no group');
    expect(group.open).toBe(false);
    group.open = true;
    group.dispatchEvent(new Event('toggle'));
    type(wheel, '52');
    press(wheel, 'Enter');
    expect(field('grinder.wheels.0.diameter').value).toBe('52');
    expect(group.open).toBe(true);
  });

  it('counts a drag of the slider as one step', () => {
    const length = field('blades.0.outline.length');
    const slider = find<HTMLInputElement>('input[aria-label="Blade length, slider"]');
    for (const value of ['116', '117', '121']) {
      slider.value = value;
      slider.dispatchEvent(new Event('input', { bubbles: true }));
    }
    slider.dispatchEvent(new Event('change', { bubbles: true }));
    flushSync();
    expect(length.value).toBe('121');
    click(button('Undo'));
    expect(length.value).toBe('115');
    expect(button('Undo').disabled).toBe(true);
  });

  it('shows beside the thumb what follows, where the drawing is out of sight', () => {
    // Nothing is laid out here: the drawing above is as good as scrolled away.
    const wide = innerWidth;
    Object.assign(window, { innerWidth: 390 });
    window.dispatchEvent(new Event('resize'));
    const slider = find<HTMLInputElement>('input[aria-label="Blade length, slider"]');
    const move = (kind: 'input' | 'change') => {
      slider.dispatchEvent(new Event(kind, { bubbles: true }));
      flushSync();
    };
    expect(document.querySelector('.glimpse')).toBeNull();
    slider.value = '121';
    move('input');
    expect(find('.glimpse').textContent).toContain('121');
    expect(find('.glimpse').hasAttribute('inert')).toBe(true);
    move('change');
    Object.assign(window, { innerWidth: wide });
    window.dispatchEvent(new Event('resize'));
    flushSync();
    expect(document.querySelector('.glimpse')).toBeNull();
  });

  it('reads a refusal out once it has stood, not what is typed over at once', async () => {
    const length = field('blades.0.outline.length');
    const read = () => [...document.querySelectorAll('[role=status]')].map((e) => e.textContent);
    type(length, '1');
    press(length, 'Enter');
    const refused = find(`#${length.id}-said .refused`).textContent;
    type(length, '120');
    press(length, 'Enter');
    await soon(900);
    expect(read()).not.toContain(refused);
    type(length, '1');
    press(length, 'Enter');
    await expect.poll(read).toContain(refused);
  });

  it('changes nothing in a hundred switches of the unit', async () => {
    const length = field('blades.0.outline.length');
    type(length, '110.123');
    press(length, 'Enter');
    const before = JSON.stringify(await kept());
    const units = [...document.querySelectorAll('header select')][0] as HTMLSelectElement;
    for (let i = 0; i < 100; i += 1) {
      units.value = ['inch', 'fraction', 'mm'][i % 3] ?? 'mm';
      units.dispatchEvent(new Event('change', { bubbles: true }));
      flushSync();
      length.focus();
      length.blur();
      flushSync();
    }
    expect(JSON.stringify(await kept())).toBe(before);
    click(button('Undo'));
    expect(button('Undo').disabled).toBe(true);
  });

  it('names a contradiction beside the field that causes it', async () => {
    const belly = field('blades.0.outline.bellyStart');
    type(belly, '400');
    press(belly, 'Enter');
    await soon(20);
    flushSync();
    expect(find(`#${belly.id}-said`).textContent).toContain('Mend:');
    expect(belly.getAttribute('aria-invalid')).toBe('true');
  });

  it('makes a dimension of the drawing an input', async () => {
    const length = field('blades.0.outline.length');
    click(button('Blade length, 115 mm. Change it'));
    await soon();
    const entry = find<HTMLInputElement>('input[aria-label="Blade length"]');
    type(entry, '112');
    press(entry, 'Enter');
    await soon();
    expect(length.value).toBe('112');
  });
});
