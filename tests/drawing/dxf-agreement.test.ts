import DxfParser from 'dxf-parser';
import { describe, expect, it } from 'vitest';
import { partSheets } from '../../src/drawing/part-sheets.ts';
import { plateDxf } from '../../src/export/index.ts';
import type { Vec2 } from '../../src/geometry/vector.ts';
import { BLOCK, randomPlate } from './random-plate.ts';
import { readPlate } from './reader.ts';

interface Round {
  readonly centre: Vec2;
  readonly radius: number;
}

/** Circles of a cut file, and the points of its polylines, by a general-purpose reader. */
const readDxf = (dxf: string): { circles: Round[]; points: Vec2[] } => {
  const entities = new DxfParser().parseSync(dxf)?.entities ?? [];
  const circles: Round[] = [];
  const points: Vec2[] = [];
  for (const entity of entities) {
    if (entity.type === 'CIRCLE' && 'center' in entity && 'radius' in entity) {
      const { x, y } = entity.center as { x: number; y: number };
      circles.push({ centre: [x, y], radius: entity.radius as number });
    }
    if ('vertices' in entity)
      for (const { x, y } of entity.vertices as { x: number; y: number }[]) points.push([x, y]);
  }
  return { circles, points };
};

describe('drawing and cut file', () => {
  // Plates with straight outlines: the lower left corner is then known from the file's own points
  // and the largest circle is no outline.
  const seeds = [1, 5, 6, 9, 11, 14, 26, 31, 36];

  it.each(seeds)('of plate %i agree on every round hole within 0.005 mm', (seed) => {
    const plate = randomPlate(seed);
    const made = plateDxf(plate);
    if (!made.ok) throw new Error(JSON.stringify(made.issues));
    const { circles, points } = readDxf(made.value);
    const read = readPlate(partSheets(plate, BLOCK));
    // Bulges of fillets stay inside the corners here, so that the points span the outline.
    const corner: Vec2 = [
      Math.min(...points.map((p) => p[0])),
      Math.min(...points.map((p) => p[1])),
    ];
    const drawn = read.holes.filter((hole) => hole.slot === undefined);
    expect(drawn).toHaveLength(circles.length);
    for (const { centre, radius } of circles) {
      const off = drawn.map((hole) =>
        Math.max(
          Math.abs(hole.at[0] - (centre[0] - corner[0])),
          Math.abs(hole.at[1] - (centre[1] - corner[1])),
          Math.abs(hole.size - 2 * radius),
        ),
      );
      expect(Math.min(...off)).toBeLessThanOrEqual(0.005);
    }
  });
});
