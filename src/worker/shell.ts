import { expose } from 'comlink';
import bold from 'dejavu-fonts-ttf/ttf/DejaVuSans-Bold.ttf?url';
import regular from 'dejavu-fonts-ttf/ttf/DejaVuSans.ttf?url';
import { createEngine, type Fonts } from './engine.ts';

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

const fetched = async (url: string): Promise<Uint8Array> =>
  new Uint8Array(await (await fetch(url)).arrayBuffer());

/** Fetched when the first package is made, and kept by the worker. */
let fonts: Promise<Fonts> | undefined;
const loadFonts = async (): Promise<Fonts> => ({
  regular: await fetched(regular),
  bold: await fetched(bold),
});

expose(createEngine({ examples, fonts: () => (fonts ??= loadFonts()) }));
