import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Sheet } from '../../src/drawing/sheet.ts';
import { hostile } from './samples.ts';

const require = createRequire(import.meta.url);
const font = (name: string): Uint8Array =>
  new Uint8Array(readFileSync(require.resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`)));
export const fonts = { regular: font('DejaVuSans'), bold: font('DejaVuSans-Bold') };

/** Symbols of drawings that have to be read and copied: trade marks of sizes, angles, fractions. */
export const symbols = 'Ø12.5 ±0.1 17.5° 1 1/4" 3⁄8″ ½ ⅜ × − – R5 µm ≥ Ω';

/** A sheet of every kind of item, with a check bar of 100 mm and text in every position. */
export const sheet: Sheet = {
  id: 'sample',
  title: 'Sample sheet',
  size: [210, 297],
  items: [
    {
      kind: 'polyline',
      points: [
        [20, 10],
        [200, 10],
        [200, 287],
        [20, 287],
        [20, 10],
      ],
      stroke: 'frame',
    },
    { kind: 'line', a: [30, 30], b: [130, 30], stroke: 'visible' },
    { kind: 'line', a: [30, 40], b: [130, 40], stroke: 'hidden' },
    { kind: 'line', a: [30, 50], b: [130, 50], stroke: 'centre' },
    { kind: 'line', a: [30, 60], b: [130, 60], stroke: 'phantom' },
    { kind: 'circle', centre: [60, 100], radius: 20, stroke: 'visible' },
    {
      kind: 'fill',
      points: [
        [60, 90],
        [100, 90],
        [100, 110],
        [60, 110],
      ],
      tone: 'paper',
    },
    {
      kind: 'fill',
      points: [
        [70, 95],
        [75, 94],
        [75, 96],
      ],
      tone: 'ink',
    },
    { kind: 'arc', centre: [150, 100], radius: 20, from: 30, to: 300, stroke: 'visible' },
    { kind: 'arc', centre: [150, 100], radius: 10, from: 270, to: 90, stroke: 'hidden' },
    {
      kind: 'text',
      at: [30, 150],
      text: symbols,
      height: 3.5,
      align: 'left',
      angle: 0,
      bold: false,
    },
    { kind: 'line', a: [30, 149], b: [30, 154], stroke: 'dimension' },
    {
      kind: 'text',
      at: [110, 170],
      text: 'Centred AVATAR fi',
      height: 5,
      align: 'centre',
      angle: 0,
      bold: true,
    },
    { kind: 'line', a: [110, 169], b: [110, 176], stroke: 'dimension' },
    {
      kind: 'text',
      at: [190, 180],
      text: 'right',
      height: 2.5,
      align: 'right',
      angle: 0,
      bold: false,
    },
    {
      kind: 'text',
      at: [190, 200],
      text: '100 mm upright',
      height: 3.5,
      align: 'left',
      angle: 90,
      bold: false,
    },
    {
      kind: 'text',
      at: [30, 260],
      text: hostile.slice(0, 60),
      height: 1.8,
      align: 'left',
      angle: 0,
      bold: false,
    },
    {
      kind: 'text',
      at: [30, 255],
      text: hostile.slice(60),
      height: 1.8,
      align: 'left',
      angle: 0,
      bold: false,
    },
    { kind: 'text', at: [30, 250], text: '', height: 2.5, align: 'left', angle: 0, bold: false },
  ],
};
