import { sparse } from './documents.ts';

/** Path, bad value, code, path of the issue, and what message and mend must name. */
export type BadDesign = readonly [string, unknown, string, string, readonly string[]];

/** Wrong in the design's head or in its blade. */
export const BAD_BLADES: readonly BadDesign[] = [
  ['name', '', 'wrong-length', 'name', ['Design name', '0 characters', 'from 1 to 80']],
  ['name', 'a\u0007b', 'wrong-characters', 'name', ['Design name', 'control character']],
  ['name', 7, 'wrong-type', 'name', ['Design name', '7', 'text']],
  ['name', undefined, 'missing', 'name', ['Design name', 'missing']],
  ['notes', 'x'.repeat(2001), 'wrong-length', 'notes', ['Notes', '2001', '2000']],
  ['revision', 1.5, 'not-whole', 'revision', ['Revision', '1.5', 'whole']],
  ['blades', [], 'wrong-length', 'blades', ['Blades', '0 entries', 'from 1 to 12']],
  ['blades', 'none', 'wrong-type', 'blades', ['Blades', 'none', 'list']],
  [
    'blades',
    [...sparse().blades, ...sparse().blades],
    'same-name',
    'blades.1.name',
    ['"Kitchen 180"', 'twice'],
  ],
  [
    'blades.0.outline.length',
    9,
    'out-of-range',
    'blades.0.outline.length',
    ['Blade length', '9 mm', 'from 30 to 500 mm', 'cannot be held'],
  ],
  [
    'blades.0.outline.length',
    '180',
    'wrong-type',
    'blades.0.outline.length',
    ['Blade length', '"180"', 'from 30 to 500 mm'],
  ],
  [
    'blades.0.outline.length',
    undefined,
    'missing',
    'blades.0.outline.length',
    ['Blade length', 'missing', '30 to 500'],
  ],
  ['blades.0.outline.kind', 'egg', 'unknown-kind', 'blades.0.outline.kind', ['Outline', 'egg']],
  [
    'blades.0.outline.bellyStart',
    200,
    'beyond-tip',
    'blades.0.outline.bellyStart',
    ['Start of the belly', '200 mm', '180 mm'],
  ],
  [
    'blades.0.outline.tipDrop',
    60,
    'tip-outside',
    'blades.0.outline.tipDrop',
    ['Drop of the tip', '60 mm', '43.75 mm'],
  ],
  [
    // All of the edge on one side, as far out as its flank: nothing is left to take off there.
    'blades.0.edge',
    { asHeatTreated: 2, wanted: 1.5, shareLeft: 1 },
    'nothing-to-grind',
    'blades.0.bevels.left',
    ['1.5 mm'],
  ],
  [
    'blades.0.outline.bellyStart',
    150,
    'steep-belly',
    'blades.0.outline.bellyStart',
    ['Start of the belly', '80 degrees'],
  ],
  [
    'blades.0.outline.spineDropStart',
    175,
    'steep-spine',
    'blades.0.outline.spineDropStart',
    ['Start of the spine drop', '80 degrees'],
  ],
  [
    'blades.0.outline.spineSagitta',
    -20.5,
    'out-of-range',
    'blades.0.outline.spineSagitta',
    ['Curve of the spine', '-20.5 mm', 'from -20 to 20 mm'],
  ],
  [
    'blades.0.outline',
    {
      kind: 'curves',
      spine: [
        [0, 0],
        [90, 0],
        [80, 1],
        [180, 9],
      ],
      edge: [
        [0, 40],
        [180, 9],
      ],
    },
    'not-increasing',
    'blades.0.outline.spine.2',
    ['Spine points', '80 mm', '90 mm'],
  ],
  [
    'blades.0.outline',
    {
      kind: 'curves',
      spine: [
        [0, 0],
        [180, 9],
      ],
      edge: [
        [0, 40],
        [180, 10],
      ],
    },
    'open-tip',
    'blades.0.outline.edge',
    ['(180, 9)', '(180, 10)', 'same'],
  ],
  [
    'blades.0.outline',
    {
      kind: 'curves',
      spine: [
        [0, 0],
        [90, 30],
        [180, 9],
      ],
      edge: [
        [0, 40],
        [90, 29],
        [180, 9],
      ],
    },
    'no-height',
    'blades.0.outline',
    ['mm high', '0.05 mm'],
  ],
  [
    'blades.0.outline',
    {
      kind: 'curves',
      spine: [
        [0, 0, 1],
        [180, 9],
      ],
      edge: [
        [0, 40],
        [180, 9],
      ],
    },
    'wrong-type',
    'blades.0.outline.spine.0.2',
    ['Spine points', 'pair'],
  ],
  [
    'blades.0.thickness',
    [
      { u: 0, t: 3 },
      { u: 0, t: 2 },
    ],
    'not-increasing',
    'blades.0.thickness.1.u',
    ['Place of a thickness', '0 mm'],
  ],
  [
    'blades.0.thickness',
    [
      { u: 0, t: 3 },
      { u: 190, t: 2 },
    ],
    'place-off-blade',
    'blades.0.thickness.1.u',
    ['Place of a thickness', '190 mm', '180 mm'],
  ],
  [
    'blades.0.edge.asHeatTreated',
    3.5,
    'edge-thicker-than-spine',
    'blades.0.edge.asHeatTreated',
    ['Edge thickness as heat treated', '3.5 mm', '3 mm'],
  ],
  [
    'blades.0.edge.wanted',
    0.9,
    'edge-grows',
    'blades.0.edge.wanted',
    ['Edge thickness wanted', '0.9 mm', '0.7 mm'],
  ],
  [
    'blades.0.edge.wanted',
    0.05,
    'out-of-range',
    'blades.0.edge.wanted',
    ['Edge thickness wanted', '0.05 mm', 'from 0.1 to 2 mm', 'grabs'],
  ],
  [
    'blades.0.spineRadius',
    1.5,
    'spine-radius',
    'blades.0.spineRadius',
    ['Spine corner radius', '1.5 mm', '1.35 mm'],
  ],
  [
    'blades.0.bevels.left.height',
    47,
    'bevel-higher-than-blade',
    'blades.0.bevels.left.height',
    ['Bevel height', '47 mm', '45.5 mm', '40 mm'],
  ],
  [
    'blades.0.bevels.left',
    { kind: 'hollow', depth: 1.6, centre: 20 },
    'hollow-too-deep',
    'blades.0.bevels.left.depth',
    ['Depth of the hollow', '1.6 mm', '1.5 mm'],
  ],
  [
    'blades.0.bevels',
    { left: { kind: 'none' }, right: { kind: 'none' } },
    'nothing-ground',
    'blades.0.bevels',
    ['none'],
  ],
  [
    'blades.0.bevels.left',
    { kind: 'height', height: 2 },
    'bevel-angle',
    'blades.0.bevels.left',
    ['34.99 degrees', 'from 0.3 to 20 degrees'],
  ],
  ['blades.0.tang.drop', 50, 'tang-apart', 'blades.0.tang.drop', ['50', '68', '46 mm', '2 mm']],
];
