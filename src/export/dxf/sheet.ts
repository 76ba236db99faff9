import { NOTHING, union } from '../../drawing/box.ts';
import type { Item, Sheet } from '../../drawing/sheet.ts';
import { STROKES } from '../../drawing/strokes.ts';
import { quantise } from '../../core/units.ts';
import type { Vec2 } from '../../geometry/vector.ts';
import { text } from '../../text/index.ts';
import { singleLine } from '../runs.ts';
import { comments } from './comments.ts';
import type { Entity, LayerStyle } from './entity.ts';
import { writeR2000 } from './r2000.ts';

/** One layer a kind of line, as wide and dashed as it is drawn elsewhere; letters have theirs. */
const LAYERS: readonly LayerStyle[] = [
  ...Object.entries(STROKES).map(([name, { width, dashes }]) => ({
    name: name.toUpperCase(),
    colour: 7,
    dashes,
    width,
  })),
  { name: 'TEXT', colour: 7, width: 0.35 },
];

const grid = ([x, y]: Vec2): Vec2 => [quantise(x), quantise(y)];

const entitiesOf = (item: Item): Entity[] => {
  switch (item.kind) {
    case 'line':
      return [{ kind: 'line', layer: item.stroke.toUpperCase(), a: grid(item.a), b: grid(item.b) }];
    case 'polyline':
      return [
        { kind: 'polyline', layer: item.stroke.toUpperCase(), points: item.points.map(grid) },
      ];
    case 'arc':
    case 'circle':
      return [{ ...item, layer: item.stroke.toUpperCase(), centre: grid(item.centre) }];
    case 'fill': {
      const [first, ...rest] = item.tone === 'ink' ? item.points.map(grid) : [];
      if (first === undefined) return [];
      return rest.slice(1).map((corner, i) => ({
        kind: 'triangle',
        layer: 'DIMENSION',
        points: [first, rest[i] ?? corner, corner],
      }));
    }
    case 'blocks': {
      const { x0, y0, x1, y1 } = item.boxes.reduce(union, NOTHING);
      const corners: Vec2[] = [
        [x0, y0],
        [x1, y0],
        [x1, y1],
        [x0, y1],
        [x0, y0],
      ];
      return [
        { kind: 'polyline', layer: 'TABLE', points: corners.map(grid) },
        {
          ...{ kind: 'text', text: text.exporting.codeElsewhere, layer: 'TEXT', style: 'REGULAR' },
          ...{ at: grid([(x0 + x1) / 2, (y0 + y1) / 2]), align: 'centre', height: 2.5, angle: 0 },
        },
      ];
    }
    case 'text':
      return singleLine(item.text).trim() === ''
        ? []
        : [{ ...item, layer: 'TEXT', at: grid(item.at), style: item.bold ? 'BOLD' : 'REGULAR' }];
  }
};

/**
 * A drawing sheet for a CAD program: paper millimetres, everything exploded into lines, arcs,
 * filled triangles and text, one layer a kind of line. Opaque and tinted areas are left out: the
 * format has no plain way to hide what lies below. In place of a code
 * to scan, thousands of rectangles that tell no more than the comment does, there is its frame. Not
 * a cut file.
 */
export const sheetDxf = (sheet: Sheet, options: { readonly carry?: string } = {}): string =>
  writeR2000(
    sheet.items.flatMap(entitiesOf),
    LAYERS,
    'mm',
    comments(text.exporting.sheetComment, options.carry),
  );
