import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { registry } from '../../jigs/registry.ts';
import { STEPS } from '../../src/app/state/steps.ts';
import { linkFragment } from '../../src/document/link.ts';
import { openDesign } from '../../src/document/open.ts';
import { newFixture } from '../situations/situations.ts';
import { chromiumPath, openStage, openStep, type Stage } from './browser.ts';

const MARKUP = '</p><img src=x onerror=ran()><script>ran()</script>';

/** A design as a stranger may send it: markup wherever a name or a note may stand. */
const hostileLink = (): string => {
  const opened = openDesign(newFixture(), registry);
  if (!opened.ok) throw new Error('the design does not open');
  const design = opened.value;
  return linkFragment({
    ...design,
    name: MARKUP,
    notes: MARKUP,
    blades: design.blades.map((blade) => ({ ...blade, name: MARKUP })),
    grinder: { ...design.grinder, name: MARKUP },
  });
};

describe.skipIf(chromiumPath === undefined)('the content security policy of the built page', () => {
  let stage: Stage;

  beforeAll(async () => {
    stage = await openStage();
  }, 120_000);

  afterAll(() => stage.close());

  it('lets the app do its work and nothing else', async () => {
    const context = await stage.browser.newContext();
    await context.addInitScript(() => {
      const seen: string[] = [];
      Object.assign(window, { seen, ran: () => seen.push('ran') });
      document.addEventListener('securitypolicyviolation', ({ effectiveDirective }) =>
        seen.push(effectiveDirective),
      );
    });
    const seen = () => page.evaluate<string[]>('seen');
    const { page, complaints } = await openStep(context, stage.url, hostileLink());
    for (const step of STEPS) {
      await page.goto(`${stage.url}#${step}`);
      await page.locator(`nav a[href="#${step}"][aria-current=step]`).waitFor();
      await page.waitForTimeout(100);
    }
    const names = await page.locator('body').innerText();
    expect(names).toContain(MARKUP);
    expect(await seen()).toEqual([]);
    expect(complaints).toEqual([]);

    // What would run without the policy: a script, a handler, a style, a picture from elsewhere.
    await page.evaluate(() => {
      const script = document.createElement('script');
      script.textContent = 'ran()';
      document.body.append(script);
      const button = document.createElement('button');
      button.setAttribute('onclick', 'ran()');
      document.body.append(button);
      button.click();
      const style = document.createElement('style');
      style.textContent = 'main { display: none }';
      document.head.append(style);
      const image = document.createElement('img');
      image.src = 'https://example.org/x.png';
      document.body.append(image);
      const foreign = document.createElement('script');
      foreign.src = 'data:text/javascript,ran()';
      document.body.append(foreign);
      void fetch('https://example.org/').catch(() => undefined);
    });
    const refused = [
      'connect-src',
      'img-src',
      'script-src-attr',
      'script-src-elem',
      'style-src-elem',
    ];
    await expect.poll(async () => [...new Set(await seen())].sort()).toEqual(refused);
    expect(await page.locator('main h1').isVisible()).toBe(true);
    await context.close();
  }, 120_000);

  it('comes with every file that is served, scripts of the workers too', async () => {
    const page = await (await fetch(stage.url)).text();
    const files = [...page.matchAll(/"\.\/([^"]+\.js)"/g)].map(([, file]) => file ?? '');
    expect(files.length).toBeGreaterThan(1);
    for (const file of ['', 'sw.js', ...files]) {
      const { headers } = await fetch(`${stage.url}${file}`);
      expect(headers.get('content-security-policy'), file).toMatch(
        /^default-src 'none'; script-src 'self';.*; frame-ancestors 'none'$/,
      );
    }
    // Stated by the page itself as well, wherever it is served from; no exception for inline.
    expect(page).toContain('http-equiv="Content-Security-Policy"');
    expect(page).not.toMatch(/unsafe-|<script(?![^>]*src=)|<style|\son\w+=/);
  });
});
