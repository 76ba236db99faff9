/**
 * The built page as a browser loads it without its cache: gzipped script fetched, and time, until
 * the first drawing stands and until the first numbers do; then sliders of the fixture and one of
 * the blade dragged for two seconds each, a new value a frame. Clock time: say beside it what else
 * the machine does.
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
  /** New values of the slider, and drawings that changed, in the time of the drag. */
  readonly frames: number;
  readonly drawings: number;
  /** Longest time between two frames, ms. */
  readonly stall: number;
}

/** Runs in the page: a slider to and fro by two of its steps, a step a frame. */
const dragging = (named: string): string => `new Promise((resolve, reject) => {
  setTimeout(() => reject(new Error('the drag did not end')), 20000);
  const slides = [...document.querySelectorAll('input.slide')];
  const slide = slides.find((one) => one.getAttribute('aria-label').includes('${named}'));
  const drawn = () => [...document.querySelectorAll('main figure')].map((one) => one.textContent).join();
  const [start, by] = [Number(slide.value), Number(slide.step)];
  let [frames, drawings, stall, last, before] = [0, 0, 0, performance.now(), drawn()];
  const from = last;
  const step = (now) => {
    stall = Math.max(stall, now - last);
    last = now;
    const seen = drawn();
    if (seen !== before) drawings += 1;
    before = seen;
    if (now - from > 2000) {
      slide.value = String(start);
      slide.dispatchEvent(new Event('input', { bubbles: true }));
      return resolve({ frames, drawings, stall });
    }
    frames += 1;
    slide.value = String(start + by * (2 - Math.abs((frames % 4) - 2)));
    slide.dispatchEvent(new Event('input', { bubbles: true }));
    requestAnimationFrame(step);
  };
  requestAnimationFrame(step);
})`;

/** The steps whose sliders are dragged, and the slider's name. */
const DRAGGED = [
  { step: 'fixture', named: 'Gap' },
  { step: 'fixture', named: 'Plate thickness' },
  { step: 'blade', named: 'Blade length' },
] as const;

const load = async (
  browser: Browser,
  url: string,
): Promise<Load & { readonly drags: readonly Drag[] }> => {
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
  const drags: Drag[] = [];
  for (const { step, named } of DRAGGED) {
    await page.goto(`${url}#${step}`);
    await page.getByRole('slider').first().waitFor();
    await page.locator('main figure').first().waitFor({ state: 'attached' });
    drags.push(await page.evaluate<Drag>(dragging(named)));
  }
  await context.close();
  return { drawn, numbers, drags };
};

const rounds = Number(process.argv[2] ?? 3);
const stage = await openStage();
console.log(
  `${String(cpus().length)} cores, load ${loadavg()
    .map((one) => one.toFixed(1))
    .join(' ')}`,
);
for (let i = 0; i < rounds; i += 1) {
  const { drawn, numbers, drags } = await load(stage.browser, stage.url);
  const row = ({ ms, bytes }: Load['drawn']): string =>
    `${ms.toFixed(0)} ms, ${(bytes / 1000).toFixed(0)} kB`;
  console.log(`drawn ${row(drawn)}; numbers ${row(numbers)}`);
  drags.forEach(({ frames, drawings, stall }, k) => {
    const { step, named } = DRAGGED[k] ?? { step: '', named: '' };
    console.log(
      `  ${step}, ${named}: ${String(frames)} values, ${String(drawings)} drawings, longest frame ${stall.toFixed(0)} ms`,
    );
  });
}
await stage.close();
