import { expect, test } from 'vitest';
import { createStore } from '../../src/core/store.ts';

test('a store makes a value once a key, and again once it is long out of use', () => {
  const store = createStore<string>(2);
  const made: string[] = [];
  const ask = (key: string): string =>
    store(key, () => {
      made.push(key);
      return key;
    });
  expect(['a', 'b', 'a', 'b'].map(ask)).toEqual(['a', 'b', 'a', 'b']);
  expect(made).toEqual(['a', 'b']);
  ['c', 'd', 'e', 'f'].forEach(ask);
  ask('a');
  expect(made).toEqual(['a', 'b', 'c', 'd', 'e', 'f', 'a']);
});
