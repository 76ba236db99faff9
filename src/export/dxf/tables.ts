import type { LayerStyle } from './entity.ts';
import { handle, integer, real, type Tag } from './tags.ts';

/** Fixed handles of what every file has; layers, line types and entities are counted on. */
export const HANDLE = {
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
  acad: 0xe,
  dimStandard: 0xf,
  modelRecord: 0x10,
  paperRecord: 0x11,
  modelBlock: 0x12,
  modelEnd: 0x13,
  paperBlock: 0x14,
  paperEnd: 0x15,
  root: 0x16,
  groups: 0x17,
  styles: 0x20,
  layers: 0x40,
  lineTypes: 0x60,
  entities: 0x80,
} as const;

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

const lineType = (name: string, own: number, dashes: readonly number[] = []): Tag[] =>
  record('LTYPE', own, HANDLE.ltype, 'AcDbLinetypeTableRecord', [
    [2, name],
    integer(70, 0),
    [3, ''],
    integer(72, 65),
    integer(73, dashes.length),
    real(
      40,
      dashes.reduce((sum, dash) => sum + dash, 0),
    ),
    ...dashes.flatMap((dash, i) => [real(49, i % 2 === 0 ? dash : -dash), integer(74, 0)]),
  ]);

const layer = (style: LayerStyle, own: number): Tag[] =>
  record('LAYER', own, HANDLE.layer, 'AcDbLayerTableRecord', [
    [2, style.name],
    integer(70, 0),
    integer(62, style.colour),
    [6, style.dashes?.length ? style.name : 'Continuous'],
    ...(style.width === undefined ? [] : [integer(370, Math.round(style.width * 100))]),
  ]);

const textStyle = (name: string, font: string, own: number): Tag[] =>
  record('STYLE', own, HANDLE.style, 'AcDbTextStyleTableRecord', [
    [2, name],
    integer(70, 0),
    real(40, 0),
    real(41, 1),
    real(50, 0),
    integer(71, 0),
    real(42, 2.5),
    [3, font],
    [4, ''],
  ]);

const named = (type: string, own: number, owner: number, subclass: string, name: string): Tag[] =>
  record(type, own, owner, subclass, [
    [2, name],
    ...(type === 'BLOCK_RECORD' ? [] : [integer(70, 0)]),
  ]);

/** Text styles of drawings: the fonts that text was measured with. */
const FONTS = [
  ['Standard', 'txt'],
  ['REGULAR', 'DejaVuSans.ttf'],
  ['BOLD', 'DejaVuSans-Bold.ttf'],
] as const;

/** The TABLES section: the nine tables in the order of the reference. */
export const tables = (layers: readonly LayerStyle[], hasText: boolean): Tag[] => [
  ...table('VPORT', HANDLE.vport, []),
  ...table('LTYPE', HANDLE.ltype, [
    lineType('ByBlock', HANDLE.byBlock),
    lineType('ByLayer', HANDLE.byLayer),
    lineType('Continuous', HANDLE.continuous),
    ...layers.flatMap(({ name, dashes }, i) =>
      dashes?.length ? [lineType(name, HANDLE.lineTypes + i, dashes)] : [],
    ),
  ]),
  ...table('LAYER', HANDLE.layer, [
    layer({ name: '0', colour: 7 }, HANDLE.layer0),
    ...layers.map((style, i) => layer(style, HANDLE.layers + i)),
  ]),
  ...table(
    'STYLE',
    HANDLE.style,
    FONTS.slice(0, hasText ? 3 : 1).map(([name, font], i) =>
      textStyle(name, font, HANDLE.styles + i),
    ),
  ),
  ...table('VIEW', HANDLE.view, []),
  ...table('UCS', HANDLE.ucs, []),
  ...table('APPID', HANDLE.appid, [
    named('APPID', HANDLE.acad, HANDLE.appid, 'AcDbRegAppTableRecord', 'ACAD'),
  ]),
  ...table('DIMSTYLE', HANDLE.dimstyle, [
    named('DIMSTYLE', HANDLE.dimStandard, HANDLE.dimstyle, 'AcDbDimStyleTableRecord', 'Standard'),
  ]),
  ...table(
    'BLOCK_RECORD',
    HANDLE.blockRecord,
    (
      [
        [HANDLE.modelRecord, '*Model_Space'],
        [HANDLE.paperRecord, '*Paper_Space'],
      ] as const
    ).map(([own, name]) =>
      named('BLOCK_RECORD', own, HANDLE.blockRecord, 'AcDbBlockTableRecord', name),
    ),
  ),
];
