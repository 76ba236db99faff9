import type { Vec2 } from '../../geometry/vector.ts';
import { usedLayers, type Entity, type LayerStyle } from './entity.ts';
import { HANDLE, tables } from './tables.ts';
import { angle, handle, integer, real, section, serialise, string, type Tag } from './tags.ts';

const block = (name: string, own: number, end: number, owner: number): Tag[] => [
  [0, 'BLOCK'],
  handle(5, own),
  handle(330, owner),
  [100, 'AcDbEntity'],
  [8, '0'],
  [100, 'AcDbBlockBegin'],
  [2, name],
  integer(70, 0),
  ...point(0, [0, 0]),
  [3, name],
  [1, ''],
  [0, 'ENDBLK'],
  handle(5, end),
  handle(330, owner),
  [100, 'AcDbEntity'],
  [8, '0'],
  [100, 'AcDbBlockEnd'],
];

/** The groups of the entity's point number `which`, at height 0. */
const point = (which: number, [x, y]: Vec2): Tag[] => [
  real(10 + which, x),
  real(20 + which, y),
  real(30 + which, 0),
];

/**
 * Text in the alphabet of the format: diameter, degree and plus-minus by their codes, other
 * characters beyond ASCII by number; what would read as a code is written by number too.
 */
const encoded = (text: string): string =>
  text
    .replace(/%(?=%)/g, '%%037')
    .replace(/\\(?=U\+)/g, '\\U+005C')
    .replace(/[Ø⌀]/g, '%%c')
    .replace(/°/g, '%%d')
    .replace(/±/g, '%%p')
    .replace(
      /[\u0080-\uFFFF]/g,
      (c) => `\\U+${c.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}`,
    );

/** The corners of an open polyline. */
const courseOf = (points: readonly Vec2[]): Tag[] => {
  const tags: Tag[] = [];
  for (const [x, y] of points) tags.push(real(10, x), real(20, y));
  return tags;
};

/** Type, subclass and groups of an entity. */
const body = (entity: Entity): [type: string, subclass: string, groups: Tag[]] => {
  switch (entity.kind) {
    case 'circle':
      return ['CIRCLE', 'AcDbCircle', [...point(0, entity.centre), real(40, entity.radius)]];
    case 'line':
      return ['LINE', 'AcDbLine', [...point(0, entity.a), ...point(1, entity.b)]];
    case 'contour':
      return [
        'LWPOLYLINE',
        'AcDbPolyline',
        [
          integer(90, entity.vertices.length),
          integer(70, 1),
          ...entity.vertices.flatMap((v) => [
            real(10, v.x),
            real(20, v.y),
            ...(v.bulge === 0 ? [] : [real(42, v.bulge)]),
          ]),
        ],
      ];
    case 'polyline':
      return [
        'LWPOLYLINE',
        'AcDbPolyline',
        [integer(90, entity.points.length), integer(70, 0), ...courseOf(entity.points)],
      ];
    case 'arc':
      return [
        'ARC',
        'AcDbCircle',
        [
          ...point(0, entity.centre),
          real(40, entity.radius),
          [100, 'AcDbArc'],
          angle(50, entity.from),
          angle(51, entity.to),
        ],
      ];
    case 'triangle':
      // A solid has four corners; a triangle repeats its third.
      return [
        'SOLID',
        'AcDbTrace',
        [
          ...point(0, entity.points[0]),
          ...point(1, entity.points[1]),
          ...point(2, entity.points[2]),
          ...point(3, entity.points[2]),
        ],
      ];
    case 'text':
      return [
        'TEXT',
        'AcDbText',
        [
          ...point(0, entity.at),
          real(40, entity.height),
          string(1, encoded(entity.text)),
          angle(50, entity.angle),
          [7, entity.style],
          integer(72, { left: 0, centre: 1, right: 2 }[entity.align]),
          ...(entity.align === 'left' ? [] : point(1, entity.at)),
          [100, 'AcDbText'],
        ],
      ];
  }
};

const entityTags = (entity: Entity, index: number): Tag[] => {
  const [type, subclass, groups] = body(entity);
  return [
    [0, type],
    handle(5, HANDLE.entities + index),
    handle(330, HANDLE.modelRecord),
    [100, 'AcDbEntity'],
    [8, entity.layer],
    [100, subclass],
    ...groups,
  ];
};

const dictionary = (own: number, owner: number, entries: readonly Tag[]): Tag[] => [
  [0, 'DICTIONARY'],
  handle(5, own),
  handle(330, owner),
  [100, 'AcDbDictionary'],
  integer(281, 1),
  ...entries,
];

/**
 * A drawing in the 2000 version of the format (AC1015): closed lightweight polylines with
 * bulges, circles and lines; units stated; comments first. Structure after the published DXF
 * reference (tables, block records, root dictionary), nothing optional.
 *
 * Written here and not by a library: the one that was tried counts handles over the life of the
 * process, so that no two files are alike, puts the layer into the wrong subclass, names blocks
 * instead of block records as owners, and writes neither comments nor the oldest version.
 */
export const writeR2000 = (
  entities: readonly Entity[],
  layers: readonly LayerStyle[],
  units: 'mm' | 'in',
  comments: readonly string[],
): string => {
  const used = usedLayers(layers, entities);
  const hasText = entities.some(({ kind }) => kind === 'text');
  const before = serialise([
    ...comments.map((comment) => string(999, comment)),
    ...section('HEADER', [
      [9, '$ACADVER'],
      [1, 'AC1015'],
      [9, '$DWGCODEPAGE'],
      [3, 'ANSI_1252'],
      [9, '$HANDSEED'],
      handle(5, HANDLE.entities + entities.length),
      [9, '$INSUNITS'],
      integer(70, units === 'mm' ? 4 : 1),
      [9, '$MEASUREMENT'],
      integer(70, units === 'mm' ? 1 : 0),
    ]),
    ...section('CLASSES', []),
    ...section('TABLES', tables(used, hasText)),
    ...section('BLOCKS', [
      ...block('*Model_Space', HANDLE.modelBlock, HANDLE.modelEnd, HANDLE.modelRecord),
      ...block('*Paper_Space', HANDLE.paperBlock, HANDLE.paperEnd, HANDLE.paperRecord),
    ]),
    [0, 'SECTION'],
    [2, 'ENTITIES'],
  ]);
  // A drawing has a hundred thousand groups of entities: none is kept longer than it is written.
  let drawn = '';
  for (let i = 0; i < entities.length; i += 1)
    drawn += serialise(entityTags(entities[i] as Entity, i));
  const after = serialise([
    [0, 'ENDSEC'],
    ...section('OBJECTS', [
      ...dictionary(HANDLE.root, 0, [[3, 'ACAD_GROUP'], handle(350, HANDLE.groups)]),
      ...dictionary(HANDLE.groups, HANDLE.root, []),
    ]),
    [0, 'EOF'],
  ]);
  return before + drawn + after;
};
