import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { lintPrintMesh } from '../../src/export/lint/mesh.ts';
import { stl } from '../../src/export/stl.ts';
import type { Mesh } from '../../src/model/mesh.ts';
import { has, ring, ringVolume, run } from './samples.ts';

const mesh = ring(96, 20, 3.3, 12);
const bytes = (): Uint8Array => {
  const result = stl(mesh);
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
};
const codes = (spoiled: Mesh): string[] => lintPrintMesh(spoiled).map((i) => i.code);

describe('binary STL', () => {
  // Layout: 80-byte header that does not begin with "solid", count, 50 bytes a triangle
  // (published descriptions of the format, check values 7.2).
  it('has the published layout', () => {
    const file = bytes();
    const count = mesh.triangles.length / 3;
    expect(file.length).toBe(84 + 50 * count);
    expect(new TextDecoder().decode(file.subarray(0, 80))).not.toMatch(/^\s*solid/i);
    expect(new DataView(file.buffer).getUint32(80, true)).toBe(count);
  });

  it('holds unit outward normals, the volume and the box of the mesh', () => {
    const view = new DataView(bytes().buffer);
    let volume = 0;
    const low = [Infinity, Infinity, Infinity];
    for (let at = 84; at < view.byteLength; at += 50) {
      const v = Array.from({ length: 12 }, (_, i) => view.getFloat32(at + 4 * i, true));
      const [nx = 0, ny = 0, nz = 0, ax = 0, ay = 0, az = 0, bx = 0, by = 0, bz = 0] = v;
      const [cx = 0, cy = 0, cz = 0] = v.slice(9);
      expect(Math.hypot(nx, ny, nz)).toBeCloseTo(1, 5);
      const cross = [
        (by - ay) * (cz - az) - (bz - az) * (cy - ay),
        (bz - az) * (cx - ax) - (bx - ax) * (cz - az),
        (bx - ax) * (cy - ay) - (by - ay) * (cx - ax),
      ];
      expect(nx * (cross[0] ?? 0) + ny * (cross[1] ?? 0) + nz * (cross[2] ?? 0)).toBeGreaterThan(0);
      volume +=
        (ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx)) / 6;
      [0, 1, 2].forEach((k) => {
        low[k] = Math.min(low[k] ?? 0, v[3 + k] ?? 0, v[6 + k] ?? 0, v[9 + k] ?? 0);
      });
    }
    expect(Math.abs(volume / ringVolume(96, 20, 3.3, 12) - 1)).toBeLessThan(1e-6);
    expect(low[2]).toBe(0);
  });

  it('is the same twice', () => {
    expect(bytes()).toEqual(bytes());
  });
});

describe.skipIf(!has('admesh'))('second reader: admesh (needs admesh)', () => {
  it('finds one closed part of the right volume', () => {
    const file = join(mkdtempSync(join(tmpdir(), 'stl-')), 'part.stl');
    writeFileSync(file, bytes());
    const report = run('admesh', [file]);
    const number = (label: string): number =>
      Number(new RegExp(`${label}\\s*:\\s*(-?[\\d.]+)`).exec(report)?.[1] ?? NaN);
    expect(number('Number of parts')).toBe(1);
    for (const label of [
      'Total disconnected facets',
      'Degenerate facets',
      'Facets reversed',
      'Backwards edges',
      'Normals fixed',
      'Facets removed',
      'Facets added',
    ])
      expect([label, number(label)]).toEqual([label, 0]);
    expect(Math.abs(number('Volume') / ringVolume(96, 20, 3.3, 12) - 1)).toBeLessThan(1e-5);
  });
});

describe('each defect of a mesh is caught', () => {
  const changed = (
    change: (v: Float64Array, t: Uint32Array) => Partial<Mesh> | undefined,
  ): Mesh => {
    const copy = { vertices: mesh.vertices.slice(), triangles: mesh.triangles.slice() };
    return { ...copy, ...change(copy.vertices, copy.triangles) };
  };
  it('none in the sound one', () => {
    expect(codes(mesh)).toEqual([]);
  });
  it('a missing triangle', () => {
    expect(codes(changed((_, t) => ({ triangles: t.slice(3) })))).toEqual(['mesh-open']);
  });
  it('a flipped triangle', () => {
    expect(
      codes(
        changed((_, t) => {
          t.set([t[1] ?? 0, t[0] ?? 0], 0);
          return undefined;
        }),
      ),
    ).toEqual(['mesh-open']);
  });
  it('a solid inside out', () => {
    expect(codes(changed((_, t) => ({ triangles: t.slice().reverse() })))).toEqual([
      'mesh-inside-out',
    ]);
  });
  it('corners that single precision cannot tell apart', () => {
    expect(codes(ring(96, 1000, 3e-6, 12))).toContain('mesh-degenerate');
  });
  it('a part that floats or is sunk', () => {
    for (const lift of [0.01, -0.01])
      expect(
        codes(changed((v) => ({ vertices: v.map((x, i) => (i % 3 === 2 ? x + lift : x)) }))),
      ).toEqual(['mesh-bed']);
  });
  it('a corner that is no number, and nothing at all', () => {
    expect(codes(changed((v) => ({ vertices: v.fill(NaN, 5, 6) })))).toEqual(['mesh-number']);
    expect(codes({ vertices: new Float64Array(), triangles: new Uint32Array() })).toEqual([
      'mesh-empty',
    ]);
  });
});
