import { strToU8 } from 'fflate';
import { hasError, type Issue } from '../core/issue.ts';
import { fail, ok, type Result } from '../core/result.ts';
import { plain } from '../core/units.ts';
import type { Vec2 } from '../geometry/vector.ts';
import type { Mesh } from '../model/mesh.ts';
import { carried } from './carry.ts';
import { lintPrintMesh } from './lint/mesh.ts';
import { xmlText } from './xml.ts';
import { zip } from './zip.ts';

/** A part to print and how often. */
export interface PrintObject {
  readonly name: string;
  /** File-name safe identifier, the part number. */
  readonly id: string;
  readonly mesh: Mesh;
  /** What the lint says of the mesh, where it was asked already: several files carry one mesh. */
  readonly lint?: readonly Issue[];
  readonly quantity: number;
}

/** One copy of an object on the bed. */
export interface PrintItem {
  /** Number of the object in the list. */
  readonly object: number;
  /** Lower left corner of its box on the bed, mm. */
  readonly at: Vec2;
  /** Turned by a quarter about the upright, anticlockwise. */
  readonly turned: boolean;
}

export interface ThreeMfOptions {
  readonly title: string;
  /** Where every copy stands; without it the copies of each object stand in a row. */
  readonly items?: readonly PrintItem[];
  /** The design as text, to be found again by `extractDesign`. */
  readonly carry?: string;
}

/** Space between items on the bed, mm. */
const GAP = 5;

/** Path of the model in the package, by which a 3MF is known. */
export const MODEL_PATH = '3D/3dmodel.model';

const CORE = 'http://schemas.microsoft.com/3dmanufacturing/core/2015/02';
const HEAD = '<?xml version="1.0" encoding="UTF-8"?>\n';

const CONTENT_TYPES = `${HEAD}<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/></Types>\n`;

const RELATIONSHIPS = `${HEAD}<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Target="/${MODEL_PATH}" Id="model" Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"/></Relationships>\n`;

const meshXml = ({ vertices, triangles }: Mesh): string => {
  const lines: string[] = ['<mesh><vertices>'];
  for (let i = 0; i < vertices.length; i += 3) {
    const [x = 0, y = 0, z = 0] = vertices.subarray(i, i + 3);
    lines.push(`<vertex x="${plain(x)}" y="${plain(y)}" z="${plain(z)}"/>`);
  }
  lines.push('</vertices><triangles>');
  for (let i = 0; i < triangles.length; i += 3)
    lines.push(
      `<triangle v1="${triangles[i]}" v2="${triangles[i + 1]}" v3="${triangles[i + 2]}"/>`,
    );
  lines.push('</triangles></mesh>');
  return lines.join('\n');
};

const extent = ({ vertices }: Mesh, axis: 0 | 1): { low: number; size: number } => {
  const values = [...vertices].filter((_, i) => i % 3 === axis);
  const low = values.reduce((a, b) => Math.min(a, b), Infinity);
  return { low, size: values.reduce((a, b) => Math.max(a, b), -Infinity) - low };
};

/** A copy at its place on the bed. The format maps row vectors by a matrix of four rows. */
const buildItem = (mesh: Mesh, { object, at: [left, low], turned }: PrintItem): string => {
  const [x, y] = [extent(mesh, 0), extent(mesh, 1)];
  const shift = turned ? [left + y.low + y.size, low - x.low] : [left - x.low, low - y.low];
  const turn = turned ? '0 1 0 -1 0 0 0 0 1' : '1 0 0 0 1 0 0 0 1';
  const [dx = 0, dy = 0] = shift;
  return `<item objectid="${object + 1}" transform="${turn} ${plain(dx)} ${plain(dy)} 0"/>`;
};

/** One row of copies for each object, clear of each other; nothing is turned or lifted. */
const inRows = (objects: readonly PrintObject[]): PrintItem[] => {
  let row = 0;
  return objects.flatMap(({ mesh, quantity }, object) => {
    const low = row;
    row += extent(mesh, 1).size + GAP;
    const pitch = extent(mesh, 0).size + GAP;
    return Array.from({ length: quantity }, (_, copy): PrintItem => ({
      object,
      at: [copy * pitch, low],
      turned: false,
    }));
  });
};

/**
 * Printed parts as 3MF core 1.4: millimetres, vertices shared, one object a part and one build
 * item a copy, the design as metadata in a namespace of its own.
 */
export const threeMf = (
  objects: readonly PrintObject[],
  { title, carry, items = inRows(objects) }: ThreeMfOptions,
): Result<Uint8Array> => {
  const issues = objects.flatMap(({ id, mesh, lint = lintPrintMesh(mesh) }) =>
    lint.map((issue) => ({ ...issue, path: id })),
  );
  if (hasError(issues)) return fail(...issues);
  const model = [
    `${HEAD}<model unit="millimeter" xml:lang="en-GB" xmlns="${CORE}" xmlns:platenwright="urn:platenwright:design">`,
    `<metadata name="Title">${xmlText(title)}</metadata>`,
    '<metadata name="Application">Platenwright</metadata>',
    ...(carry === undefined
      ? []
      : [`<metadata name="platenwright:design">${carried(carry)}</metadata>`]),
    '<resources>',
    ...objects.map(
      ({ name, id, mesh }, i) =>
        `<object id="${i + 1}" type="model" name="${xmlText(name)}" partnumber="${xmlText(id)}">${meshXml(mesh)}</object>`,
    ),
    '</resources><build>',
    ...items.flatMap((item) => {
      const mesh = objects[item.object]?.mesh;
      return mesh === undefined ? [] : [buildItem(mesh, item)];
    }),
    '</build></model>\n',
  ].join('\n');
  return ok(
    zip([
      { path: '[Content_Types].xml', bytes: strToU8(CONTENT_TYPES) },
      { path: '_rels/.rels', bytes: strToU8(RELATIONSHIPS) },
      { path: MODEL_PATH, bytes: strToU8(model) },
    ]),
    issues,
  );
};
