import { unzipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import DxfParser from 'dxf-parser';
import { registry } from '../../jigs/registry.ts';
import type { Making } from '../../src/document/schema.ts';
import { lintDxf } from '../../src/export/lint/dxf.ts';
import type { PackageFile } from '../../src/export/index.ts';
import { circle } from '../../src/geometry/loop.ts';
import { boundingBox } from '../../src/geometry/loop-measure.ts';
import { partSheets } from '../../src/drawing/part-sheets.ts';
import { titleBlock } from '../../src/make/files/title.ts';
import { plateFiles } from '../../src/make/files/plates.ts';
import { printFiles } from '../../src/make/files/prints.ts';
import type { Part, PrintPart } from '../../src/model/part.ts';
import { meshOf } from '../../src/model/solid.ts';
import { examplesOf, solved, valueOf } from '../family/examples.ts';

const designs = Object.keys(registry.families).map((family) => {
  const examples = examplesOf(family);
  const beamCut = examples.find(({ design }) => design.making.plates.process !== 'saw-drill');
  const example = beamCut ?? examples[0];
  if (!example) throw new Error(`${family} has no example`);
  return { ...example, parts: valueOf(solved(example).parts()) };
});

const nesting = (making: Making, change: Partial<Making['plates']['nest']> = {}): Making => ({
  ...making,
  plates: {
    ...making.plates,
    process: 'laser',
    inches: 'beside',
    nest: { ...making.plates.nest, sheets: 'beside', ...change },
  },
});

/** As a beam cuts them, whatever the example says. */
const beamCut = (parts: readonly Part[]): Part[] =>
  parts.map((part) => (part.kind === 'plate' ? { ...part, process: 'laser' } : part));

const sheetsOf = (files: readonly PackageFile[]): PackageFile[] =>
  files.filter(({ path }) => path.startsWith('sheets/'));
const textOf = ({ bytes }: PackageFile): string => new TextDecoder().decode(bytes);

interface Box {
  readonly low: readonly [number, number];
  readonly high: readonly [number, number];
}

/** Boxes of closed contours, arcs and all, as another reader reads them. */
const contourBoxes = (dxf: string): Box[] =>
  (
    (new DxfParser().parseSync(dxf)?.entities ?? []) as unknown as {
      vertices?: { x: number; y: number; bulge?: number }[];
      center?: { x: number; y: number };
      radius?: number;
    }[]
  ).map(({ vertices, center, radius = 0 }) => {
    if (center)
      return {
        low: [center.x - radius, center.y - radius],
        high: [center.x + radius, center.y + radius],
      };
    const at = vertices ?? [];
    const reach = at.flatMap((v, i) => {
      const next = at[(i + 1) % at.length] ?? v;
      // The farthest a bulge can reach beyond its chord: sagitta = bulge * chord / 2.
      const s = (Math.abs(v.bulge ?? 0) * Math.hypot(next.x - v.x, next.y - v.y)) / 2;
      return s > 3 ? [{ x: (v.x + next.x) / 2, y: (v.y + next.y) / 2, s }] : [];
    });
    const xs = [...at.map(({ x }) => x), ...reach.flatMap(({ x, s }) => [x - s, x + s])];
    const ys = [...at.map(({ y }) => y), ...reach.flatMap(({ y, s }) => [y - s, y + s])];
    return { low: [Math.min(...xs), Math.min(...ys)], high: [Math.max(...xs), Math.max(...ys)] };
  });

const inside = (a: Box, b: Box): boolean =>
  ([0, 1] as const).every((axis) => a.low[axis] > b.low[axis] && a.high[axis] < b.high[axis]);

describe.each(designs)('nested sheets of $file', ({ design, parts }) => {
  const making = nesting(design.making);
  const files = sheetsOf(valueOf(plateFiles(beamCut(parts), making, 'x')));
  const plates = parts.flatMap((part) => (part.kind === 'plate' ? [part] : []));

  it('hold every plate as often as it is wanted, within the margin', () => {
    const plain = files.filter(({ path }) => !/_r12|_engrave|_in\.dxf/.test(path));
    const boxes = plain.map((file) => contourBoxes(textOf(file)));
    const outer = boxes.flatMap((all) => all.filter((box) => !all.some((b) => inside(box, b))));
    expect(outer).toHaveLength(plates.reduce((sum, { quantity }) => sum + quantity, 0));
    const { width, height, margin } = making.plates.nest;
    for (const { low, high } of outer) {
      expect(Math.min(...low)).toBeGreaterThan(margin - 0.001);
      expect(high[0]).toBeLessThan(width - margin + 0.001);
      expect(high[1]).toBeLessThan(height - margin + 0.001);
    }
    // Sizes of the boxes, either way round, are those of the plates.
    const sizes = (list: readonly Box[]): string[] =>
      list
        .map(({ low, high }) => [high[0] - low[0], high[1] - low[1]].sort((a, b) => a - b))
        .map((pair) => pair.map((x) => x.toFixed(2)).join(' x '))
        .sort();
    const wanted = plates.flatMap((part) => {
      const outline = part.layers[0]?.profile.outer;
      if (outline === undefined) return [];
      const { min, max } = boundingBox(outline);
      return Array.from({ length: part.quantity }, (): Box => ({ low: min, high: max }));
    });
    expect(sizes(outer)).toEqual(sizes(wanted));
  });

  it('say in their names what they are cut from, in both flavours and in inches', () => {
    for (const { path } of files)
      expect(path).toMatch(/^sheets\/[a-z-]+-[\d.]+mm-\d+(_r12|_engrave)?_(mm|in)\.dxf$/);
    for (const ending of ['_mm.dxf', '_r12_mm.dxf', '_in.dxf'])
      expect(files.some(({ path }) => path.endsWith(ending))).toBe(true);
    expect(textOf(files[0] as PackageFile)).toContain('gap 5 mm, margin 10 mm');
  });

  it('refuse a part that fits on no sheet, by its name', () => {
    const small = plateFiles(
      beamCut(parts),
      nesting(design.making, { width: 130, height: 100 }),
      'x',
    );
    expect(small.ok).toBe(false);
    expect(small.issues[0]).toMatchObject({ code: 'nest-too-large', path: 'making.plates.nest' });
    const said = small.issues.map(({ message }) => message).join('\n');
    for (const { name, layers } of plates) {
      const { min, max } = boundingBox(layers[0]?.profile.outer ?? circle([0, 0], 1));
      const sides = [max[0] - min[0], max[1] - min[1]].sort((a, b) => a - b);
      // Room for 110 by 80 mm, either way round.
      const fits = (sides[0] ?? 0) <= 80 && (sides[1] ?? 0) <= 110;
      expect([name, said.includes(`${name} measures`)]).toEqual([name, !fits]);
    }
  });

  it('are written only where they are asked for', () => {
    const { making } = design;
    const alone = { ...making.plates, nest: { ...making.plates.nest, sheets: 'no' as const } };
    const made = (plates: Making['plates']) =>
      sheetsOf(valueOf(plateFiles(parts, { ...making, plates }, 'x')));
    expect(made(alone)).toEqual([]);
    // One worked design ships them.
    expect(made(making.plates).length > 0).toBe(design.name.startsWith('Camp'));
  });
});

describe('the lint of a sheet', () => {
  it('names parts that are too near to each other or to the edge, and a wrong count', () => {
    const [first] = designs;
    if (!first) throw new Error('no design');
    const file = sheetsOf(
      valueOf(plateFiles(beamCut(first.parts), nesting(first.design.making), 'x')),
    )[0];
    if (!file) throw new Error('no sheet');
    const boxes = contourBoxes(textOf(file));
    const outer = boxes.filter((box) => !boxes.some((b) => inside(box, b)));
    const expected = {
      flavour: 'r2000',
      units: 'mm',
      layers: ['CUT'],
      box: {
        min: [
          Math.min(...outer.map(({ low }) => low[0])),
          Math.min(...outer.map(({ low }) => low[1])),
        ],
        max: [
          Math.max(...outer.map(({ high }) => high[0])),
          Math.max(...outer.map(({ high }) => high[1])),
        ],
      },
      parts: outer.length,
    } as const;
    const found = (sheet: { gap: number; margin: number }, parts = outer.length): string[] =>
      lintDxf(textOf(file), { ...expected, parts, sheet: { size: [1000, 500], ...sheet } }).map(
        ({ code }) => code,
      );
    expect(found({ gap: 5, margin: 10 })).toEqual([]);
    expect(found({ gap: 5, margin: 10.1 })).toContain('dxf-margin');
    expect(found({ gap: 400, margin: 10 })).toContain('dxf-gap');
    expect(found({ gap: 5, margin: 10 }, outer.length + 1)).toContain('dxf-outer');
  });
});

const model = ({ bytes }: PackageFile): string =>
  new TextDecoder().decode(unzipSync(bytes)['3D/3dmodel.model']);

/** Every object with its vertices, and every item with its object and matrix (3MF core, 3.3). */
const read = (xml: string) => ({
  objects: [
    ...xml.matchAll(/<object id="(\d+)" type="model" name="([^"]+)"[^>]*>([^]*?)<\/object>/g),
  ].map(([, id, name, mesh = '']) => ({
    id,
    name,
    vertices: [...mesh.matchAll(/<vertex x="([^"]+)" y="([^"]+)" z="([^"]+)"/g)].map((v) =>
      v.slice(1).map(Number),
    ),
  })),
  items: [...xml.matchAll(/<item objectid="(\d+)" transform="([^"]+)"/g)].map(
    ([, id, matrix = '']) => ({
      id,
      matrix: matrix.split(' ').map(Number),
    }),
  ),
});

