import { XMLParser, XMLValidator } from 'fast-xml-parser';
import { zipSync } from 'fflate';
import { beforeAll, describe, expect, it } from 'vitest';
import { openAny } from '../../src/adapt/open-any.ts';
import { saveDesign } from '../../src/document/save.ts';
import { checkDesign } from '../../src/document/open.ts';
import type { PackageFile } from '../../src/export/index.ts';
import { makePackage } from '../../src/make/package.ts';
import { seeded } from '../../src/setup/random.ts';
import { wholeFiles } from '../soak/formats.ts';
import { mutated } from '../soak/mutate.ts';
import { tryFile } from '../soak/try-file.ts';
import { fonts, gaugeDesign, gaugeRegistry } from './gauge.ts';
import { lintPackage } from './lint.ts';

/** Names that would break out of a format that forgot to escape them. */
const NAMES = [
  '</text><script>alert(1)</script>',
  '"><img src=x onerror=alert(1)>',
  ']]> --> <!-- ) ( \\ % &amp; &#x41;',
  '=HYPERLINK("x") , "q", ; | é Ø 漢 😀 \u202e',
];

const decode = (bytes: Uint8Array): string => new TextDecoder().decode(bytes);

describe('hostile names through a whole package', () => {
  const base = gaugeDesign();
  const sound = checkDesign(
    {
      ...base,
      name: NAMES[0] ?? '',
      notes: NAMES.join('\n'),
      blades: base.blades.map((blade, i) => ({ ...blade, name: NAMES[1 + i] ?? '' })),
      grinder: { ...base.grinder, name: NAMES[3] ?? '' },
    },
    gaugeRegistry,
  );
  if (!sound.ok) throw new Error(JSON.stringify(sound.issues));
  const design = sound.value;
  let files: readonly PackageFile[] = [];
  beforeAll(async () => {
    const made = await makePackage(design, { registry: gaugeRegistry, fonts, acceptFailing: true });
    if (!made.ok) throw new Error(JSON.stringify(made.issues));
    files = made.value;
  });

  it('leaves every drawing well formed, with text and no script', () => {
    const svgs = files.filter(({ path }) => path.endsWith('.svg'));
    expect(svgs.length).toBeGreaterThan(3);
    for (const { path, bytes } of svgs) {
      const content = decode(bytes);
      expect(XMLValidator.validate(content), path).toBe(true);
      expect(JSON.stringify(new XMLParser({ ignoreAttributes: false }).parse(content))).not.toMatch(
        /"(?:script|img|@_on\w+)":/,
      );
    }
    expect(svgs.some(({ bytes }) => decode(bytes).includes('&lt;script&gt;'))).toBe(true);
  });

  it('keeps every cut file clean and every path plain', () => {
    const parts = gaugeRegistry.families['bevel-gauge']?.solve(design);
    const made = parts?.ok ? parts.value.parts() : undefined;
    expect(lintPackage(files, made?.ok ? made.value : [], 0)).toEqual([]);
    for (const { path } of files) expect(path).toMatch(/^[a-z0-9][\w./-]*$/);
    for (const { path, bytes } of files)
      if (path.endsWith('.dxf')) expect(decode(bytes)).toMatch(/^[\x20-\x7e\r\n\t]*$/);
  });

  it('carries the design through every format to the letter', () => {
    const carrying = files.filter(({ path }) => /\.(svg|pdf|dxf|jig\.json)$/.test(path));
    for (const { path, bytes } of carrying) {
      const opened = openAny(bytes, gaugeRegistry);
      expect(opened.ok && saveDesign(opened.value), path).toBe(saveDesign(design));
    }
  });
});

describe('archives', () => {
  const text = new TextEncoder().encode(saveDesign(gaugeDesign()));
  it.each([
    ['a path upwards', { '../design.jig.json': text }],
    ['an absolute path', { '/etc/passwd': text }],
    ['a drive', { 'C:\\x.json': text }],
    ['a prototype', { '__proto__/x': text }],
    ['a bomb', { 'x.json': new Uint8Array(30_000_000) }],
    ['no manifest', { 'design.jig.json': text }],
    ['nothing', {}],
  ])('with %s are refused in words', (_, entries) => {
    const { end, defects, ms } = tryFile('package', zipSync(entries));
    expect(defects).toEqual([]);
    expect(end).toBe('refused');
    expect(ms).toBeLessThan(2000);
  });
});

describe('damaged files', () => {
  it('of every format open or are refused, in time and without a trace', async () => {
    const whole = await wholeFiles();
    const random = seeded(7);
    for (const [name, bytes] of Object.entries(whole)) {
      expect(tryFile(name, bytes)).toMatchObject({ end: 'opened', defects: [] });
      for (let i = 0; i < 40; i += 1)
        expect(tryFile(name, mutated(random, bytes)).defects, `${name} ${String(i)}`).toEqual([]);
    }
  });
});
