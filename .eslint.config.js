import js from '@eslint/js';
import globals from 'globals';
import svelte from 'eslint-plugin-svelte';
import ts from 'typescript-eslint';

export default ts.config(
  { ignores: ['dist/', 'exports/', 'node_modules/', '.cache/'] },
  js.configs.recommended,
  ...ts.configs.strict,
  ...svelte.configs.recommended,
  {
    languageOptions: { globals: { ...globals.node, ...globals.browser, ...globals.worker } },
    rules: {
      // A typed language already knows which names exist.
      'no-undef': 'off',
      '@typescript-eslint/no-explicit-any': 'error',
      '@typescript-eslint/ban-ts-comment': 'error',
      'max-lines': ['error', { max: 400 }],
    },
  },
  {
    files: ['src/**', 'jigs/**'],
    rules: {
      // Engines are free in the last bit of these, and a page must write what the command line does.
      'no-restricted-properties': [
        'error',
        ...['sin', 'cos', 'tan', 'asin', 'acos', 'atan', 'atan2'].map((property) => ({
          object: 'Math',
          property,
          message: 'Take it from src/core/trigonometry.ts, which is equal in every engine.',
        })),
      ],
    },
  },
  {
    files: ['**/*.svelte', '**/*.svelte.ts'],
    languageOptions: { parserOptions: { parser: ts.parser } },
  },
);