describe.each(designs)('prints of $file', ({ design, parts }) => {
  const files = valueOf(printFiles(parts, design.making, 'x'));
  const prints = parts.flatMap((part) => (part.kind === 'print' ? [part] : []));

  it('stand on their beds in their number, apart, upright and named', () => {
    const beds = files
      .filter(({ path }) => path.startsWith('prints/bed-'))
      .map((f) => read(model(f)));
    expect(beds.length > 0).toBe(prints.length > 0);
    const names = beds.flatMap(({ objects, items }) =>
      items.map((item) => objects.find(({ id }) => id === item.id)?.name),
    );
    expect(names.sort()).toEqual(
      prints.flatMap(({ name, quantity }) => Array.from({ length: quantity }, () => name)).sort(),
    );
    for (const { objects, items } of beds) {
      const boxes = items.map(({ id, matrix: m }): Box => {
        const at = (objects.find((one) => one.id === id)?.vertices ?? []).map(
          ([x = 0, y = 0, z = 0]) =>
            [0, 1, 2].map(
              (k) => x * (m[k] ?? 0) + y * (m[3 + k] ?? 0) + z * (m[6 + k] ?? 0) + (m[9 + k] ?? 0),
            ),
        );
        const of = (axis: number): number[] => at.map((p) => p[axis] ?? NaN);
        expect(Math.min(...of(2))).toBeCloseTo(0, 6);
        return {
          low: [Math.min(...of(0)), Math.min(...of(1))],
          high: [Math.max(...of(0)), Math.max(...of(1))],
        };
      });
      const { width, depth } = design.making.prints.bed;
      boxes.forEach((box, i) => {
        expect(Math.min(...box.low)).toBeGreaterThan(4.99);
        expect(box.high[0]).toBeLessThan(width - 4.99);
        expect(box.high[1]).toBeLessThan(depth - 4.99);
        for (const other of boxes.slice(i + 1))
          expect(
            ([0, 1] as const).some(
              (axis) =>
                other.low[axis] - box.high[axis] > 4.99 || box.low[axis] - other.high[axis] > 4.99,
            ),
          ).toBe(true);
      });
    }
  });

  it('have round holes whose largest inscribed circle is the nominal one with its play', () => {
    const distance = (
      p: readonly number[],
      q: readonly number[],
      [x, y]: readonly [number, number],
    ): number => {
      const [ax = 0, ay = 0, bx = 0, by = 0] = [...p.slice(0, 2), ...q.slice(0, 2)];
      const t =
        ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / ((bx - ax) ** 2 + (by - ay) ** 2 || 1);
      const k = Math.min(1, Math.max(0, t));
      return Math.hypot(x - ax - k * (bx - ax), y - ay - k * (by - ay));
    };
    const holes = prints.flatMap((part: PrintPart) => part.holes.map((hole) => ({ part, hole })));
    for (const { part, hole } of holes) {
      const mesh = valueOf(meshOf(part.layers));
      const v = Float32Array.from(mesh.vertices);
      const corner = (i: number): number[] => [...v.subarray(3 * i, 3 * i + 3)];
      const near = [...mesh.triangles].flatMap((a, i, all) => {
        const b = all[i % 3 === 2 ? i - 2 : i + 1] ?? a;
        const [p, q] = [corner(a), corner(b)];
        const level = p[2] === 0 && q[2] === 0;
        const about = Math.hypot((p[0] ?? 0) - hole.at[0], (p[1] ?? 0) - hole.at[1]);
        return level && about < 0.55 * hole.size ? [distance(p, q, hole.at)] : [];
      });
      if (hole.slotLength === undefined && near.length > 0)
        expect(2 * Math.min(...near)).toBeGreaterThan(hole.size - 1e-4);
    }
  });

  it('come with a fit coupon and the words to read it', () => {
    const coupon = files.filter(({ kind }) => kind === 'fit-coupon').map(({ path }) => path);
    const openings = prints.some(({ layers }) =>
      layers.some(({ profile }) => profile.holes.length > 0),
    );
    expect(coupon).toEqual(
      openings
        ? ['prints/fit-coupon_mm.3mf', 'prints/fit-coupon_mm.stl', 'prints/fit-coupon.txt']
        : [],
    );
    const bytesOf = (ending: string): Uint8Array | undefined =>
      files.find(({ path }) => path === `prints/fit-coupon${ending}`)?.bytes;
    const [solid, words] = [bytesOf('_mm.stl'), bytesOf('.txt')];
    if (!solid || !words) return;
    // A binary STL: 84 bytes before the facets, 50 a facet, its corners 12 bytes in.
    const view = new DataView(solid.buffer, solid.byteOffset);
    const most = [0, 4].map((axis) =>
      Math.max(
        ...Array.from({ length: view.getUint32(80, true) }, (_, i) =>
          [0, 12, 24].map((corner) => view.getFloat32(84 + 50 * i + 12 + corner + axis, true)),
        ).flat(),
      ),
    );
    const [, ...told] =
      /([\d.]+) mm by ([\d.]+) mm over all/.exec(new TextDecoder().decode(words)) ?? [];
    expect(told.map(Number)).toHaveLength(2);
    told.forEach((size, i) => expect(Math.abs(Number(size) - (most[i] ?? 0))).toBeLessThan(0.06));
  });
});

