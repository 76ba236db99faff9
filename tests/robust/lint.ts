import { XMLValidator } from 'fast-xml-parser';
import { lintDxf } from '../../src/export/lint/dxf.ts';
import { lintPrintMesh } from '../../src/export/lint/mesh.ts';
import type { PackageFile } from '../../src/export/index.ts';
import { boundingBox } from '../../src/geometry/loop-measure.ts';
import { kerfed } from '../../src/model/kerf.ts';
import type { Part } from '../../src/model/part.ts';

/** The mesh of a binary STL: 80 bytes, a count, then 50 bytes a triangle (12 numbers, 2 bytes). */
const meshOf = (bytes: Uint8Array) => {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const count = view.getUint32(80, true);
  const index = new Map<string, number>();
  const vertices: number[] = [];
  const triangles: number[] = [];
  for (let t = 0; t < count; t += 1)
    for (let corner = 0; corner < 3; corner += 1) {
      const at = 84 + 50 * t + 12 + 12 * corner;
      const point = [0, 4, 8].map((by) => view.getFloat32(at + by, true));
      const key = point.join(' ');
      if (!index.has(key)) {
        index.set(key, vertices.length / 3);
        vertices.push(...point);
      }
      triangles.push(index.get(key) ?? 0);
    }
  return { vertices: Float64Array.from(vertices), triangles: Uint32Array.from(triangles) };
};

/** A word for a number that is none, standing by itself in a file. */
const NO_NUMBER = /(?<![\w-])(?:NaN|-?Infinity|undefined)(?![\w-])/;

const textIssues = ({ path, bytes }: PackageFile): string[] => {
  const content = new TextDecoder().decode(bytes);
  const found: string[] = NO_NUMBER.test(content) ? [`${path}: not a number`] : [];
  if (path.endsWith('.svg') && XMLValidator.validate(content) !== true)
    found.push(`${path}: not well formed`);
  if (path.endsWith('.json')) JSON.parse(content);
  return found;
};

/** Everything wrong with the files of a package, read back one by one; empty for a clean one. */
export const lintPackage = (
  files: readonly PackageFile[],
  parts: readonly Part[],
  kerf: number,
): string[] =>
  files.flatMap((file) => {
    const { path, bytes } = file;
    if (path.endsWith('.dxf') && file.kind !== 'drawings') {
      // Their distances and counts are for the tests of nesting; the writer's own lint read them.
      if (path.startsWith('sheets/')) return textIssues(file);
      const part = parts.find(({ id }) => id === file.part);
      const profile = part?.layers[0]?.profile;
      if (part?.kind !== 'plate' || profile === undefined) return [`${path}: of no plate`];
      // A corner that is not square reaches out by more than half the kerf, so the beam's own
      // path gives the box; that it is right is for the tests of the kerf.
      const beam = kerfed(profile, part.process === 'saw-drill' ? 0 : kerf);
      if (!beam.ok) return [`${path}: written although the kerf does not fit`];
      const issues = lintDxf(new TextDecoder().decode(bytes), {
        flavour: path.includes('_r12') ? 'r12' : 'r2000',
        units: path.endsWith('_in.dxf') ? 'in' : 'mm',
        layers: path.includes('_engrave') ? ['CUT', 'ENGRAVE'] : ['CUT'],
        box: boundingBox(beam.value.outer),
      });
      return [
        ...issues.map(({ code, message }) => `${path}: ${code}: ${message}`),
        ...textIssues(file),
      ];
    }
    if (path.endsWith('.stl'))
      return lintPrintMesh(meshOf(bytes)).map(({ message }) => `${path}: ${message}`);
    return /\.(svg|csv|json)$/.test(path) ? textIssues(file) : [];
  });
