import { expose } from 'comlink';
import { createEngine } from './engine.ts';

const files = import.meta.glob<string>('../../jigs/*/examples/*.jig.json', {
  query: '?raw',
  import: 'default',
  eager: true,
});

const examples = Object.entries(files).map(([path, content]) => ({
  name: path.replace(/^.*\//, '').replace(/\.jig\.json$/, ''),
  bytes: new TextEncoder().encode(content),
}));

expose(createEngine(examples));
