import { unzipSync } from 'fflate';
import { XMLParser, XMLValidator } from 'fast-xml-parser';
import { describe, expect, it } from 'vitest';
import { findCarried } from '../../src/export/carry.ts';
import { threeMf } from '../../src/export/threemf.ts';
import { hostile, ring } from './samples.ts';

const write = (carry?: string): Uint8Array => {
  const result = threeMf(
    [
      { name: `Edge stop ${hostile}`, id: 'edge-stop', mesh: ring(48, 20, 3.3, 12), quantity: 2 },
      { name: 'Spacer', id: 'spacer', mesh: ring(12, 8, 2, 5), quantity: 1 },
    ],
    { title: hostile, ...(carry === undefined ? {} : { carry }) },
  );
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
};
const entry = (path: string): string =>
  new TextDecoder().decode(unzipSync(write(hostile))[path] ?? new Uint8Array());
const model = entry('3D/3dmodel.model');

type Node = Record<string, unknown> & { ':@'?: Record<string, string> };
const tree = new XMLParser({
  preserveOrder: true,
  ignoreAttributes: false,
  attributeNamePrefix: '',
  ignoreDeclaration: true,
  trimValues: false,
}).parse(model) as Node[];
const nameOf = (node: Node): string => Object.keys(node).find((key) => key !== ':@') ?? '';
const children = (node: Node): Node[] =>
  (node[nameOf(node)] as Node[]).filter((child) => nameOf(child) !== '#text');

/**
 * The published core schema (3MF Consortium, spec_core, "core 1_2_2.xsd"), transcribed for the
 * elements that are written: children in their order, attributes with their types.
 */
const id = /^[1-9]\d{0,9}$/;
const index = /^\d{1,10}$/;
const real = /^[-+]?(\d+(\.\d+)?|\.\d+)([eE][-+]?\d+)?$/;
const any = /^[^]*$/;
const SCHEMA: Record<
  string,
  { children: string; required: string[]; attributes: Record<string, RegExp> }
> = {
  model: {
    children: '(metadata )*resources build ',
    required: [],
    attributes: {
      unit: /^(micron|millimeter|centimeter|inch|foot|meter)$/,
      'xml:lang': any,
      requiredextensions: any,
      xmlns: any,
      'xmlns:platenwright': any,
    },
  },
  metadata: {
    children: '',
    required: ['name'],
    attributes: { name: /^([\w.-]+:)?[A-Za-z_][\w.-]*$/ },
  },
  resources: { children: '(object )*', required: [], attributes: {} },
  object: {
    children: '(metadatagroup )?mesh ',
    required: ['id'],
    attributes: {
      id,
      type: /^(model|solidsupport|support|surface|other)$/,
      partnumber: any,
      name: any,
    },
  },
  mesh: { children: 'vertices triangles ', required: [], attributes: {} },
  vertices: { children: '(vertex ){3,}', required: [], attributes: {} },
  vertex: { children: '', required: ['x', 'y', 'z'], attributes: { x: real, y: real, z: real } },
  triangles: { children: '(triangle )+', required: [], attributes: {} },
  triangle: {
    children: '',
    required: ['v1', 'v2', 'v3'],
    attributes: { v1: index, v2: index, v3: index },
  },
  build: { children: '(item )*', required: [], attributes: {} },
  item: {
    children: '',
    required: ['objectid'],
    attributes: { objectid: id, transform: /^(\S+ ){11}\S+$/ },
  },
};

const validate = (node: Node): string[] => {
  const name = nameOf(node);
  const rule = SCHEMA[name];
  if (rule === undefined) return [`element ${name} is not in the schema`];
  const attributes = node[':@'] ?? {};
  const order = children(node)
    .map((child) => `${nameOf(child)} `)
    .join('');
  return [
    ...(new RegExp(`^${rule.children}$`).test(order) ? [] : [`children of ${name}`]),
    ...rule.required.filter((key) => !(key in attributes)).map((key) => `${name} lacks ${key}`),
    ...Object.entries(attributes).flatMap(([key, value]) =>
      rule.attributes[key]?.test(value) ? [] : [`${name} ${key}="${value}"`],
    ),
    ...children(node).flatMap(validate),
  ];
};

