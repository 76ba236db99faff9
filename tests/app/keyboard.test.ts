import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { chromiumPath, openStage, openStep, type Stage } from './browser.ts';

/** More presses than any step has stops. */
const MOST = 200;

interface Cursor {
  /** What a screen reader calls it, near enough to be found by. */
  readonly name: string;
  readonly faults: readonly string[];
}

/** Where the cursor is, and whether a person can see that. Runs in the page. */
const cursorIn = (): Cursor => {
  const at = document.activeElement;
  if (!(at instanceof HTMLElement) || at === document.body) return { name: '', faults: [] };
  const labels = 'labels' in at ? (at as HTMLInputElement).labels : null;
  const said = at.ariaLabel ?? labels?.[0]?.textContent ?? at.textContent;
  const name = said.trim().replace(/\s+/g, ' ');
  const { outlineStyle, outlineWidth } = getComputedStyle(at);
  const { top, bottom, left, right } = at.getBoundingClientRect();
  const faults = [
    name === '' ? 'says nothing' : '',
    outlineStyle === 'none' || parseFloat(outlineWidth) < 2 ? 'does not show the cursor' : '',
    bottom < 0 || top > innerHeight || right < 0 || left > innerWidth ? 'is out of sight' : '',
  ];
  return { name, faults: faults.filter((fault) => fault !== '') };
};

/** A person with a keyboard and nothing else. */
const handsOn = (page: Page) => {
  const press = (key: string) => page.keyboard.press(key);
  const cursor = () => page.evaluate(cursorIn);
  /** Goes on from stop to stop until one says this; every stop on the way must be one. */
  const reach = async (name: RegExp, key: 'Tab' | 'Shift+Tab' = 'Tab'): Promise<void> => {
    for (let i = 0; i < MOST; i += 1) {
      await press(key);
      const here = await cursor();
      expect(here.faults, `“${here.name}” on the way to ${String(name)}`).toEqual([]);
      if (name.test(here.name)) return;
    }
    throw new Error(`${String(name)} cannot be reached; the cursor is at ${(await cursor()).name}`);
  };
  const step = async (name: string): Promise<void> => {
    await reach(new RegExp(`^${name}$`), 'Shift+Tab');
    await press('Enter');
  };
  const waitsAt = (name: RegExp) =>
    expect
      .poll(cursor, { timeout: 60_000 })
      .toEqual({ name: expect.stringMatching(name), faults: [] });
  return { press, reach, step, waitsAt, type: (words: string) => page.keyboard.type(words) };
};

describe.skipIf(chromiumPath === undefined)('by keyboard alone', () => {
  let stage: Stage;

  beforeAll(async () => {
    stage = await openStage();
  }, 120_000);

  afterAll(() => stage.close());

  it('does the whole job: a worked design, a dimension, the checks, a part, the sheet, and back', async () => {
    const context = await stage.browser.newContext({ reducedMotion: 'reduce' });
    await context.addInitScript(() => {
      const printed: string[] = [];
      window.print = () => printed.push(document.querySelector('h1')?.textContent ?? '');
      Object.assign(window, { printed });
    });
    const { page, complaints } = await openStep(context, stage.url);
    const { press, reach, step, waitsAt, type } = handsOn(page);

    await reach(/^Designs$/);
    await press('Enter');
    await reach(/^Start from it: “Leather face for the/);
    await press('Enter');
    await expect.poll(() => page.locator('header').innerText()).toContain('Leather face for the');

    // A dimension on the drawing: opened and left as it is, then opened again and changed.
    await step('Blade');
    await reach(/^Blade length, 210 mm. Change it$/);
    await press('Enter');
    await waitsAt(/^Blade length$/);
    await type('99');
    await press('Escape');
    await waitsAt(/^Blade length, 210 mm. Change it$/);
    await press('Enter');
    await waitsAt(/^Blade length$/);
    await type('8 1/4"');
    await press('Enter');
    await waitsAt(/^Blade length, 209.55 mm. Change it$/);

    // The checks: one of them seen on the bench, and back to its line.
    await step('Checks');
    await page.locator('main h2').filter({ hasText: 'checks passed' }).waitFor({ timeout: 60_000 });
    await reach(/^Clearances: ?\d+ checks pass/);
    await press('Enter');
    await reach(/^cheeks to platen.* passed/);
    await press('Enter');
    await reach(/^Show on the bench: cheeks to platen/);
    await press('Enter');
    await waitsAt(/^cheeks to platen/);
    await reach(/^Put the picture away$/);
    await press('Enter');
    await waitsAt(/^cheeks to platen.* passed/);

    // A part. The cursor stays by the files while they are written.
    await step('Parts');
    await reach(/^Draw and write the files$/);
    await press('Enter');
    await waitsAt(/^Files of this design/);
    await page.getByText('files ready').waitFor({ timeout: 60_000 });
    await reach(/^Single files$/);
    await press('Enter');
    await reach(/\.dxf$/);
    const coming = page.waitForEvent('download');
    await press('Enter');
    expect(readFileSync(await (await coming).path(), 'utf8')).toContain('LWPOLYLINE');

    // The sheet, printed; then undone, and the cursor is where it was.
    await step('Setting up');
    await reach(/^Print this sheet$/);
    await press('Enter');
    expect(await page.evaluate<string[]>('printed')).toEqual(['Setting up']);
    await press('Control+z');
    await waitsAt(/^Print this sheet$/);
    await step('Blade');
    await reach(/^Blade length, 210 mm. Change it$/);
    expect(complaints).toEqual([]);
    await context.close();
  }, 60_000);

  it('goes back to what asked when an answer or a notice is put away, and is led to an answer once', async () => {
    const context = await stage.browser.newContext({ reducedMotion: 'reduce' });
    const { page } = await openStep(context, stage.url, 'designs');
    const { press, reach, step, waitsAt } = handsOn(page);
    const tries = /^Try its blades in the fixture on the board: “Hunting/;
    await reach(tries);
    await press('Enter');
    await waitsAt(/^The blades of “Hunting/);
    await step('Blade');
    await step('Designs');
    await page.locator('main h1').filter({ hasText: 'Designs' }).waitFor();
    await waitsAt(/^Designs$/);
    await reach(tries);
    await press('Enter');
    await waitsAt(/^The blades of “Hunting/);
    await reach(/^Leave everything as it is$/);
    await press('Enter');
    await waitsAt(tries);

    await reach(/^Copy this design$/, 'Shift+Tab');
    for (const copies of [1, 2]) {
      await press('Enter');
      await expect
        .poll(() => page.locator('section[aria-labelledby=shelf] li').count())
        .toBe(copies);
    }
    // On a phone with keys the list stands far below what was pressed last.
    await page.setViewportSize({ width: 360, height: 640 });
    await reach(/^Remove “/);
    await press('Enter');
    await waitsAt(/^Kept in this browser/);
    await reach(/^Put it back$/);
    await press('Enter');
    await expect.poll(() => page.locator('section[aria-labelledby=shelf] li').count()).toBe(2);
    await waitsAt(/^Try its blades in the fixture on the board: “Radiused/);
    await context.close();
  }, 60_000);
});
