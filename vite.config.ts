import { svelte } from '@sveltejs/vite-plugin-svelte';
import { VitePWA } from 'vite-plugin-pwa';
import { defineConfig } from 'vitest/config';
import { PAGE_POLICY } from './src/cli/policy.ts';

/** Everything the page needs is fetched on the first visit, exports included. */
const offline = () =>
  VitePWA({
    // An open page keeps the version it started with; the next visit gets the new one.
    registerType: 'prompt',
    injectRegister: 'script-defer',
    workbox: {
      // What was fetched serves the first visit, too, should the network go away during it.
      clientsClaim: true,
      globPatterns: ['**/*.{js,css,html,svg,wasm,ttf}'],
      maximumFileSizeToCacheInBytes: 8 * 1024 * 1024,
    },
    manifest: {
      name: 'Platenwright',
      short_name: 'Platenwright',
      description: 'Bevel-grinding fixtures for a blade family on a belt grinder',
      display: 'standalone',
      background_color: '#f2f1ea',
      theme_color: '#f2f1ea',
      icons: [{ src: './mark.svg', sizes: 'any', type: 'image/svg+xml', purpose: 'any' }],
    },
  });

/** The policy in the built page itself, so that it holds wherever the page is served from. */
const policy = () => ({
  name: 'content-security-policy',
  apply: 'build' as const,
  transformIndexHtml: () => [
    {
      tag: 'meta',
      attrs: { 'http-equiv': 'Content-Security-Policy', content: PAGE_POLICY },
      injectTo: 'head-prepend' as const,
    },
  ],
});

/**
 * Below the shells a module does nothing when it is read, so that one of which nothing is used is
 * left out, and comes no sooner than what uses it.
 */
const treeshake = {
  moduleSideEffects: (id: string) => !/\/(?:src|jigs)\/(?!app\/|worker\/).*\.ts$/.test(id),
};

// The page lives in src/app; the tests see the whole project.
export default defineConfig(({ mode }) => {
  const testing = mode === 'test';
  return {
    ...(testing ? { resolve: { conditions: ['browser'] } } : { root: 'src/app', base: './' }),
    plugins: [
      svelte({ configFile: false, compilerOptions: { runes: true } }),
      ...(testing ? [] : [offline(), policy()]),
    ],
    build: {
      outDir: '../../dist',
      emptyOutDir: true,
      target: 'es2022',
      rolldownOptions: { treeshake },
    },
    worker: { format: 'es', rolldownOptions: { treeshake } },
    test: {
      include: ['tests/**/*.test.ts'],
      testTimeout: 60_000,
      pool: 'threads',
      // By default one core stays idle, which on two doubles the time.
      maxWorkers: '100%',
    },
  };
});
