import { mkdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { registry } from '../../jigs/registry.ts';
import { STEPS } from '../../src/app/state/steps.ts';
import { linkFragment } from '../../src/document/link.ts';
import { openDesign } from '../../src/document/open.ts';
import { readPackage } from '../../src/export/package.ts';
import { numberRange } from '../../src/make/free-range/numbers.ts';
import { makePackage } from '../../src/make/package.ts';
import { text } from '../../src/text/index.ts';
import { exampleBytes } from './sample.ts';
import { chromiumPath, openStage, openStep, type Stage } from './browser.ts';

const SCREENS = '.cache/screens';
const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

if (chromiumPath === undefined)
  console.warn('\nNo Chromium was found: THE APP IS NOT TESTED IN A BROWSER in this run.\n');

interface Finding {
  readonly id: string;
  readonly impact: string;
  readonly nodes: readonly { readonly html: string }[];
}

describe.skipIf(chromiumPath === undefined)('the app in a browser', () => {
  let stage: Stage;

  beforeAll(async () => {
    mkdirSync(SCREENS, { recursive: true });
    stage = await openStage();
  }, 120_000);

  afterAll(() => stage.close());

  const looks = [
    { viewport: { width: 1440, height: 900 }, colorScheme: 'light' },
    { viewport: { width: 1440, height: 900 }, colorScheme: 'dark' },
    { viewport: { width: 360, height: 740 }, colorScheme: 'dark' },
    { viewport: { width: 360, height: 740 }, colorScheme: 'light' },
  ] as const;

  /** Until every answer is there, whatever it says. */
  const answered = (page: Page) =>
    expect
      .poll(() => page.locator('nav [role=img][aria-label="being worked out"]').count(), {
        timeout: 120_000,
      })
      .toBe(0);

  it('every step, wide and narrow, light and dark: accessible, nothing beyond the side', async () => {
    const context = await stage.browser.newContext(looks[0]);
    const { page, complaints } = await openStep(context, stage.url, 'blade');
    await answered(page);
    await page.evaluate(axe);
    for (const { viewport, colorScheme } of looks) {
      await page.setViewportSize(viewport);
      await page.emulateMedia({ colorScheme });
      for (const step of STEPS) {
        await page.goto(`${stage.url}#${step}`);
        await page.locator(`nav a[href="#${step}"][aria-current=step]`).waitFor();
        const path = `${SCREENS}/${step}-${viewport.width}-${colorScheme}.png`;
        await page.screenshot({ path, fullPage: true });
        const findings = await page.evaluate<Finding[]>(
          `axe.run({ runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'] })
            .then((r) => r.violations)`,
        );
        const said = findings.map(
          ({ id, impact, nodes }) => `${path}: ${id} (${impact}) ${nodes[0]?.html}`,
        );
        expect(said).toEqual([]);
        const beyond = await page.evaluate(
          () => document.documentElement.scrollWidth - window.innerWidth,
        );
        expect(beyond, `${path} is wider than the screen`).toBeLessThanOrEqual(0);
      }
    }
    expect(complaints).toEqual([]);
    await context.close();
  }, 240_000);

  it('writes the package that the command line writes, byte for byte, without a network', async () => {
    const context = await stage.browser.newContext();
    const { page, complaints } = await openStep(context, stage.url, 'parts');
    await page.evaluate(() => navigator.serviceWorker.ready);
    await context.setOffline(true);
    await page.reload();
    await page.locator('main:not([aria-busy=true]) h1').waitFor();
    await answered(page);
    await page.getByRole('button', { name: /write the files|in spite/i }).click();
    const ready = page.getByRole('button', { name: 'Whole package (zip)' });
    const outcome = page.locator('section[aria-labelledby=downloads]');
    await expect
      .poll(() => outcome.innerText(), { timeout: 180_000 })
      .toMatch(/files ready|were not written|met a defect/);
    expect(await outcome.innerText()).toContain('files ready');
    const [download] = await Promise.all([page.waitForEvent('download'), ready.click()]);
    // Nothing the page's policy had to refuse, for one.
    expect(complaints).toEqual([]);
    const archive = new Uint8Array(readFileSync(await download.path()));
    const font = (name: string) =>
      new Uint8Array(readFileSync(join('node_modules', 'dejavu-fonts-ttf', 'ttf', name)));
    const opened = openDesign(exampleBytes('kitchen-210'), registry);
    if (!opened.ok) throw new Error('the example does not open');
    const made = await makePackage(opened.value, {
      registry,
      fonts: { regular: font('DejaVuSans.ttf'), bold: font('DejaVuSans-Bold.ttf') },
      acceptFailing: true,
    });
    const written = readPackage(archive);
    if (!made.ok || !written.ok) throw new Error('no package');
    const there = new Map(written.value.map(({ path, bytes }) => [path, bytes]));
    // The manifest lists the sums of the others, and `readPackage` has held it against them.
    const mine = made.value.filter(({ kind }) => kind !== 'manifest');
    expect([...there.keys()]).toEqual(mine.map(({ path }) => path));
    // What the page says is needed besides the parts is what the list to buy from says.
    const list = new TextDecoder().decode(there.get('hardware.csv'));
    const used = await page.locator('section[aria-labelledby=supplies] li').allInnerTexts();
    expect(used.length).toBeGreaterThan(0);
    expect(list.split('\n').filter((row) => row.startsWith(text.make.asNeeded)).length).toBe(
      used.length,
    );
    for (const words of used.flatMap((one) => one.split(/\n+/))) expect(list).toContain(words);
    const unequal = mine.filter(
      ({ path, bytes }) => !Buffer.from(bytes).equals(Buffer.from(there.get(path) ?? [])),
    );
    expect(unequal.map(({ path }) => path)).toEqual([]);
    await context.close();
  }, 240_000);

  it('opens a link in another profile, and refuses a damaged one without harm', async () => {
    const mine = await stage.browser.newContext();
    const { page } = await openStep(mine, stage.url, 'blade');
    const length = '#field-blades-0-outline-length';
    await page.locator(length).fill('201.5');
    await page.locator(length).press('Enter');
    await page.goto(`${stage.url}#designs`);
    await page.getByRole('button', { name: 'Copy the link' }).click();
    const link = await page.getByRole('textbox', { name: 'Link to this design' }).inputValue();
    await mine.close();

    const theirs = await stage.browser.newContext();
    const other = await theirs.newPage();
    await other.goto(link);
    await expect.poll(() => other.locator(length).inputValue()).toBe('201.5');
    await other.goto(`${stage.url}${new URL(link).hash.slice(0, -20)}`);
    await other.getByText('was not opened; nothing was changed').waitFor();
    expect(await other.locator(length).inputValue()).toBe('201.5');
    await theirs.close();
  });

  it('keeps what was entered over a crash of the page', async () => {
    const context = await stage.browser.newContext();
    const { page } = await openStep(context, stage.url, 'blade');
    const length = page.locator('#field-blades-0-outline-length');
    await length.fill('123.4');
    await length.press('Enter');
    await page.locator('header').getByText('Kept in this browser').waitFor();
    await page.goto('chrome://crash').catch(() => undefined);
    await page.close().catch(() => undefined);
    const again = await openStep(context, stage.url, 'blade');
    await expect
      .poll(() => again.page.locator('#field-blades-0-outline-length').inputValue())
      .toBe('123.4');
    await context.close();
  });

  it('loses the work of neither of two tabs', async () => {
    const context = await stage.browser.newContext();
    const first = (await openStep(context, stage.url, 'blade')).page;
    const enter = async (page: typeof first, name: string, value: string) => {
      const field = page.locator(`#field-blades-0-${name}`);
      await field.fill(value);
      await field.press('Enter');
    };
    await enter(first, 'outline-length', '120');
    await first.locator('header').getByText('Kept in this browser').waitFor();
    const second = (await openStep(context, stage.url, 'blade')).page;
    // Both type before either has written, or the second would go on from what the first did: until
    // both wait to write, a third tab keeps the store to itself.
    const third = (await openStep(context, stage.url, 'blade')).page;
    await third.evaluate(
      () =>
        new Promise<void>((begun) => {
          const open = indexedDB.open('platenwright');
          open.onsuccess = () => {
            const table = open.result.transaction('designs', 'readwrite').objectStore('designs');
            const hold = (): void => {
              begun();
              if (!('release' in window)) table.count().onsuccess = hold;
            };
            hold();
          };
        }),
    );
    await enter(first, 'outline-length', '121');
    await enter(second, 'outline-length', '122');
    for (const page of [first, second])
      await page.locator('header').getByText(text.app.saving.pending).waitFor();
    await third.evaluate(() => void Object.assign(window, { release: true }));
    const kept = () =>
      first.evaluate(
        () =>
          new Promise<string[]>((resolve) => {
            const open = indexedDB.open('platenwright');
            open.onsuccess = () => {
              const all = open.result.transaction('designs').objectStore('designs').getAll();
              all.onsuccess = () =>
                resolve(all.result.map((entry: { text: string }) => entry.text));
            };
          }),
      );
    const lengthOf = (text: string): number | undefined =>
      (JSON.parse(text) as { blades: { outline: { length: number } }[] }).blades[0]?.outline.length;
    await expect
      .poll(async () => (await kept()).map(lengthOf).sort(), { timeout: 5000 })
      .toEqual([121, 122]);
    await context.close();
  });

  it('answers what is asked beyond the design: which fixture suits, how far a number moves', async () => {
    const context = await stage.browser.newContext();
    const opened = openDesign(readFileSync('jigs/carriage/examples/marking-60.jig.json'), registry);
    if (!opened.ok) throw new Error('the example does not open');
    const link = linkFragment(opened.value).replace(/^#/, '');
    const { page, complaints } = await openStep(context, stage.url, link);
    await page.goto(`${stage.url}#fixture`);
    const suit = page.getByRole('region', { name: 'Which fixture suits these blades' });
    const ask = suit.getByRole('button', { name: 'Compare fixtures' });
    await ask.click();
    // Long work says so and can be stopped; nothing is then claimed, and it can be asked again.
    await suit.getByRole('progressbar').waitFor();
    await suit.getByRole('button', { name: 'Stop' }).click();
    expect(await suit.getByRole('table').count()).toBe(0);
    await ask.click();
    const rows = suit.getByRole('table').getByRole('row');
    await rows.filter({ hasText: 'Guided-angle carriage' }).waitFor({ timeout: 120_000 });
    // A heading, and every family that holds a blade.
    expect(await rows.count()).toBe(4);

    const path = 'fixture.parameters.beltGap';
    const range = numberRange(opened.value, path, registry);
    if (!range.ok) throw new Error('the example is not sound');
    const { down, up } = range.value;
    await page.goto(`${stage.url}#checks`);
    const box = page.getByRole('region', { name: 'How far a number may move' });
    await box.getByLabel('Number').selectOption(path, { timeout: 60_000 });
    await box.getByRole('button', { name: 'Find its free range' }).click();
    const shown = (value: number) => String(Number(value.toFixed(2)));
    const said = box.getByRole('term').filter({ hasText: range.value.label });
    await said.waitFor({ timeout: 60_000 });
    expect(await said.textContent()).toContain(`${shown(down.good)} mm to ${shown(up.good)} mm`);

    // Other blades in this fixture, told before anything changes: those it cannot hold are refused,
    // with what would mend it; of others every check is told.
    await page.goto(`${stage.url}#designs`);
    const named = page.locator('header .name a');
    const before = await named.textContent();
    const tried = async (blades: RegExp, last: RegExp) => {
      await page.getByRole('button', { name: blades }).click();
      const trial = page.getByRole('region', { name: /^The blades of .* in this fixture$/ });
      // What mends at a tap comes a moment after the words about it.
      await trial.getByText(last).first().waitFor({ timeout: 60_000 });
      const answer = await trial.innerText();
      await trial.getByRole('button', { name: 'Leave everything as it is' }).click();
      expect(await trial.count()).toBe(0);
      return answer;
    };
    const refused = await tried(/^Try its blades.*Side knife 165/, /^Set “/);
    expect(refused).toContain('This fixture cannot be built for those blades as it stands.');
    expect(refused).toMatch(/Set “Edge height” to [\d.]+ mm/);
    // Not a word of what is the matter with the design on the board.
    expect(refused).not.toContain('Marking 60');
    const moved = await tried(/^Try its blades.*Kitchen blades 180 and 210/, /Checks: /);
    expect(moved.match(/Edge height: 95 mm cannot be built here; [\d.]+ mm can\./g)).toHaveLength(
      1,
    );
    const held = await tried(/^Try its blades.*Camp knife 90/, /Checks: /);
    expect(held).toMatch(/Checks: all \d+ pass/);
    expect(held).toMatch(/Parts: \d+ of \d+ made parts stay as they are/);
    expect(await named.textContent()).toBe(before);
    expect(complaints).toEqual([]);
    await context.close();
  }, 240_000);

  it('grinds virtually, with and without the strip, and makes the rest for it', async () => {
    const context = await stage.browser.newContext(looks[0]);
    const file = readFileSync('jigs/spine-rest/examples/tapered-210.jig.json');
    const opened = openDesign(file, registry);
    if (!opened.ok) throw new Error('the example does not open');
    const { fixture } = opened.value;
    const parameters = { ...fixture.parameters, step: 'straight' };
    const straight = { ...opened.value, fixture: { ...fixture, parameters } };
    const link = linkFragment(straight).replace(/^#/, '');
    const { page, complaints } = await openStep(context, stage.url, link);
    await page.goto(`${stage.url}#fixture`);
    const box = page.getByRole('region', { name: 'The blade as the belt leaves it' });
    const ask = box.getByRole('button', { name: 'Grind virtually' });
    await ask.click({ timeout: 60_000 });
    // It says how far it is and can be stopped; nothing is then claimed.
    await box.getByRole('progressbar').waitFor();
    await box.getByRole('button', { name: 'Stop' }).click();
    expect(await box.getByRole('figure').count()).toBe(0);
    await ask.click();
    const figures = box.getByRole('figure');
    await figures.filter({ hasText: 'With the line strip' }).waitFor({ timeout: 60_000 });
    expect(await figures.count()).toBe(2);
    const passes = box.getByRole('slider');
    const done = await passes.getAttribute('aria-valuetext');
    const drawn = await figures.first().innerHTML();
    await passes.fill('1');
    expect(await passes.getAttribute('aria-valuetext')).not.toBe(done);
    expect(await figures.first().innerHTML()).not.toBe(drawn);
    await page.screenshot({ path: `${SCREENS}/ground.png`, fullPage: true });

    await box.getByRole('button', { name: 'Make the rest for this strip' }).click();
    await page.goto(`${stage.url}#checks`);
    await page
      .getByText('line strip to belt', { exact: false })
      .first()
      .waitFor({ state: 'attached', timeout: 60_000 });
    await page.screenshot({ path: `${SCREENS}/strip-checks.png`, fullPage: true });
    expect(complaints).toEqual([]);
    await context.close();
  }, 240_000);

  it('goes on without a network during the first visit, and starts after it', async () => {
    const context = await stage.browser.newContext();
    const { page } = await openStep(context, stage.url, 'blade');
    await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
    await stage.stopServing();
    // A step that was not yet fetched.
    await page.goto(`${stage.url}#setup`);
    await page.locator('main h1', { hasText: 'Setting up' }).waitFor();
    await page.goto(`${stage.url}#blade`);
    await page.reload();
    await page.locator('main h1').waitFor();
    expect(await page.locator('main h1').textContent()).toBe('The blade');
    await context.close();
  });
});