describe('a printer that reaches less high than a print', () => {
  const first = designs.find(({ parts }) => parts.some(({ id }) => id === 'knob'));
  if (!first) throw new Error('no design');
  const { prints } = first.design.making;
  const heights = first.parts.flatMap(({ kind, name, layers }) =>
    kind === 'print' ? [{ name, height: Math.max(...layers.map(({ to }) => to)) }] : [],
  );
  const highest = Math.max(...heights.map(({ height }) => height));
  const made = (height: number) =>
    printFiles(
      first.parts,
      { ...first.design.making, prints: { ...prints, bed: { ...prints.bed, height } } },
      'x',
    );
  const low = (height: number) => made(height).issues.filter(({ code }) => code === 'bed-too-low');

  it('has that print named and left off its beds, and no print that it reaches', () => {
    expect(low(highest)).toEqual([]);
    const tall = heights.filter(({ height }) => height > highest - 0.5);
    const issues = low(highest - 0.5);
    expect(issues.map(({ severity, path }) => [severity, path])).toEqual(
      tall.map(() => ['warning', 'making.prints.bed.height']),
    );
    const beds = valueOf(made(highest - 0.5)).filter(({ kind }) => kind === 'print-bed');
    const names = beds.flatMap((bed) => read(model(bed)).objects.map(({ name }) => name));
    for (const { name } of tall) {
      expect(issues.some(({ message }) => message.includes(name))).toBe(true);
      expect(names).not.toContain(name);
    }
    expect(names.length).toBeGreaterThan(0);
  });
});

