import type { Entity } from './entity.ts';
import { LAYER_COLOUR } from './entity.ts';
import { handle, integer, real, section, serialise, string, type Tag } from './tags.ts';

/** Fixed handles of the objects that every file has; entities follow from `FIRST_ENTITY`. */
const H = {
  vport: 0x1,
  ltype: 0x2,
  layer: 0x3,
  style: 0x4,
  view: 0x5,
  ucs: 0x6,
  appid: 0x7,
  dimstyle: 0x8,
  blockRecord: 0x9,
  byBlock: 0xa,
  byLayer: 0xb,
  continuous: 0xc,
  layer0: 0xd,
  standard: 0xe,
  acad: 0xf,
  modelRecord: 0x10,
  paperRecord: 0x11,
  modelBlock: 0x12,
  modelEnd: 0x13,
  paperBlock: 0x14,
  paperEnd: 0x15,
  root: 0x16,
  groups: 0x17,
  dimStandard: 0x18,
  layers: 0x20,
} as const;
const FIRST_ENTITY = 0x30;

const table = (name: string, own: number, records: readonly (readonly Tag[])[]): Tag[] => [
  [0, 'TABLE'],
  [2, name],
  handle(5, own),
  handle(330, 0),
  [100, 'AcDbSymbolTable'],
  integer(70, records.length),
  ...(name === 'DIMSTYLE' ? ([[100, 'AcDbDimStyleTable']] as const) : []),
  ...records.flat(),
  [0, 'ENDTAB'],
];

const record = (
  type: string,
  own: number,
  owner: number,
  subclass: string,
  content: readonly Tag[],
): Tag[] => [
  [0, type],
  // A dimension style keeps its handle in group 105, every other record in 5.
  handle(type === 'DIMSTYLE' ? 105 : 5, own),
  handle(330, owner),
  [100, 'AcDbSymbolTableRecord'],
  [100, subclass],
  ...content,
];

const lineType = (name: string, own: number): Tag[] =>
  record('LTYPE', own, H.ltype, 'AcDbLinetypeTableRecord', [
    [2, name],
    integer(70, 0),
    [3, ''],
    integer(72, 65),
    integer(73, 0),
    real(40, 0),
  ]);

const layer = (name: string, own: number, colour: number): Tag[] =>
  record('LAYER', own, H.layer, 'AcDbLayerTableRecord', [
    [2, name],
    integer(70, 0),
    integer(62, colour),
    [6, 'Continuous'],
  ]);

const textStyle: Tag[] = record('STYLE', H.standard, H.style, 'AcDbTextStyleTableRecord', [
  [2, 'Standard'],
  integer(70, 0),
  real(40, 0),
  real(41, 1),
  real(50, 0),
  integer(71, 0),
  real(42, 2.5),
  [3, 'txt'],
  [4, ''],
]);

const tables = (layers: readonly (keyof typeof LAYER_COLOUR)[]): Tag[] => [
  ...table('VPORT', H.vport, []),
  ...table('LTYPE', H.ltype, [
    lineType('ByBlock', H.byBlock),
    lineType('ByLayer', H.byLayer),
    lineType('Continuous', H.continuous),
  ]),
  ...table('LAYER', H.layer, [
    layer('0', H.layer0, 7),
    ...layers.map((name, i) => layer(name, H.layers + i, LAYER_COLOUR[name])),
  ]),
  ...table('STYLE', H.style, [textStyle]),
  ...table('VIEW', H.view, []),
  ...table('UCS', H.ucs, []),
  ...table('APPID', H.appid, [
    record('APPID', H.acad, H.appid, 'AcDbRegAppTableRecord', [[2, 'ACAD'], integer(70, 0)]),
  ]),
  ...table('DIMSTYLE', H.dimstyle, [
    record('DIMSTYLE', H.dimStandard, H.dimstyle, 'AcDbDimStyleTableRecord', [
      [2, 'Standard'],
      integer(70, 0),
    ]),
  ]),
  ...table('BLOCK_RECORD', H.blockRecord, [
    record('BLOCK_RECORD', H.modelRecord, H.blockRecord, 'AcDbBlockTableRecord', [
      [2, '*Model_Space'],
    ]),
    record('BLOCK_RECORD', H.paperRecord, H.blockRecord, 'AcDbBlockTableRecord', [
      [2, '*Paper_Space'],
    ]),
  ]),
];

const block = (name: string, own: number, end: number, owner: number): Tag[] => [
  [0, 'BLOCK'],
  handle(5, own),
  handle(330, owner),
  [100, 'AcDbEntity'],
  [8, '0'],
  [100, 'AcDbBlockBegin'],
  [2, name],
  integer(70, 0),
  real(10, 0),
  real(20, 0),
  real(30, 0),
  [3, name],
  [1, ''],
  [0, 'ENDBLK'],
  handle(5, end),
  handle(330, owner),
  [100, 'AcDbEntity'],
  [8, '0'],
  [100, 'AcDbBlockEnd'],
];

const entityTags = (entity: Entity, index: number): Tag[] => {
  const common = (type: string, subclass: string): Tag[] => [
    [0, type],
    handle(5, FIRST_ENTITY + index),
    handle(330, H.modelRecord),
    [100, 'AcDbEntity'],
    [8, entity.layer],
    [100, subclass],
  ];
  switch (entity.kind) {
    case 'circle':
      return [
        ...common('CIRCLE', 'AcDbCircle'),
        real(10, entity.centre[0]),
        real(20, entity.centre[1]),
        real(30, 0),
        real(40, entity.radius),
      ];
    case 'contour':
      return [
        ...common('LWPOLYLINE', 'AcDbPolyline'),
        integer(90, entity.vertices.length),
        integer(70, 1),
        ...entity.vertices.flatMap((v) => [
          real(10, v.x),
          real(20, v.y),
          ...(v.bulge === 0 ? [] : [real(42, v.bulge)]),
        ]),
      ];
    case 'line':
      return [
        ...common('LINE', 'AcDbLine'),
        real(10, entity.a[0]),
        real(20, entity.a[1]),
        real(30, 0),
        real(11, entity.b[0]),
        real(21, entity.b[1]),
        real(31, 0),
      ];
  }
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
 */
export const writeR2000 = (
  entities: readonly Entity[],
  units: 'mm' | 'in',
  comments: readonly string[],
): string => {
  const used = (['CUT', 'ENGRAVE', 'BEND'] as const).filter((name) =>
    entities.some((entity) => entity.layer === name),
  );
  return serialise([
    ...comments.map((comment) => string(999, comment)),
    ...section('HEADER', [
      [9, '$ACADVER'],
      [1, 'AC1015'],
      [9, '$HANDSEED'],
      handle(5, FIRST_ENTITY + entities.length),
      [9, '$INSUNITS'],
      integer(70, units === 'mm' ? 4 : 1),
      [9, '$MEASUREMENT'],
      integer(70, units === 'mm' ? 1 : 0),
    ]),
    ...section('CLASSES', []),
    ...section('TABLES', tables(used)),
    ...section('BLOCKS', [
      ...block('*Model_Space', H.modelBlock, H.modelEnd, H.modelRecord),
      ...block('*Paper_Space', H.paperBlock, H.paperEnd, H.paperRecord),
    ]),
    ...section('ENTITIES', entities.flatMap(entityTags)),
    ...section('OBJECTS', [
      ...dictionary(H.root, 0, [[3, 'ACAD_GROUP'], handle(350, H.groups)]),
      ...dictionary(H.groups, H.root, []),
    ]),
    [0, 'EOF'],
  ]);
};
