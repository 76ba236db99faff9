import { readFileSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';
import { zipPackage } from '../../src/export/index.ts';
import { run, workshop } from '../cli/runner.ts';
import { newFixture, OTHER_GRINDER, theirGrinder } from './situations.ts';

const { at, put, clear } = workshop();
afterAll(clear);

const jig = async (...args: string[]): Promise<string> => {
  const { code, out, err } = await run(...args);
  expect(code, `${args.join(' ')}: ${err}`).toBe(0);
  return out;
};
const read = (name: string): string => readFileSync(at(name), 'utf8');

/** The folder as a maker would send it: packed. */
const packed = (folder: string): Uint8Array => {
  const { files } = JSON.parse(read(`${folder}/manifest.json`)) as {
    files: { path: string; kind: string }[];
  };
  return zipPackage(
    [...files, { path: 'manifest.json', kind: 'manifest' }].map((file) => ({
      ...file,
      bytes: readFileSync(at(`${folder}/${file.path}`)),
    })),
  );
};

describe('the three situations on the command line', () => {
  it('a new fixture, the other grinder, another maker: the same bytes by every way', async () => {
    // A fixture for a new blade family.
    const own = put('own.jig.json', newFixture());
    await jig('make', own, '--out', at('own'));
    expect(read('own/design.jig.json')).toBe(newFixture());

    // The same fixture on a different grinder.
    await jig('adapt', own, '--grinder', OTHER_GRINDER, '--out', at('other.jig.json'));
    expect(read('other.jig.json')).not.toBe(newFixture());

    // Another maker gets the design as a link, a file of the package, or the package packed.
    const ways = [
      (await jig('link', own)).trim(),
      at('own/plates/base_mm.dxf'),
      at('own/prints/knob_mm.3mf'),
      put('own.zip', packed('own')),
    ];
    for (const [i, way] of ways.entries()) {
      await jig('open', way, '--out', at(`got-${String(i)}.jig.json`));
      expect(read(`got-${String(i)}.jig.json`), way).toBe(newFixture());
    }
    // It merges with the file of their own grinder into the very fixture of the second situation.
    const grinder = put('their.grinder.json', theirGrinder());
    await jig('adapt', at('got-0.jig.json'), '--grinder', grinder, '--out', at('merged.jig.json'));
    // The same file, so the same package: that a design always gives the same bytes, and in the page
    // too, is shown in tests/make and tests/app.
    expect(read('merged.jig.json')).toBe(read('other.jig.json'));
  }, 300_000);
});
