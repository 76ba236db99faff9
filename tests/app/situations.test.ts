import { readFileSync } from 'node:fs';
import { unzipSync } from 'fflate';
import jsqr from 'jsqr';
import type { Download, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { registry } from '../../jigs/registry.ts';
import { fieldId } from '../../src/app/fields/field.ts';
import type { Design } from '../../src/document/schema.ts';
import { openDesign } from '../../src/document/open.ts';
import { saveDesign } from '../../src/document/save.ts';
import { readPackage } from '../../src/export/package.ts';
import { grinderPresets } from '../../src/grinder/presets/index.ts';
import { bytesBelow, run, workshop } from '../cli/runner.ts';
import {
  ENTERED,
  newFixture,
  OTHER_GRINDER,
  START,
  theirGrinder,
} from '../situations/situations.ts';
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

/** Writes the package in the page: its files by their path, with their bytes in base 64. */
const packaged = async (page: Page, url: string): Promise<Record<string, string>> => {
  await page.goto(`${url}#parts`);
  await page.getByRole('button', { name: 'Draw and write the files' }).click({ timeout: 90_000 });
  const whole = page.getByRole('button', { name: 'Whole package (zip)' });
  await whole.waitFor({ timeout: 120_000 });
  const [download] = await Promise.all([page.waitForEvent('download'), whole.click()]);
  const files = unzipSync(new Uint8Array(readFileSync(await download.path())));
  return Object.fromEntries(
    Object.entries(files).map(([path, bytes]) => [path, Buffer.from(bytes).toString('base64')]),
  );
};

describe.skipIf(chromiumPath === undefined)('the three situations in a browser', () => {
  let stage: Stage;
  const { at, put, clear } = workshop();

  beforeAll(async () => {
    stage = await openStage();
  }, 120_000);

  afterAll(async () => {
    clear();
    await stage.close();
  });

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

  it('own blades, another grinder, another maker: whole packages as the command line writes them', async () => {
    const jig = async (...args: string[]): Promise<void> => {
      const { code, err } = await run(...args);
      expect(code, `${args.join(' ')}: ${err}`).toBe(0);
    };
    const own = put('own.jig.json', newFixture());
    await jig('make', own, '--out', at('own'));
    await jig('adapt', own, '--grinder', OTHER_GRINDER, '--out', at('other.jig.json'));
    await jig('make', at('other.jig.json'), '--out', at('other'));
    const other = readFileSync(at('other.jig.json'), 'utf8');

    // A maker starts from a worked design and enters their own blades.
    const mine = await stage.browser.newContext();
    const { page, complaints } = await openStep(mine, stage.url, 'designs');
    const started = opened(readFileSync(START.file));
    await page.getByRole('button', { name: `Start from it: “${started.name}”` }).click();
    await expect.poll(() => page.locator('#field-name').inputValue()).toBe(started.name);
    for (const { path, value } of ENTERED) {
      await page.goto(`${stage.url}#${path.startsWith('blades') ? 'blade' : 'designs'}`);
      await enter(page, fieldId(path), String(value));
    }
    expect(await saved(page, stage.url)).toBe(newFixture());
    await page.getByRole('button', { name: 'Copy the link' }).click();
    const link = await page.getByRole('textbox', { name: 'Link to this design' }).inputValue();
    expect(await packaged(page, stage.url)).toEqual(bytesBelow(at('own')));

    // The same fixture on a different grinder.
    await page.goto(`${stage.url}#grinder`);
    const name = grinderPresets[OTHER_GRINDER]?.name ?? '';
    await page.locator('select').filter({ hasText: name }).selectOption(OTHER_GRINDER);
    await page.getByRole('button', { name: 'See what would change' }).click();
    await page.getByRole('heading', { name: /^To buy/ }).waitFor({ timeout: 90_000 });
    await page.getByRole('button', { name: 'Fit the design to it' }).click();
    expect(await saved(page, stage.url)).toBe(other);
    expect(await packaged(page, stage.url)).toEqual(bytesBelow(at('other')));
    expect(complaints).toEqual([]);
    await mine.close();

    // Another maker opens the link and fits it to the file of their own grinder.
    const theirs = await stage.browser.newContext();
    const second = await openStep(theirs, link);
    await second.page.getByText('is on the board').waitFor();
    await second.page.goto(`${stage.url}#designs`);
    await second.page.setInputFiles('input[accept^=".json"]', {
      name: 'mine.grinder.json',
      mimeType: 'application/json',
      buffer: Buffer.from(theirGrinder()),
    });
    const fit = second.page.getByRole('button', { name: 'Fit the design to it' });
    await fit.click({ timeout: 90_000 });
    expect(await saved(second.page, stage.url)).toBe(other);
    expect(await packaged(second.page, stage.url)).toEqual(bytesBelow(at('other')));
    expect(second.complaints).toEqual([]);
    await theirs.close();
  }, 240_000);

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

  it('takes one blade of what another maker changed, and leaves the rest as it was', async () => {
    const context = await stage.browser.newContext();
    const { page } = await openStep(context, stage.url, 'designs');
    const chooser = page.locator('input[accept^=".json"]');
    const opens = (design: Design) =>
      chooser.setInputFiles({
        name: 'shared.jig.json',
        mimeType: 'application/json',
        buffer: Buffer.from(saveDesign(design)),
      });
    const theirs = opened(exampleBytes('kitchen-210'));
    const [first, second] = theirs.blades;
    if (!first || !second) throw new Error('two blades');
    const longer = { ...second, quantity: 9 };
    const sent: Design = { ...theirs, notes: 'Sent back', blades: [first, longer] };
    await opens(sent);
    await page.locator('section[aria-labelledby=shelf] li').waitFor();
    await opens({ ...theirs, revision: 3 });
    await page.getByRole('button', { name: 'What differs' }).last().click();
    const take = page.getByRole('button', {
      name: `Take from the kept one: Blades ${second.name}`,
    });
    await take.click({ timeout: 60_000 });
    await page.getByText('2 differences').waitFor({ timeout: 60_000 });
    expect(opened(Buffer.from(await saved(page, stage.url)))).toEqual({
      ...theirs,
      revision: 3,
      blades: [first, longer],
    });
    await context.close();
  }, 90_000);

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