describe('3MF', () => {
  it('is an OPC package with the model as its start part', () => {
    expect(Object.keys(unzipSync(write()))).toEqual([
      '[Content_Types].xml',
      '_rels/.rels',
      '3D/3dmodel.model',
    ]);
    expect(entry('[Content_Types].xml')).toContain(
      'Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"',
    );
    expect(entry('_rels/.rels')).toContain('Target="/3D/3dmodel.model"');
    expect(entry('_rels/.rels')).toContain(
      'Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"',
    );
  });

  it('is well formed and has the shape of the published core schema', () => {
    for (const path of ['[Content_Types].xml', '_rels/.rels', '3D/3dmodel.model'])
      expect(XMLValidator.validate(entry(path))).toBe(true);
    const [root] = tree;
    expect(root?.[':@']).toMatchObject({
      unit: 'millimeter',
      xmlns: 'http://schemas.microsoft.com/3dmanufacturing/core/2015/02',
    });
    expect(root && validate(root)).toEqual([]);
  });

  it('shares vertices, keeps to their count and names objects by their part', () => {
    const parser = new XMLParser({ ignoreAttributes: false, attributeNamePrefix: '' });
    const parsed = parser.parse(model) as {
      model: {
        resources: {
          object: {
            name: string;
            partnumber: string;
            type: string;
            mesh: {
              vertices: { vertex: object[] };
              triangles: { triangle: Record<string, string>[] };
            };
          }[];
        };
        build: { item: { objectid: string; transform: string }[] };
      };
    };
    const objects = parsed.model.resources.object;
    expect(objects.map((o) => [o.partnumber, o.type])).toEqual([
      ['edge-stop', 'model'],
      ['spacer', 'model'],
    ]);
    expect(objects[1]?.name).toBe('Spacer');
    expect(objects[0]?.mesh.vertices.vertex).toHaveLength(4 * 48);
    expect(objects[0]?.mesh.triangles.triangle).toHaveLength(8 * 48);
    // Every edge in exactly two triangles, once in each direction, by vertex index.
    const edges = objects[0]?.mesh.triangles.triangle.flatMap(({ v1, v2, v3 }) => [
      `${v1} ${v2}`,
      `${v2} ${v3}`,
      `${v3} ${v1}`,
    ]);
    const known = new Set(edges);
    expect(known.size).toBe(edges?.length);
    for (const edge of known) expect(known.has(edge.split(' ').reverse().join(' '))).toBe(true);
    expect(parsed.model.build.item.map((item) => item.objectid)).toEqual(['1', '1', '2']);
  });

  it('lays copies and parts clear of each other, not turned and not lifted', () => {
    const items = [...model.matchAll(/transform="1 0 0 0 1 0 0 0 1 (\S+) (\S+) (\S+)"/g)].map(
      ([, ...shift]) => shift.map(Number),
    );
    // Lower left corners of the boxes: rings of radius 20 and 8 about (50, 40).
    const corners = items.map(([x = 0, y = 0], i) => (i < 2 ? [x + 30, y + 20] : [x + 42, y + 32]));
    expect(corners).toEqual([
      [0, 0],
      [45, 0],
      [0, 45],
    ]);
    expect(items.every(([, , z]) => z === 0)).toBe(true);
  });

  it('turns a copy anticlockwise, its box where it is said to stand', () => {
    // A ring of radius 8 about (50, 40), stretched: from (34, 32) to (66, 48), 32 long and 16 wide.
    const mesh = ring(12, 8, 2, 5);
    const vertices = mesh.vertices.map((v, i) => (i % 3 === 0 ? 2 * v - 50 : v));
    const made = threeMf([{ name: 'x', id: 'x', mesh: { ...mesh, vertices }, quantity: 1 }], {
      title: 'x',
      items: [{ object: 0, at: [100, 200], turned: true }],
    });
    if (!made.ok) throw new Error(JSON.stringify(made.issues));
    const written = new TextDecoder().decode(unzipSync(made.value)['3D/3dmodel.model']);
    const [, told = ''] = /<item [^>]*transform="([^"]*)"/.exec(written) ?? [];
    const m = told.split(' ').map(Number);
    // 3MF core 1.3, 3.3: a row vector (x y z 1) times the matrix of four rows of three.
    const at = (column: number, p: readonly number[]): number =>
      [0, 1, 2].reduce((sum, row) => sum + (p[row] ?? 0) * (m[3 * row + column] ?? 0), 0) +
      (m[9 + column] ?? 0);
    const points = Array.from({ length: vertices.length / 3 }, (_, i) => [
      ...vertices.subarray(3 * i, 3 * i + 3),
    ]);
    const ranges = [0, 1].map((column) => {
      const all = points.map((p) => at(column, p));
      return [Math.min(...all), Math.max(...all)];
    });
    const [[left, right], [low, high]] = ranges as [number[], number[]] as [
      [number, number],
      [number, number],
    ];
    expect(left).toBeCloseTo(100, 4);
    expect(right).toBeCloseTo(116, 4);
    expect(low).toBeCloseTo(200, 4);
    expect(high).toBeCloseTo(232, 4);
    // A quarter turn anticlockwise: what pointed along x points along y, and is not mirrored.
    expect(m.slice(0, 9)).toEqual([0, 1, 0, -1, 0, 0, 0, 0, 1]);
  });

  it('carries the design', () => {
    expect(findCarried(model)).toMatchObject({ ok: true, value: hostile });
  });

  it('is the same twice, stamped with the first moment a zip can say', () => {
    expect(write(hostile)).toEqual(write(hostile));
    // Local file header, bytes 10 to 13: time and date as year - 1980, month, day (APPNOTE 4.4.6).
    const stamp = new DataView(write().buffer).getUint32(10, true);
    expect([stamp >>> 25, (stamp >>> 21) & 15, (stamp >>> 16) & 31, stamp & 0xffff]).toEqual([
      0, 1, 1, 0,
    ]);
  });

  it('is not written for a part that leaks or floats, and says which', () => {
    const sound = ring(12, 8, 2, 5);
    const floating = {
      ...sound,
      vertices: sound.vertices.map((v, i) => (i % 3 === 2 ? v + 1 : v)),
    };
    const parts = [sound, floating].map((mesh, i) => ({
      name: 'x',
      id: `part-${i}`,
      mesh,
      quantity: 1,
    }));
    expect(threeMf(parts, { title: 'x' })).toMatchObject({
      ok: false,
      issues: [{ code: 'mesh-bed', path: 'part-1' }],
    });
  });

  it('escapes what a name may hold', () => {
    expect(model).not.toContain('<script>');
    expect(model).toContain('&lt;script&gt;');
  });
});
