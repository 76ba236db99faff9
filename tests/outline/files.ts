import { readFileSync } from 'node:fs';
import { registry } from '../../jigs/registry.ts';
import { outlineLoop } from '../../src/blade/outline.ts';
import type { Blade } from '../../src/blade/schema.ts';
import { openDesign } from '../../src/document/open.ts';
import type { Vec2 } from '../../src/geometry/vector.ts';

/** The first blade of a worked design. */
export const bladeOf = (file: string): Blade => {
  const opened = openDesign(readFileSync(`jigs/${file}.jig.json`), registry);
  const blade = opened.ok ? opened.value.blades[0] : undefined;
  if (blade === undefined) throw new Error(`${file} does not open`);
  return blade;
};

/** Its outline as a polygon within 0.002 mm, turned, scaled and moved like a drawing of another. */
export const drawnOutline = (blade: Blade, degrees: number, scale: number): Vec2[] => {
  const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  return outlineLoop(blade, 0.002).vertices.map(({ x, y }): Vec2 => [
    (x * cos - y * sin) * scale + 31.7,
    (x * sin + y * cos) * scale - 12.3,
  ]);
};

export const bytesOf = (content: string): Uint8Array => new TextEncoder().encode(content);

/** A DXF of loose lines in inches, as a careless program writes it. */
export const dxfOfLines = (lines: readonly (readonly [Vec2, Vec2])[], units = 1): string =>
  [
    '0',
    'SECTION',
    '2',
    'HEADER',
    '9',
    '$INSUNITS',
    '70',
    String(units),
    '0',
    'ENDSEC',
    '0',
    'SECTION',
    '2',
    'ENTITIES',
    ...lines.flatMap(([a, b]) => [
      '0',
      'LINE',
      '8',
      '0',
      '10',
      a[0].toFixed(6),
      '20',
      a[1].toFixed(6),
      '30',
      '0',
      '11',
      b[0].toFixed(6),
      '21',
      b[1].toFixed(6),
      '31',
      '0',
    ]),
    '0',
    'ENDSEC',
    '0',
    'EOF',
    '',
  ].join('\n');

export const sidesOf = (points: readonly Vec2[]): [Vec2, Vec2][] =>
  points.map((a, i) => [a, points[(i + 1) % points.length] ?? a]);

export const svgOf = (
  inner: string,
  root = 'width="300mm" height="200mm" viewBox="0 0 300 200"',
): string => `<?xml version="1.0"?><svg xmlns="http://www.w3.org/2000/svg" ${root}>${inner}</svg>`;
