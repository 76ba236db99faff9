import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vitest/config';

// The page lives in src/app; the tests see the whole project.
export default defineConfig(({ mode }) => ({
  ...(mode === 'test' ? {} : { root: 'src/app', base: './' }),
  plugins: [svelte({ configFile: false, compilerOptions: { runes: true } })],
  ...(mode === 'test' ? { resolve: { conditions: ['browser'] } } : {}),
  build: { outDir: '../../dist', emptyOutDir: true, target: 'es2022' },
  worker: { format: 'es' as const },
  test: {
    include: ['tests/**/*.test.ts'],
    testTimeout: 60_000,
    pool: 'threads' as const,
  },
}));
