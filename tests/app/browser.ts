import { existsSync } from 'node:fs';
import { chromium, type Browser, type BrowserContext, type Page } from 'playwright-core';
import { serveFolder } from '../../src/cli/serve.ts';
import { builtPage } from './built.ts';

/** Where a system Chromium may be; CHROMIUM names another. */
const PLACES = [
  process.env['CHROMIUM'] ?? '',
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
];

export const chromiumPath = PLACES.find((path) => path !== '' && existsSync(path));

const FLAGS = [
  '--no-sandbox',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--use-angle=swiftshader',
  '--enable-unsafe-swiftshader',
  '--ignore-gpu-blocklist',
];

export interface Stage {
  readonly browser: Browser;
  readonly url: string;
  /** Stops serving, as when the network is gone. */
  readonly stopServing: () => Promise<void>;
  readonly close: () => Promise<void>;
}

/** Serves the built app and starts a browser. */
export const openStage = async (): Promise<Stage> => {
  const folder = await builtPage();
  const { url, server } = await serveFolder(folder, 0);
  const browser = await chromium.launch({ executablePath: chromiumPath ?? '', args: FLAGS });
  const stopServing = () =>
    new Promise<void>((resolve) => {
      server.closeAllConnections();
      server.close(() => resolve());
    });
  return {
    browser,
    url,
    stopServing,
    close: async () => {
      await browser.close();
      await stopServing();
    },
  };
};

/** Opens a step, or a link, and waits until a design is on the board; collects what the page complains of. */
export const openStep = async (
  context: BrowserContext,
  url: string,
  step?: string,
): Promise<{ readonly page: Page; readonly complaints: string[] }> => {
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') complaints.push(message.text());
  });
  await page.goto(step === undefined ? url : `${url}#${step}`);
  await page.locator('main:not([aria-busy=true]) h1').waitFor();
  return { page, complaints };
};
