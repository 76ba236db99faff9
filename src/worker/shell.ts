import { expose } from 'comlink';
import { createEngine } from './engine.ts';

const files = import.meta.glob<string>('../../jigs/*/examples/*.jig.json', {
  query: '?raw',
  import: 'default',
  eager: true,
});

/** The example on which a first visit opens. */
const FIRST = /kitchen/;

const nameIn = (content: string): string => {
  const data: unknown = JSON.parse(content);
  return typeof data === 'object' && data !== null && 'name' in data ? String(data.name) : '';
};

const examples = Object.entries(files)
  .sort(([a], [b]) => Number(FIRST.test(b)) - Number(FIRST.test(a)) || a.localeCompare(b))
  .map(([, content]) => ({
    name: nameIn(content),
    bytes: new TextEncoder().encode(content),
  }));

expose(createEngine(examples));
