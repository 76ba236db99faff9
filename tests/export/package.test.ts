import { createHash } from 'node:crypto';
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { carried, findCarried } from '../../src/export/carry.ts';
import { extractDesign } from '../../src/export/extract.ts';
import { plateDxf } from '../../src/export/dxf/index.ts';
import {
  readPackage,
  withManifest,
  zipPackage,
  type PackageFile,
} from '../../src/export/package.ts';
import { sha256 } from '../../src/export/sha256.ts';
import { threeMf } from '../../src/export/threemf.ts';
import { unzip } from '../../src/export/zip.ts';
import { hostile, plate, ring } from './samples.ts';

const files: PackageFile[] = [
  { path: 'design.jig.json', kind: 'design', bytes: strToU8(hostile) },
  {
    path: 'cut/base-plate_mm.dxf',
    kind: 'cut-file',
    part: 'base-plate',
    quantity: 2,
    bytes: strToU8('dxf'),
  },
];
const packed = (): Uint8Array =>
  zipPackage(withManifest(files, { design: 'paring', passed: true }));

describe('SHA-256', () => {
  it('gives the published digests', () => {
    // FIPS 180-4 examples (NIST): "abc", the empty message, the 448-bit message.
    expect(sha256(strToU8('abc'))).toBe(
      'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad',
    );
    expect(sha256(strToU8(''))).toBe(
      'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855',
    );
    expect(sha256(strToU8('abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq'))).toBe(
      '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
    );
  });
  it("agrees with the platform's at every length around a block", () => {
    for (const length of [1, 54, 55, 56, 57, 63, 64, 65, 119, 120, 1000]) {
      const bytes = Uint8Array.from({ length }, (_, i) => (i * 37) & 255);
      expect(sha256(bytes)).toBe(createHash('sha256').update(bytes).digest('hex'));
    }
  });
});

describe('package', () => {
  it('lists its files with their sums and is the same twice', () => {
    const entries = unzipSync(packed());
    expect(Object.keys(entries)).toEqual([
      'cut/base-plate_mm.dxf',
      'design.jig.json',
      'manifest.json',
    ]);
    const manifest: unknown = JSON.parse(new TextDecoder().decode(entries['manifest.json']));
    expect(manifest).toEqual({
      format: 'platenwright-package',
      schema: 1,
      design: 'paring',
      passed: true,
      files: [
        {
          path: 'cut/base-plate_mm.dxf',
          kind: 'cut-file',
          part: 'base-plate',
          quantity: 2,
          sha256: createHash('sha256').update('dxf').digest('hex'),
        },
        {
          path: 'design.jig.json',
          kind: 'design',
          sha256: createHash('sha256').update(hostile).digest('hex'),
        },
      ],
    });
    expect(packed()).toEqual(packed());
  });

  it('is read back, and its design with it', () => {
    const read = readPackage(packed());
    expect(read.ok && read.value.map((f) => f.path)).toEqual([
      'cut/base-plate_mm.dxf',
      'design.jig.json',
    ]);
    expect(extractDesign(packed())).toMatchObject({ ok: true, value: hostile });
  });

  it('is refused when a file was changed, dropped or added', () => {
    const entries = unzipSync(packed());
    for (const spoil of [
      { ...entries, 'design.jig.json': strToU8('{}') },
      { ...entries, 'extra.txt': strToU8('x') },
      Object.fromEntries(Object.entries(entries).filter(([path]) => path !== 'design.jig.json')),
    ])
      expect(readPackage(zipSync(spoil))).toMatchObject({
        ok: false,
        issues: [{ code: 'package-changed' }],
      });
    expect(readPackage(zipSync({ 'a.txt': strToU8('x') }))).toMatchObject({
      issues: [{ code: 'no-package' }],
    });
  });
});

describe('archives from elsewhere', () => {
  const code = (archive: Uint8Array): string | undefined => unzip(archive).issues[0]?.code;
  it('may not name files outside, hidden in the language, or absolutely', () => {
    for (const path of [
      '../x',
      'a/../../x',
      '/x',
      'a\\x',
      'C:/x',
      'a//b',
      'a\u0000b',
      'x'.repeat(300),
    ])
      expect([path, code(zipSync({ [path]: strToU8('x'), ok: strToU8('y') }))]).toEqual([
        path,
        'archive',
      ]);
  });
  it('may not name a file after the prototype of objects', () => {
    const archive = zipSync({ __pr0t0__: strToU8('x') });
    const renamed = strToU8(strFromU8(archive, true).replaceAll('__pr0t0__', '__proto__'), true);
    expect(code(renamed)).toBe('archive');
  });
  it('may not be bombs, endless lists, or rubbish', () => {
    expect(code(zipSync({ bomb: [new Uint8Array(20_000_000), { level: 9 }] }))).toBe('archive');
    const many = Object.fromEntries(
      Array.from({ length: 1001 }, (_, i) => [`f${i}`, new Uint8Array(1)]),
    );
    expect(code(zipSync(many))).toBe('archive');
    const cut = packed().slice(0, 100);
    for (const bytes of [cut, strToU8('PK rubbish'), new Uint8Array()])
      expect(code(bytes)).toBe('archive');
  });
  it('may not lie about their size', () => {
    const archive = zipSync({ a: [strToU8('a'.repeat(50_000)), { level: 9 }] });
    const view = new DataView(archive.buffer);
    // Uncompressed size in the central directory (APPNOTE 4.3.12, offset 24).
    let at = archive.length - 22;
    while (view.getUint32(at, true) !== 0x02014b50) at -= 1;
    view.setUint32(at + 24, 10, true);
    const read = unzip(archive);
    expect(read.ok ? (read.value.get('a')?.length ?? 0) : 0).toBeLessThanOrEqual(10);
  });
});

describe('carried designs', () => {
  it('are found in a DXF and a 3MF by content alone', () => {
    const dxf = plateDxf(plate(), { carry: hostile });
    expect(extractDesign(strToU8(dxf.ok ? dxf.value : ''))).toMatchObject({
      ok: true,
      value: hostile,
    });
    const print = threeMf([{ name: 'a', id: 'a', mesh: ring(8, 5, 2, 3), quantity: 1 }], {
      title: 'a',
      carry: hostile,
    });
    expect(extractDesign(print.ok ? print.value : new Uint8Array())).toMatchObject({
      ok: true,
      value: hostile,
    });
  });
  it('are refused, with a reason, when absent, damaged or too large', () => {
    const code = (content: string): string | undefined => findCarried(content).issues[0]?.code;
    expect(code('<svg/>')).toBe('no-design');
    expect(code('platenwright-design:====')).toBe('damaged');
    expect(code('platenwright-design:QUJD/w=')).toBe('damaged');
    expect(code(`platenwright-design:${'A'.repeat(2_000_000)}`)).toBe('too-large');
    expect(extractDesign(new Uint8Array(50_000_001))).toMatchObject({
      issues: [{ code: 'too-large' }],
    });
    expect(extractDesign(strToU8(carried('')))).toMatchObject({ issues: [{ code: 'no-design' }] });
  });
});
