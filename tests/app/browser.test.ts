import { mkdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { STEPS } from '../../src/app/state/steps.ts';
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

  const sizes = [
    { width: 1440, height: 900 },
    { width: 360, height: 740 },
  ];
  const looks = sizes.flatMap((viewport) =>
    (['light', 'dark'] as const).map((colorScheme) => ({ viewport, colorScheme })),
  );

  it.each(looks)(
    'every step at $viewport.width px, $colorScheme: accessible, nothing beyond the side',
    async (look) => {
      const context = await stage.browser.newContext(look);
      const { page, complaints } = await openStep(context, stage.url, 'blade');
      for (const step of STEPS) {
        await page.goto(`${stage.url}#${step}`);
        await page.locator('main h1').waitFor();
        // Until every answer is there, whatever it says.
        await page.locator('nav [role=img][aria-label="being worked out"]').waitFor({
          state: 'detached',
          timeout: 30_000,
        });
        await page.screenshot({
          path: `${SCREENS}/${step}-${look.viewport.width}-${look.colorScheme}.png`,
          fullPage: true,
        });
        await page.evaluate(axe);
        const findings = await page.evaluate<Finding[]>(
          `axe.run({ runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'] }).then((r) => r.violations)`,
        );
        const grave = findings.map(
          ({ id, impact, nodes }) => `${step}: ${id} (${impact}) ${nodes[0]?.html}`,
        );
        expect(grave).toEqual([]);
        const beyond = await page.evaluate(
          () => document.documentElement.scrollWidth - window.innerWidth,
        );
        expect(beyond, `${step} is wider than the screen`).toBeLessThanOrEqual(0);
      }
      expect(complaints).toEqual([]);
      await context.close();
    },
  );

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
    // Both type before either has written.
    await Promise.all([
      enter(first, 'outline-length', '121'),
      enter(second, 'outline-length', '122'),
    ]);
    await first.waitForTimeout(1500);
    const kept = await first.evaluate(
      () =>
        new Promise<string[]>((resolve) => {
          const open = indexedDB.open('platenwright');
          open.onsuccess = () => {
            const all = open.result.transaction('designs').objectStore('designs').getAll();
            all.onsuccess = () => resolve(all.result.map((entry: { text: string }) => entry.text));
          };
        }),
    );
    const lengths = kept.map(
      (text) =>
        (JSON.parse(text) as { blades: { outline: { length: number } }[] }).blades[0]?.outline
          .length,
    );
    expect(lengths.sort()).toEqual([121, 122]);
    await context.close();
  });

  it('does the job of a dimension by keyboard alone', async () => {
    const context = await stage.browser.newContext();
    const { page } = await openStep(context, stage.url, 'blade');
    const chip = page.getByRole('button', { name: /^Blade length, .* Change it$/ });
    await chip.focus();
    await page.keyboard.press('Enter');
    await page.keyboard.type('4 1/2');
    await page.keyboard.press('Enter');
    await expect
      .poll(() => page.locator('#field-blades-0-outline-length').inputValue())
      .toBe('114.3');
    await page.keyboard.press('Control+z');
    await expect
      .poll(() => page.locator('#field-blades-0-outline-length').inputValue())
      .not.toBe('114.3');
    await context.close();
  });

  it('starts without a network after the first visit', async () => {
    const context = await stage.browser.newContext();
    const { page } = await openStep(context, stage.url, 'blade');
    await page.evaluate(() => navigator.serviceWorker.ready);
    await stage.stopServing();
    await page.reload();
    await page.locator('main h1').waitFor();
    expect(await page.locator('main h1').textContent()).toBe('The blade');
    await context.close();
  });
});