describe('fits', () => {
  const [first] = examplesOf('spine-rest');
  if (!first) throw new Error('no design');
  const knobBore = (prints: Partial<Making['prints']>): number => {
    const { making } = first.design;
    const design = {
      ...first.design,
      making: { ...making, prints: { ...making.prints, ...prints } },
    };
    const knob = valueOf(solved({ ...first, design }).parts()).find(({ id }) => id === 'knob');
    return knob?.kind === 'print' ? (knob.holes[0]?.size ?? NaN) : NaN;
  };
  const play = { clearance: 0.45, close: 0.25, press: -0.1 };

  it('are a class with a value a printer: a bore for M6 is 6.6 mm (ISO 273, medium) and the play', () => {
    for (const fit of ['clearance', 'close', 'press'] as const)
      expect(knobBore({ fit, play })).toBeCloseTo(6.6 + play[fit], 9);
  });
});

describe('a kerf', () => {
  const [first] = designs;
  if (!first) throw new Error('no design');
  const { design } = first;
  const making = { ...design.making, plates: { ...design.making.plates, kerf: 0.3 } };
  const plate = beamCut(first.parts).find(({ kind }) => kind === 'plate');

  it('is told by name and comment of the cut file and by a note on the drawing', () => {
    const files = valueOf(plateFiles(plate ? [plate] : [], making, 'x'));
    expect(files.length).toBeGreaterThan(1);
    for (const file of files) {
      expect(file.path).toContain('_kerf0.3_mm.dxf');
      expect(textOf(file)).toContain('Kerf of 0.3 mm applied');
    }
    const block = titleBlock({ ...design, making }, 'x');
    const said = plate
      ? partSheets(plate, block)
          .map((sheet) => JSON.stringify(sheet))
          .join()
      : '';
    const words = [...said.matchAll(/"text":"([^"]*)"/g)].map(([, word]) => word).join(' ');
    expect(words).toContain('allow for a kerf of 0.3 mm');
    expect(words).not.toContain('no kerf is allowed for');
  });
});
