import { readFileSync } from 'node:fs';
import jsqr from 'jsqr';
import type { Download, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { registry } from '../../jigs/registry.ts';
import { adapt } from '../../src/adapt/adapt.ts';
import type { Design } from '../../src/document/schema.ts';
import { openDesign } from '../../src/document/open.ts';
import { saveDesign } from '../../src/document/save.ts';
import { readPackage } from '../../src/export/package.ts';
import { grinderPresets } from '../../src/grinder/presets/index.ts';
import { bladeOf, drawnOutline, dxfOfLines, sidesOf } from '../outline/files.ts';
import { chromiumPath, openStage, openStep, type Stage } from './browser.ts';
import { exampleBytes } from './sample.ts';

/** Steps of the random walk, and the seed of its generator. */
const WALK = 40;
const SEED = 20;

const opened = (bytes: Uint8Array): Design => {
  const design = openDesign(bytes, registry);
  if (!design.ok) throw new Error(design.issues[0]?.message ?? 'does not open');
  return design.value;
};

const textOf = async (download: Download): Promise<string> =>
  readFileSync(await download.path(), 'utf8');

/** Saves through the page's own button and reads what came to the disk. */
const saved = async (page: Page, url: string): Promise<string> => {
  await page.goto(`${url}#designs`);
  const button = page.getByRole('button', { name: 'Save this design to a file' });
  const [download] = await Promise.all([page.waitForEvent('download'), button.click()]);
  return textOf(download);
};

const enter = async (page: Page, id: string, value: string): Promise<void> => {
  await page.locator(`#${id}`).fill(value);
  await page.locator(`#${id}`).press('Enter');
};

describe.skipIf(chromiumPath === undefined)('the three situations in a browser', () => {
  let stage: Stage;

  beforeAll(async () => {
    stage = await openStage();
  }, 120_000);

  afterAll(() => stage.close());

  it('a new fixture: from an outline file to the design file the command line writes', async () => {
    const context = await stage.browser.newContext();
    const { page, complaints } = await openStep(context, stage.url, 'blade');
    const drawn = dxfOfLines(
      sidesOf(drawnOutline(bladeOf('edge-rest/examples/slicer-200-hollow'), 33, 1)),
      4,
    );
    await page.setInputFiles('input[accept=".dxf,.svg"]', {
      name: 'mine.dxf',
      mimeType: 'image/vnd.dxf',
      buffer: Buffer.from(drawn),
    });
    await page.getByText('The plunge was put').waitFor();
    // Before the known length is confirmed nothing can be taken.
    const take = page.getByRole('button', { name: 'Take this outline' });
    expect(await take.isDisabled()).toBe(true);
    await enter(page, 'outline-known', '310');
    await expect.poll(() => take.isEnabled()).toBe(true);
    await take.click();
    await expect
      .poll(() => page.locator('#field-blades-0-outline-length').inputValue())
      .toBe('200');
    const design = opened(Buffer.from(await saved(page, stage.url)));
    const { outline } = design.blades[0] ?? {};
    if (outline?.kind !== 'dimensions') throw new Error('not by dimensions');
    expect(outline.heelHeight).toBeCloseTo(34, 1);
    // The command line writes the same bytes for the same design.
    expect(await saved(page, stage.url)).toBe(saveDesign(design));
    // One step back, and the worked design is there again, to the last byte.
    await page.getByRole('button', { name: 'Undo' }).click();
    expect(await saved(page, stage.url)).toBe(saveDesign(opened(exampleBytes('kitchen-210'))));
    expect(complaints).toEqual([]);
    await context.close();
  });

  it('another grinder: the design that adapting on the command line writes', async () => {
    const context = await stage.browser.newContext();
    const { page } = await openStep(context, stage.url, 'grinder');
    const [name = ''] = Object.keys(grinderPresets).slice(-1);
    const preset = grinderPresets[name];
    if (preset === undefined) throw new Error('no preset');
    const picker = page.locator('select').filter({ hasText: preset.name });
    await picker.selectOption(name);
    await page.getByRole('button', { name: 'See what would change' }).click();
    const fit = page.getByRole('button', { name: 'Fit the design to it' });
    const only = page.getByRole('button', { name: 'Only put the grinder in' });
    const mine = adapt(opened(exampleBytes('kitchen-210')), { grinder: preset }, registry);
    if (mine.ok) {
      await fit.click({ timeout: 90_000 });
      expect(await saved(page, stage.url)).toBe(saveDesign(mine.value.design));
    } else {
      await page.getByText('cannot be built for that grinder').waitFor({ timeout: 90_000 });
      expect(await fit.count()).toBe(0);
      expect(await only.count()).toBe(1);
    }
    await context.close();
  }, 120_000);

  it('sharing: the code on the screen holds the link, and the link the whole design', async () => {
    const mine = await stage.browser.newContext();
    const { page } = await openStep(mine, stage.url, 'designs');
    const before = await saved(page, stage.url);
    await page.getByRole('button', { name: 'Show a code to scan' }).click();
    const link = await page.getByRole('textbox', { name: 'Link to this design' }).inputValue();
    const svg = page.getByRole('img', { name: 'Code that holds the link' });
    const [, , size = 0] = ((await svg.getAttribute('viewBox')) ?? '').split(' ').map(Number);
    const dark = (await svg.locator('path').getAttribute('d')) ?? '';
    await mine.close();
    // Read by another program than the one that drew it, three pixels a module.
    const scale = 3;
    const pixels = new Uint8ClampedArray(4 * (size * scale) ** 2).fill(255);
    for (const [, x, y] of dark.matchAll(/M(\d+) (\d+)h1/g))
      for (let i = 0; i < scale * scale; i += 1) {
        const [px, py] = [
          (Number(x) + 4) * scale + (i % scale),
          (Number(y) + 4) * scale + Math.floor(i / scale),
        ];
        pixels.fill(0, 4 * (py * size * scale + px), 4 * (py * size * scale + px) + 3);
      }
    expect(jsqr(pixels, size * scale, size * scale)?.data).toBe(link);
    const theirs = await stage.browser.newContext();
    const other = await theirs.newPage();
    await other.goto(link);
    await other.getByText('is on the board').waitFor();
    expect(await saved(other, stage.url)).toBe(before);
    await theirs.close();
  });

  it('undo of a long random walk of edits returns the first state exactly', async () => {
    const context = await stage.browser.newContext();
    const { page } = await openStep(context, stage.url, 'blade');
    const first = await saved(page, stage.url);
    let state = SEED;
    // A small multiplicative generator (D. H. Lehmer): the walk is the same in every run.
    const random = (below: number): number => {
      state = (state * 48_271) % 2_147_483_647;
      return state % below;
    };
    for (let i = 0; i < WALK; i += 1) {
      const step = ['blade', 'grinder', 'fixture'][random(3)] ?? 'blade';
      if (i % 8 === 0) {
        await page.goto(`${stage.url}#${step}`);
        await page.locator('main:not([aria-busy=true]) input[id^=field-]').first().waitFor();
      }
      const fields = page.locator('main input[id^=field-][type=text][inputmode]:visible');
      const field = fields.nth(random(await fields.count()));
      await field.focus();
      await page.keyboard.press(random(2) === 0 ? 'ArrowUp' : 'ArrowDown');
      await page.keyboard.press('Enter');
      await field.blur();
    }
    expect(await saved(page, stage.url)).not.toBe(first);
    const undo = page.getByRole('button', { name: 'Undo', exact: true });
    for (let i = 0; i <= WALK && (await undo.isEnabled()); i += 1) await undo.click();
    expect(await undo.isEnabled()).toBe(false);
    expect(await saved(page, stage.url)).toBe(first);
    await context.close();
  }, 60_000);

  it('works without WebGL: the bench says so, drawings and files are whole', async () => {
    const context = await stage.browser.newContext();
    await context.addInitScript(() => {
      HTMLCanvasElement.prototype.getContext = () => null;
    });
    const { page } = await openStep(context, stage.url, 'fixture');
    await page.getByText('The solid on the bench').click();
    await page.getByText('This browser cannot draw solids').waitFor({ timeout: 60_000 });
    expect(await page.locator('main figure svg').count()).toBeGreaterThan(1);
    expect((await saved(page, stage.url)).length).toBeGreaterThan(1000);
    await context.close();
  }, 90_000);

  it('exports a whole package with the network gone', async () => {
    const context = await stage.browser.newContext();
    const { page } = await openStep(context, stage.url, 'designs');
    await page.evaluate(() => navigator.serviceWorker.ready);
    await stage.stopServing();
    await page.reload();
    await page.getByRole('button', { name: /Start from it: “Leather face for the/ }).click();
    await page.goto(`${stage.url}#parts`);
    const write = page.getByRole('button', { name: /write the files|in spite/i });
    await write.click({ timeout: 90_000 });
    const whole = page.getByRole('button', { name: 'Whole package (zip)' });
    await whole.waitFor({ timeout: 90_000 });
    const [download] = await Promise.all([page.waitForEvent('download'), whole.click()]);
    const written = readPackage(new Uint8Array(readFileSync(await download.path())));
    if (!written.ok) throw new Error(written.issues[0]?.message);
    expect(written.value.some(({ path }) => path.endsWith('.pdf'))).toBe(true);
    expect(written.value.some(({ path }) => path.endsWith('.dxf'))).toBe(true);
    await context.close();
  }, 200_000);
});
