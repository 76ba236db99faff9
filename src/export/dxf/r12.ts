import { atan2 } from '../../core/trigonometry.ts';
import { degrees } from '../../core/units.ts';
import { sagittaOf } from '../../geometry/arc.ts';
import type { Vertex } from '../../geometry/loop.ts';
import { usedLayers, type CutEntity, type LayerStyle } from './entity.ts';
import { angle, integer, real, section, serialise, string, type Tag } from './tags.ts';

/**
 * An arc rising less than this over its chord is written straight: its centre would lie so far
 * away that its ends no longer met their neighbours. File units, at most 0.013 mm.
 */
const FLAT = 0.0005;

const lineTags = (layer: string, a: readonly number[], b: readonly number[]): Tag[] => [
  [0, 'LINE'],
  [8, layer],
  real(10, a[0] ?? 0),
  real(20, a[1] ?? 0),
  real(30, 0),
  real(11, b[0] ?? 0),
  real(21, b[1] ?? 0),
  real(31, 0),
];

/**
 * The arc from one vertex to the next: centre on the perpendicular of the chord at
 * c (1 - b^2) / 4b, radius c (1 + b^2) / 4|b|. An ARC runs anticlockwise, so a clockwise one is
 * written from its end.
 */
const arcTags = (layer: string, from: Vertex, to: Vertex): Tag[] => {
  const b = from.bulge;
  const reach = (1 - b * b) / (4 * b);
  const x = (from.x + to.x) / 2 - (to.y - from.y) * reach;
  const y = (from.y + to.y) / 2 + (to.x - from.x) * reach;
  const radius = (Math.hypot(to.x - from.x, to.y - from.y) * (1 + b * b)) / (4 * Math.abs(b));
  const direction = (v: Vertex): number => (degrees(atan2(v.y - y, v.x - x)) + 360) % 360;
  const [start, end] = b > 0 ? [from, to] : [to, from];
  return [
    [0, 'ARC'],
    [8, layer],
    real(10, x),
    real(20, y),
    real(30, 0),
    real(40, radius),
    angle(50, direction(start)),
    angle(51, direction(end)),
  ];
};

const entityTags = (entity: CutEntity): Tag[] => {
  switch (entity.kind) {
    case 'circle':
      return [
        [0, 'CIRCLE'],
        [8, entity.layer],
        real(10, entity.centre[0]),
        real(20, entity.centre[1]),
        real(30, 0),
        real(40, entity.radius),
      ];
    case 'line':
      return lineTags(entity.layer, entity.a, entity.b);
    case 'contour':
      return entity.vertices.flatMap((from, i) => {
        const to = entity.vertices[(i + 1) % entity.vertices.length] ?? from;
        const rise = sagittaOf(Math.hypot(to.x - from.x, to.y - from.y), from.bulge);
        return Math.abs(rise) < FLAT
          ? lineTags(entity.layer, [from.x, from.y], [to.x, to.y])
          : arcTags(entity.layer, from, to);
      });
  }
};

/**
 * The same drawing for readers of the oldest kind (AC1009): lines, arcs and circles whose end
 * points coincide. This version has no header variable for units, so a comment says them.
 */
export const writeR12 = (
  entities: readonly CutEntity[],
  layers: readonly LayerStyle[],
  comments: readonly string[],
): string => {
  const listed = [{ name: '0', colour: 7 }, ...usedLayers(layers, entities)];
  return serialise([
    ...comments.map((comment) => string(999, comment)),
    ...section('HEADER', [
      [9, '$ACADVER'],
      [1, 'AC1009'],
    ]),
    ...section('TABLES', [
      [0, 'TABLE'],
      [2, 'LTYPE'],
      integer(70, 1),
      [0, 'LTYPE'],
      [2, 'CONTINUOUS'],
      integer(70, 0),
      [3, 'Solid line'],
      integer(72, 65),
      integer(73, 0),
      real(40, 0),
      [0, 'ENDTAB'],
      [0, 'TABLE'],
      [2, 'LAYER'],
      integer(70, listed.length),
      ...listed.flatMap(({ name, colour }): Tag[] => [
        [0, 'LAYER'],
        [2, name],
        integer(70, 0),
        integer(62, colour),
        [6, 'CONTINUOUS'],
      ]),
      [0, 'ENDTAB'],
    ]),
    ...section('ENTITIES', entities.flatMap(entityTags)),
    [0, 'EOF'],
  ]);
};
