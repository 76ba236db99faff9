// `npx tsx tests/soak/both.ts [NAME ...]`: the whole package of every worked design, or of those whose
// file is named so, made by the command line and by the page in a Chromium, compared byte for byte. The
// tests of every run do so for one design only. Ends with 1 where a file differs.
import { readdirSync, readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { unzipSync } from 'fflate';
import type { Page } from 'playwright-core';
import { openStage, openStep } from '../app/browser.ts';
import { bytesBelow, run, workshop } from '../cli/runner.ts';

const ENDING = '.jig.json';
/** A package takes long where others work on the machine too, ms. */
const PATIENCE = 300_000;

const named = process.argv.slice(2);
const files = readdirSync('jigs', { recursive: true, encoding: 'utf8' })
  .filter((file) => file.endsWith(ENDING))
  .filter((file) => named.length === 0 || named.includes(basename(file, ENDING)))
  .sort()
  .map((file) => `jigs/${file}`);

/** Opens a design file in the page and takes its package: files by their path, bytes in base 64. */
const packed = async (page: Page, url: string, file: string): Promise<Record<string, string>> => {
  await page.locator('input[type=file]').first().setInputFiles(file);
  await page.getByText('is on the board').first().waitFor();
  await page.goto(`${url}#parts`);
  await page.getByRole('button', { name: 'Draw and write the files' }).click({ timeout: PATIENCE });
  const whole = page.getByRole('button', { name: 'Whole package (zip)' });
  await whole.waitFor({ timeout: PATIENCE });
  const [download] = await Promise.all([page.waitForEvent('download'), whole.click()]);
  const unzipped = unzipSync(new Uint8Array(readFileSync(await download.path())));
  return Object.fromEntries(
    Object.entries(unzipped).map(([path, bytes]) => [path, Buffer.from(bytes).toString('base64')]),
  );
};

const stage = await openStage();
let wrong = 0;
for (const file of files) {
  const { at, clear } = workshop();
  const { code, err } = await run('make', file, '--out', at('out'));
  const context = await stage.browser.newContext();
  const { page, complaints } = await openStep(context, stage.url, 'designs');
  const here = code === 0 ? bytesBelow(at('out')) : {};
  const there = await packed(page, stage.url, file);
  const paths = [...new Set([...Object.keys(here), ...Object.keys(there)])].sort();
  const differ = paths.filter((path) => here[path] !== there[path]);
  if (differ.length > 0 || complaints.length > 0 || code !== 0) wrong += 1;
  console.log(
    `${file}: ${String(paths.length - differ.length)} of ${String(paths.length)} files are the same`,
    ...[...differ, ...complaints, code === 0 ? '' : err].filter((said) => said !== ''),
  );
  await context.close();
  clear();
}
await stage.close();
console.log(
  `${String(files.length - wrong)} of ${String(files.length)} designs are the same in both`,
);
process.exitCode = wrong > 0 ? 1 : 0;
