import { expose } from 'comlink';
import bold from 'dejavu-fonts-ttf/ttf/DejaVuSans-Bold.ttf?url';
import regular from 'dejavu-fonts-ttf/ttf/DejaVuSans.ttf?url';
import { cards } from '../../jigs/cards.ts';
import { createEngine, type Fonts } from './engine.ts';

/** Names at once, contents when an example is opened. */
const names = import.meta.glob<string>('../../jigs/*/examples/*.jig.json', {
  import: 'name',
  eager: true,
});
const contents = import.meta.glob<string>('../../jigs/*/examples/*.jig.json', {
  query: '?raw',
  import: 'default',
});

/** The example on which a first visit opens. */
const FIRST = /kitchen/;

const aids = (file: string): number => {
  const [, family = ''] = /jigs\/([^/]+)/.exec(file) ?? [];
  return Number(cards.families[family]?.aids === true);
};

const examples = Object.entries(contents)
  .sort(
    ([a], [b]) =>
      Number(FIRST.test(b)) - Number(FIRST.test(a)) || aids(a) - aids(b) || a.localeCompare(b),
  )
  .map(([file, load]) => ({
    name: names[file] ?? file,
    bytes: async () => new TextEncoder().encode(await load()),
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
