/**
 * The built page as a browser loads it without its cache: gzipped script fetched, and time, until
 * the first drawing stands and until the first numbers do; then a slider of the fixture dragged for
 * two seconds, an event a frame. Clock time: say beside it what else the machine does.
 *
 *     npx tsx tests/bench/page.ts [rounds]
 */
import { gzipSync } from 'node:zlib';
import { cpus, loadavg } from 'node:os';
import type { Browser } from 'playwright-core';
import { openStage } from '../app/browser.ts';

interface Load {
  readonly drawn: { readonly ms: number; readonly bytes: number };
  readonly numbers: { readonly ms: number; readonly bytes: number };
}

interface Drag {
  /** Events of the slider, and drawings that changed, in the time of the drag. */
  readonly frames: number;
  readonly drawings: number;
  /** Longest time between two frames, ms. */
  readonly stall: number;
}

/** Runs in the page: the gap at the belt, a little to and fro. */
const DRAGGING = `new Promise((resolve, reject) => {
  setTimeout(() => reject(new Error('the drag did not end')), 20000);
  const slides = [...document.querySelectorAll('input.slide')];
  const gap = slides.find((one) => one.getAttribute('aria-label').includes('Gap'));
  const drawn = () => document.querySelector('main figure')?.textContent;
  let [frames, drawings, stall, last, before] = [0, 0, 0, performance.now(), drawn()];
  const from = last;
  const step = (now) => {
    stall = Math.max(stall, now - last);
    last = now;
    const seen = drawn();
    if (seen !== before) drawings += 1;
    before = seen;
    if (now - from > 2000) return resolve({ frames, drawings, stall });
    frames += 1;
    gap.value = String(1 + 0.1 * Math.sin(frames / 5));
    gap.dispatchEvent(new Event('input', { bubbles: true }));
    requestAnimationFrame(step);
  };
  requestAnimationFrame(step);
})`;

const load = async (browser: Browser, url: string): Promise<Load & { readonly drag: Drag }> => {
  const context = await browser.newContext({ serviceWorkers: 'block' });
  const start = performance.now();
  const sizes = new Map<string, { readonly at: number; readonly bytes: Promise<number> }>();
  context.on('response', (response) => {
    if (!response.url().endsWith('.js') || sizes.has(response.url())) return;
    const bytes = response.body().then(
      (body) => gzipSync(body, { level: 9 }).length,
      () => 0,
    );
    sizes.set(response.url(), { at: performance.now() - start, bytes });
  });
  const page = await context.newPage();
  const until = async (selector: string) => {
    await page.locator(selector).first().waitFor({ state: 'attached' });
    const ms = performance.now() - start;
    const there = [...sizes.values()].filter(({ at }) => at <= ms);
    const bytes = (await Promise.all(there.map((one) => one.bytes))).reduce((a, b) => a + b, 0);
    return { ms, bytes };
  };
  await page.goto(url);
  const drawn = await until('main svg');
  const numbers = await until('nav a[href="#fixture"] [role=img][aria-label=holds]');
  await page.goto(`${url}#fixture`);
  await page.getByRole('slider').first().waitFor();
  await page.locator('main svg').first().waitFor();
  const drag = await page.evaluate<Drag>(DRAGGING);
  await context.close();
  return { drawn, numbers, drag };
};

const rounds = Number(process.argv[2] ?? 3);
const stage = await openStage();
console.log(
  `${String(cpus().length)} cores, load ${loadavg()
    .map((one) => one.toFixed(1))
    .join(' ')}`,
);
for (let i = 0; i < rounds; i += 1) {
  const { drawn, numbers, drag } = await load(stage.browser, stage.url);
  const row = ({ ms, bytes }: Load['drawn']): string =>
    `${ms.toFixed(0)} ms, ${(bytes / 1000).toFixed(0)} kB`;
  console.log(`drawn ${row(drawn)}; numbers ${row(numbers)}`);
  console.log(
    `  drag: ${String(drag.frames)} frames, ${String(drag.drawings)} drawings, longest frame ${drag.stall.toFixed(0)} ms`,
  );
}
await stage.close();
